//! Rows in an order, each with a button up and a button down.

use super::{Picture, icon};
use crate::app::state::use_shop;
use crate::device::page;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct OrderProps {
    pub(super) labels: Vec<AttrValue>,
    pub(super) label: String,
    pub(super) group: &'static str,
    /// Options in the order so far.
    pub(super) places: Vec<usize>,
    /// A place, and whether its thing goes down.
    pub(super) on_move: Callback<(usize, bool)>,
}

#[component]
pub(super) fn OrderField(props: &OrderProps) -> Html {
    let shop = use_shop();
    let moved = use_mut_ref(|| None::<String>);
    // After a move the focus follows the thing that was moved.
    use_effect_with(props.places.clone(), {
        let moved = moved.clone();
        move |_| {
            if let Some(id) = moved.borrow_mut().take() {
                page::focus(&id);
            }
        }
    });
    let last = props.places.len().saturating_sub(1);
    let row = |(place, option): (usize, &usize)| {
        let label = props.labels.get(*option).cloned().unwrap_or_default();
        let button = |down: bool| {
            let (on_move, moved, group) = (props.on_move.clone(), moved.clone(), props.group);
            let goes_to = if down { place + 1 } else { place.saturating_sub(1) };
            // At the end of the list the button that is left takes the focus.
            let stays = if goes_to == 0 {
                true
            } else if goes_to == last {
                false
            } else {
                down
            };
            let onclick = Callback::from(move |_: MouseEvent| {
                moved.replace(Some(format!("{group}-{goes_to}-{stays}")));
                on_move.emit((place, down));
            });
            let key = if down { "card.down" } else { "card.up" };
            html! {
                <button type="button" class="control square" id={format!("{}-{place}-{down}", props.group)} {onclick}
                    disabled={place == if down { last } else { 0 }}
                    aria-label={shop.say_with(key, &[("item", label.to_string())])}>
                    { icon(if down { Picture::Down } else { Picture::Up }) }
                </button>
            }
        };
        html! {
            <li key={place} class="place">
                <span class="number" aria-hidden="true">{ place + 1 }</span>
                <span class="words">{ &label }</span>
                { button(false) }
                { button(true) }
            </li>
        }
    };
    html! {
        <ol class="order" aria-label={props.label.clone()}>{ for props.places.iter().enumerate().map(row) }</ol>
    }
}
