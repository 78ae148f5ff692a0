//! What should be looked at again in a set that is being built.

use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::exchange::set::Warned;
use crate::rules::term::Term;
use yew::prelude::*;

/// Kinds of card that are told by name.
const NAMED_MOST: usize = 4;

pub(super) fn warned(shop: &Shop, all: &[Warned]) -> Html {
    let line = |one: &Warned| {
        let mut names: Vec<String> =
            one.families.iter().take(NAMED_MOST).map(|id| shop.family_title(id).to_string()).collect();
        let more = one.families.len().saturating_sub(NAMED_MOST);
        if more > 0 {
            names.push(shop.say_with("sets.warning.more", &[("n", more.to_string())]).to_string());
        }
        let told = [("n", one.count.to_string()), ("names", names.join(", "))];
        let slug = one.warning.slug();
        html! { <li key={slug}>{ icon(Picture::Caution) }<span>{ shop.say_with(&format!("sets.warning.{slug}"), &told) }</span></li> }
    };
    let none = all.is_empty();
    html! {
        <div key="warned" class="set-warnings" role="status">
            <h3 hidden={none}>{ shop.say("sets.warning.head") }</h3>
            <ul>{ for all.iter().map(line) }</ul>
            <p class="note" hidden={!none}>{ icon(Picture::Tick) }{ shop.say("sets.warning.none") }</p>
        </div>
    }
}
