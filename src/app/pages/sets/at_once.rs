//! What came of an answer, told at once.

use super::super::card::{Around, cautions, stage_name};
use super::super::dealt::Dealt;
use super::own::OwnVerdict;
use crate::app::hooks::use_keys;
use crate::app::parts::{Frame, Verdict, answered_panels, card_ticket};
use crate::app::state::{Shop, use_shop};
use crate::card::{self, Card};
use crate::device::clock;
use crate::record::Entry;
use std::rc::Rc;
use yew::prelude::*;

/// A tap so soon after the screen came up was meant for the one before.
const SECOND_TAP_MS: f64 = 400.0;

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
    let up = *use_memo((), |()| clock::ticks());
    let on_next = use_callback(props.on_next.clone(), move |(), on_next| {
        if clock::ticks() - up >= SECOND_TAP_MS {
            on_next.emit(());
        }
    });
    let on_key = use_callback(on_next.clone(), |key: String, on_next| {
        let enter = key == "Enter";
        if enter {
            on_next.emit(());
        }
        enter
    });
    use_keys(on_key);
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
                <div key="verdict" class="verdict-place">{ verdict(&shop, card, entry) }</div>
                <details key="card" class="seen">
                    <summary>{ shop.say("verdict.card") }</summary>
                    { card_ticket(&shop, card) }
                    <p class="asked">{ shop.voice().ask(card) }</p>
                </details>
            </Frame>
        },
    }
}

fn verdict(shop: &Shop, card: &Rc<Card>, entry: &Entry) -> Html {
    let Some(world) = shop.world(&entry.sheet.slug) else { return Html::default() };
    let Some(graded) = card::grade(card, &world, &entry.answer).map(Rc::new) else { return Html::default() };
    let tests = card::weigh(card, &world, &graded.solution.right, &entry.answer);
    let panels = answered_panels(shop, card, entry.answer.place(), &Callback::from(|_| ()));
    html! {
        <Verdict card={Rc::clone(card)} {graded} {tests} answer={entry.answer.clone()} certainty={entry.certainty} {panels} />
    }
}
