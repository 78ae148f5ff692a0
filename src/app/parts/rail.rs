//! The black rail: the caution that matters most, the closing line in short, and the whole list on demand.

use super::{Picture, icon};
use crate::app::state::Shop;
use crate::content::CLOSING_CAUTION;
use yew::prelude::*;

/// That this is training: on the line in short, in the list in full.
const TRAINING_CAUTION: &str = "c01";

/// `open` tells whether the whole list is shown.
pub(super) fn caution_rail(shop: &Shop, cautions: &[AttrValue], open: &UseStateHandle<bool>) -> Html {
    let toggle = {
        let open = open.clone();
        move |_: MouseEvent| open.set(!*open)
    };
    let closing = shop.say("closing");
    let whole = shop.text(&format!("caution.{CLOSING_CAUTION}"));
    let first = cautions.first().cloned().unwrap_or_default();
    let training = first == shop.text(&format!("caution.{TRAINING_CAUTION}"));
    let first = if training { shop.say("training") } else { first };
    let count = cautions.len().saturating_sub(1).to_string();
    let label = if **open { shop.say("close") } else { shop.say_with("more", &[("n", count.clone())]) };
    let name = if **open { label.clone() } else { shop.say_with("more-name", &[("n", count)]) };
    html! {
        <footer class="rail">
            <div key="list" id="caution-list" class="rail-list" hidden={!**open}>
                <h2>{ shop.say("cautions") }</h2>
                <ul>{ for cautions.iter().map(|caution| html! { <li key={caution.to_string()}>{ caution }</li> }) }<li key="closing">{ whole }</li></ul>
            </div>
            <div key="line" class="rail-line" role="note">
                { icon(Picture::Caution) }
                <p><strong>{ first }</strong><span class="closing">{ closing }<span class="overruled">{ " " }{ shop.say("overruled") }</span></span></p>
                <button type="button" onclick={toggle} aria-expanded={open.to_string()} aria-controls="caution-list"
                    aria-label={name}>{ label }</button>
            </div>
        </footer>
    }
}
