//! A count with a button on either side, and the usual counts beside it.

use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use yew::prelude::*;

pub(super) struct Stepper {
    pub(super) fewer: AttrValue,
    pub(super) more: AttrValue,
    pub(super) shown: AttrValue,
    pub(super) least: bool,
    pub(super) most: bool,
    pub(super) on_fewer: Callback<MouseEvent>,
    pub(super) on_more: Callback<MouseEvent>,
}

/// Fewer, how many, more.
pub(super) fn stepper(props: Stepper) -> Html {
    let Stepper { fewer, more, shown, least, most, on_fewer, on_more } = props;
    html! {
        <div class="stepper">
            <button key="fewer" type="button" class="control square" aria-label={fewer} disabled={least} onclick={on_fewer}>{ icon(Picture::Dash) }</button>
            <output key="shown" class="count">{ shown }</output>
            <button key="more" type="button" class="control square" aria-label={more} disabled={most} onclick={on_more}>{ "+" }</button>
        </div>
    }
}

/// Counts that are often wanted, as buttons.
pub(super) fn usual(shop: &Shop, counts: &[u32], now: u32, pick: &Callback<u32>) -> Html {
    let button = |count: &u32| {
        let count = *count;
        let onclick = pick.reform(move |_: MouseEvent| count);
        html! {
            <button key={count} type="button" class={classes!("control", (count == now).then_some("picked"))} aria-pressed={(count == now).to_string()} {onclick}>
                { count }<span class="spoken">{ shop.say_with("sets.cards", &[("n", count.to_string())]) }</span>
            </button>
        }
    };
    html! { <div class="people">{ for counts.iter().map(button) }</div> }
}
