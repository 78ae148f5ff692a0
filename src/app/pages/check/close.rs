//! Closing a check or a set, asked for twice: what it has come to does not go on in the next one.

use super::super::events::turn;
use crate::app::hooks::{use_book, use_desk};
use crate::app::state::{OnDesk, use_shop};
use crate::record::Step;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app::pages) struct CloseProps {
    pub(in crate::app::pages) attempt: String,
    /// Whether nothing more can come of it, so that nothing need be asked.
    pub(in crate::app::pages) over: bool,
    /// Told before it is closed.
    #[prop_or_default]
    pub(in crate::app::pages) closing: Callback<()>,
    /// Begins the keys of what is said.
    #[prop_or("check")]
    pub(in crate::app::pages) words: &'static str,
}

#[component]
pub(in crate::app::pages) fn Close(props: &CloseProps) -> Html {
    let shop = use_shop();
    let (books, desk) = (use_book(), use_desk());
    // A card of another check may lie on the desk.
    let lies = desk.check.as_ref().is_some_and(|draft| draft.attempt.as_ref() == Some(&props.attempt));
    let asked = use_state(|| false);
    let close = use_callback(
        (shop.clone(), books.hand_in, props.attempt.clone(), props.closing.clone(), lies),
        |_: MouseEvent, (shop, hand_in, attempt, closing, lies)| {
            closing.emit(());
            let left = if *lies { OnDesk::NextOfCheck } else { OnDesk::Same };
            hand_in.emit((turn(shop, attempt, Step::Closed), left));
        },
    );
    let (ask, keep) = (asked.clone(), asked.clone());
    let now = props.over || *asked;
    let say = |key: &str| shop.say(&format!("{}.{key}", props.words));
    html! {
        <div class="close-check">
            <p key="why" class="note" role="status">{ if now { say(if props.over { "close-over" } else { "close-why" }) } else { AttrValue::default() } }</p>
            <button key="ask" type="button" class="control" hidden={now} onclick={move |_: MouseEvent| ask.set(true)}>{ say("close") }</button>
            <button key="close" type="button" class="control" hidden={!now} onclick={close}>{ say("close-now") }</button>
            <button key="keep" type="button" class="control" hidden={!*asked || props.over} onclick={move |_: MouseEvent| keep.set(false)}>{ say("keep") }</button>
        </div>
    }
}
