//! The black rail: the caution that matters most, the closing line, and the whole list on demand.

use super::{Icon, Picture};
use crate::app::state::use_shop;
use crate::content::CLOSING_CAUTION;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct RailProps {
    pub(super) cautions: Vec<AttrValue>,
}

#[component]
pub(super) fn CautionRail(props: &RailProps) -> Html {
    let shop = use_shop();
    let open = use_state(|| false);
    let toggle = use_callback(*open, {
        let set = open.setter();
        move |_: MouseEvent, open: &bool| set.set(!open)
    });
    let closing = shop.text(&format!("caution.{CLOSING_CAUTION}"));
    let first = props.cautions.first().cloned().unwrap_or_default();
    let count = props.cautions.len().saturating_sub(1).to_string();
    let label = if *open { shop.say("close") } else { shop.say_with("more", &[("n", count.clone())]) };
    let name = if *open { label.clone() } else { shop.say_with("more-name", &[("n", count)]) };
    html! {
        <footer class="rail">
            <div key="list" id="caution-list" class="rail-list" hidden={!*open}>
                <h2>{ shop.say("cautions") }</h2>
                <ul>{ for props.cautions.iter().map(|caution| html! { <li key={caution.to_string()}>{ caution }</li> }) }</ul>
            </div>
            <div key="line" class="rail-line" role="note">
                <Icon of={Picture::Caution} />
                <p><strong>{ first }</strong><span class="closing">{ closing }</span></p>
                <button type="button" onclick={toggle} aria-expanded={open.to_string()} aria-controls="caution-list"
                    aria-label={name}>{ label }</button>
            </div>
        </footer>
    }
}
