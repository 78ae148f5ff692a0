//! How far a round is: pencil strokes for cards done, dots for cards left.

use crate::app::state::use_shop;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct RoundProps {
    pub(in crate::app) done: u32,
    pub(in crate::app) of: u32,
}

#[component]
pub(in crate::app) fn Round(props: &RoundProps) -> Html {
    let shop = use_shop();
    let said = shop.say_with("card.round", &[("done", props.done.to_string()), ("of", props.of.to_string())]);
    let mark = |n: u32| html! { <i key={n} class={if n < props.done { "stroke" } else { "dot" }}></i> };
    html! {
        <span class="round" role="img" aria-label={said}>{ for (0..props.of).map(mark) }</span>
    }
}
