//! Under a sheet that is edited: how many values differ, how many are not allowed, and the next step.

use super::counted;
use crate::app::state::Shop;
use crate::exchange::SheetDraft;
use yew::prelude::*;

/// `changed` and `wrong` values; `asked`: whether it was asked for what changes.
pub(super) fn bar(
    shop: &Shop,
    draft: &SheetDraft,
    changed: usize,
    wrong: usize,
    asked: bool,
    look: Callback<MouseEvent>,
) -> Html {
    let differs = counted(shop, "own.differs", changed, &draft.from());
    let unchanged = changed == 0;
    let said = match wrong {
        0 if unchanged && asked => shop.say("own.nothing-yet"),
        0 => AttrValue::default(),
        n => shop.say_with("own.wrong-count", &[("n", n.to_string())]),
    };
    let class = if wrong > 0 || unchanged { "next-step not-yet" } else { "next-step" };
    html! {
        <div class="own-bar">
            <p role="status"><b>{ differs }</b>{ " " }<span class="wrong">{ said }</span></p>
            <button type="button" {class} onclick={look}>{ shop.say("own.what-changes") }</button>
        </div>
    }
}
