//! How far a round is: pencil strokes for cards done, dots for cards left.

use crate::app::state::Shop;
use yew::prelude::*;

pub(in crate::app) fn round(shop: &Shop, done: u32, of: u32) -> Html {
    let said = shop.say_with("card.round", &[("done", done.to_string()), ("of", of.to_string())]);
    let mark = |n: u32| html! { <i key={n} class={if n < done { "stroke" } else { "dot" }}></i> };
    html! {
        <span class="round" role="img" aria-label={said}>{ for (0..of).map(mark) }</span>
    }
}
