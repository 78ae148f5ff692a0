//! Ruled rows with a letter in a ring; a pick turns the ring into a patch of tape.

use super::{Picture, icon};
use crate::app::state::Shop;
use yew::prelude::*;

/// Letters of the rows.
pub(in crate::app) const LETTERS: [&str; 8] = ["A", "B", "C", "D", "E", "F", "G", "H"];

pub(in crate::app) struct Choices {
    pub(in crate::app) labels: Vec<AttrValue>,
    pub(in crate::app) label: String,
    pub(in crate::app) group: AttrValue,
    pub(in crate::app) picked: Vec<usize>,
    pub(in crate::app) many: bool,
    pub(in crate::app) on_pick: Callback<usize>,
}

pub(in crate::app) fn choices(shop: &Shop, props: &Choices) -> Html {
    let role = if props.many { "group" } else { "radiogroup" };
    let row = |(index, label): (usize, &AttrValue)| {
        let picked = props.picked.contains(&index);
        let onchange = props.on_pick.reform(move |_: Event| index);
        html! {
            <label key={index} class={classes!("choice", picked.then_some("picked"), props.many.then_some("many"))}>
                <input type={if props.many { "checkbox" } else { "radio" }} name={props.group.clone()} checked={picked} {onchange} />
                <span class="letter" aria-hidden="true">{ LETTERS.get(index).copied().unwrap_or_default() }</span>
                <span class="words">{ label }</span>
                <span class="pick" aria-hidden="true">{ icon(Picture::Pencil) }{ shop.say("card.your-pick") }</span>
            </label>
        }
    };
    html! {
        <div class="choices" {role} aria-label={props.label.clone()}>
            { for props.labels.iter().enumerate().map(row) }
        </div>
    }
}
