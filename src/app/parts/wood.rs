//! The picture of the board. It is drawn after the first paint: the rows answer a tap before it is there.

use crate::app::hooks::use_size;
use crate::device::{canvas, rest};
use crate::picture::{self, Band};
use gloo::timers::callback::Timeout;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlCanvasElement;
use yew::prelude::*;

/// Waits for the first paint.
const AFTER_PAINT_MS: u32 = 30;

#[derive(Properties, PartialEq)]
pub(super) struct WoodProps {
    pub(super) bands: Vec<Band>,
}

#[component]
pub(super) fn BoardPicture(props: &WoodProps) -> Html {
    let place = use_node_ref();
    let size = use_size();
    use_effect_with((props.bands.clone(), size), {
        let place = place.clone();
        move |(bands, _)| {
            let bands = bands.clone();
            let draw = async move {
                // Without the rest of the program the board stays without its wood.
                if rest::there().await
                    && let Some(element) = place.cast::<HtmlCanvasElement>()
                {
                    canvas::paint(&element, |width, height| picture::draw(width, height, &bands));
                }
            };
            let wait = Timeout::new(AFTER_PAINT_MS, move || spawn_local(draw));
            move || drop(wait)
        }
    });
    html! { <canvas class="board-wood" ref={place} aria-hidden="true"></canvas> }
}
