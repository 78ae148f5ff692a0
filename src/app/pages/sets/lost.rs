//! Sets that the person at work began and whose files are gone: nothing can be done with them but to close them.

use super::super::check::Close;
use crate::app::state::{SetsContext, Shop};
use crate::device::clock;
use crate::learn::check::lost_sets;
use crate::record::{Attempt, Journal};
use yew::prelude::*;

/// Those of this set, or without one all of them. Nothing is said before the shelf of sets was read.
pub(super) fn lost(shop: &Shop, sets: &SetsContext, journal: &Journal, of: Option<&str>) -> Html {
    let here = |id: &str| sets.find(id).is_some();
    let mut lost = lost_sets(journal.events(), &shop.settings.person, &shop.settings.device, here);
    lost.retain(|one| sets.loaded && of.is_none_or(|id| one.set == id));
    let row = |one: &Attempt<'_>| {
        let answered = [
            ("n", one.answers.to_string()),
            ("of", one.taking.map_or(0, |taking| taking.cards).to_string()),
            ("at", clock::local(one.at)),
        ];
        html! {
            <li key={one.id.to_owned()} class="lost-set">
                <span class="words">{ shop.say_with("sets.lost.begun", &answered) }</span>
                <Close attempt={one.id.to_owned()} over=false words="sets.lost" />
            </li>
        }
    };
    html! {
        <section key="lost" hidden={lost.is_empty()}>
            <h2>{ shop.say("sets.lost.head") }</h2>
            <ul class="rows">{ for lost.iter().map(row) }</ul>
        </section>
    }
}
