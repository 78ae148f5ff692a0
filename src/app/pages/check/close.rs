//! Closing a check, asked for twice: what it has come to does not go on in the next one.

use super::super::events::turn;
use crate::app::hooks::use_book;
use crate::app::state::{OnDesk, use_shop};
use crate::record::Step;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct CloseProps {
    pub(super) attempt: String,
    /// Whether nothing more can come of it, so that nothing need be asked.
    pub(super) over: bool,
    /// Told before it is closed.
    pub(super) closing: Callback<()>,
}

#[component]
pub(super) fn Close(props: &CloseProps) -> Html {
    let shop = use_shop();
    let books = use_book();
    let asked = use_state(|| false);
    let close = use_callback(
        (shop.clone(), books.hand_in, props.attempt.clone(), props.closing.clone()),
        |_: MouseEvent, (shop, hand_in, attempt, closing)| {
            closing.emit(());
            hand_in.emit((turn(shop, attempt, Step::Closed), OnDesk::NextOfCheck));
        },
    );
    let (ask, keep) = (asked.clone(), asked.clone());
    let now = props.over || *asked;
    html! {
        <div class="close-check">
            <p key="why" class="note" role="status">{ if now { shop.say(if props.over { "check.close-over" } else { "check.close-why" }) } else { AttrValue::default() } }</p>
            <button key="ask" type="button" class="control" hidden={now} onclick={move |_: MouseEvent| ask.set(true)}>{ shop.say("check.close") }</button>
            <button key="close" type="button" class="control" hidden={!now} onclick={close}>{ shop.say("check.close-now") }</button>
            <button key="keep" type="button" class="control" hidden={!*asked || props.over} onclick={move |_: MouseEvent| keep.set(false)}>{ shop.say("check.keep") }</button>
        </div>
    }
}
