//! What came of an answer, told at once.

use super::super::answered::Answered;
use super::super::card::{Around, cautions, stage_name};
use super::super::dealt::Dealt;
use super::own::OwnVerdict;
use crate::app::hooks::{use_enter, use_second_tap};
use crate::app::parts::{Frame, seen_card};
use crate::app::state::use_shop;
use crate::record::Entry;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct AtOnceProps {
    pub(super) card: Dealt,
    pub(super) entry: Rc<Entry>,
    pub(super) around: Around,
    pub(super) on_next: Callback<()>,
    /// Whether it was the last card.
    pub(super) last: bool,
}

#[component]
pub(super) fn AtOnce(props: &AtOnceProps) -> Html {
    let shop = use_shop();
    let entry = &props.entry;
    let second_tap = use_second_tap();
    let on_next = use_callback(props.on_next.clone(), move |(), on_next| {
        if !second_tap.now() {
            on_next.emit(());
        }
    });
    use_enter(on_next.clone());
    let word = if props.last { "sets.take.to-result" } else { "sets.take.next" };
    let action = html! {
        <div class="onward"><button type="button" class="next-step" onclick={on_next.reform(|_: MouseEvent| ())}>{ shop.say(word) }</button></div>
    };
    let Around { note, marks, back, .. } = props.around.clone();
    match &props.card {
        Dealt::Own(card) => html! {
            <Frame class="handed" title={shop.say("sets.take.own-title")} {note} back={Some(back)} {marks} cautions={shop.cautions_for(&[])} {action}>
                <OwnVerdict card={Rc::clone(card)} answer={entry.answer.clone()} certainty={entry.certainty} />
            </Frame>
        },
        Dealt::Computed(card) => html! {
            <Frame class="handed" title={stage_name(&shop, card)} {note} back={Some(back)} {marks} cautions={cautions(&shop, card)} {action}>
                <div key="verdict" class="verdict-place"><Answered card={Rc::clone(card)} entry={Rc::clone(entry)} /></div>
                { seen_card(&shop, card) }
            </Frame>
        },
    }
}
