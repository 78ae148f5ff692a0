//! A card that was wrong and would have been done on the job: it is answered once more before anything else.

use super::HandedProps;
use crate::app::hooks::use_second_tap;
use crate::app::pages::card::{cautions, foot, stand, to_stand, wanted};
use crate::app::pages::spray::{Came, setup_of, use_came};
use crate::app::parts::{Place, answer_field, pointing, tests_field, told};
use crate::app::state::{Shop, use_shop};
use crate::card::{Answer, Card, Mark, Slate};
use crate::device::page;
use crate::record::Draft;
use std::rc::Rc;
use yew::prelude::*;

/// Id of the heading over the answer that is worked once more.
const REWORK: &str = "rework";

/// The answer that is worked once more.
pub(super) struct Rework {
    pub(super) slate: UseStateHandle<Slate>,
    /// Whether the face of a card that is sprayed is at its stand.
    pub(super) at_stand: UseStateHandle<bool>,
    /// Whether it was checked and was wrong again.
    again: bool,
    /// Whether it was asked for, so that it is in view.
    begun: bool,
    /// Whether there is an answer, and whether it is still being measured.
    worked: bool,
    measuring: bool,
    on_slate: Callback<Slate>,
    pub(super) check: Callback<()>,
}

/// `has_verdict` is whether the verdict is there, below which the answer stands.
#[hook]
pub(super) fn use_rework(props: &HandedProps, has_verdict: bool) -> Rework {
    let HandedProps { draft, card, entry, put, left } = props;
    let shop = use_shop();
    let second_tap = use_second_tap();
    let slate = use_state(|| Slate::for_card(card));
    let again = use_state(|| false);
    let at_stand = use_state_eq(|| false);
    let begun = use_state_eq(|| *left);
    // Who comes back to it is brought to what is still to be done.
    use_effect_with(has_verdict && *left && entry.sure_and_wrong() && !draft.reworked, |bring| {
        if *bring {
            page::bring(REWORK);
        }
    });
    let on_slate = {
        let (slate, again) = (slate.setter(), again.setter());
        Callback::from(move |made: Slate| {
            slate.set(made);
            again.set(false);
        })
    };
    let answer = slate.answer(card);
    let came = use_came(Some(card), &entry.sheet.slug, answer.as_ref());
    let (worked, measuring) = (answer.is_some(), came == Came::Measuring);
    let check = {
        let (card, again, sheet) = (Rc::clone(card), again.setter(), entry.sheet.slug.clone());
        let begun = begun.setter();
        let (draft, put) = (Rc::clone(draft), put.clone());
        Callback::from(move |()| {
            let graded = shop
                .world(&sheet)
                .zip(answer.as_ref())
                .and_then(|(world, answer)| came.graded(&card, &world, answer));
            if second_tap.now() || measuring {
                // The second tap of a double tap is no answer; or it cannot be told yet.
            } else if graded.is_some_and(|graded| graded.mark == Mark::Right) {
                put.emit(Some(Draft { reworked: true, ..(*draft).clone() }));
            } else {
                begun.set(true);
                again.set(worked);
                page::bring(REWORK);
            }
        })
    };
    Rework { slate, at_stand, again: *again, begun: *begun, worked, measuring, on_slate, check }
}

impl Rework {
    pub(super) fn action(&self, shop: &Shop, card: &Card) -> Html {
        let (said, class) = match self.worked {
            true if self.measuring => ("spray.measuring", "next-step not-yet"),
            true => ("verdict.check", "next-step"),
            false if !self.begun => ("verdict.again", "next-step"),
            false => (wanted(card.kind), "next-step not-yet"),
        };
        let toggle = self.on_slate.reform({
            let slate = (*self.slate).clone();
            move |()| slate.clone().toggle_not_enough()
        });
        let check = self.check.reform(|_: MouseEvent| ());
        let check =
            html! { <button key="check" type="button" {class} onclick={check}>{ shop.say(said) }</button> };
        foot(shop, self.slate.not_enough, &toggle, check)
    }

    /// The stand in the place of the screen, while the face is sprayed there.
    pub(super) fn stand(&self, shop: &Shop, card: &Card, sheet: &str) -> Option<Html> {
        let setup = setup_of(shop, card, sheet).filter(|_| *self.at_stand)?;
        Some(stand(setup, cautions(shop, card), &self.slate, &self.on_slate, &self.at_stand))
    }

    /// What a place that is pointed at on the panel does.
    pub(super) fn on_place(&self, card: &Card) -> Callback<Place> {
        pointing(card, &self.slate, &self.on_slate)
    }

    /// The right answer and the field for it; where it is done, that it is.
    pub(super) fn field(&self, shop: &Shop, card: &Card, right: &Answer, done: bool) -> Html {
        let said = match (done, self.again) {
            (true, _) => shop.say("verdict.rework-done"),
            (_, true) => shop.say("verdict.rework-again"),
            _ => AttrValue::default(),
        };
        html! {
            <section key="rework" class="rework">
                <h2 id={REWORK} tabindex="-1">{ shop.say("verdict.rework-head") }</h2>
                <div key="ask" hidden={done}>
                    <p>{ shop.say("verdict.rework-why") }</p>
                    <div class="in-view">{ told(shop, card, right) }</div>
                    { tests_field(shop, card, &self.slate, &self.on_slate) }
                    { answer_field(shop, card, &self.slate, &self.on_slate, "rework") }
                    { to_stand(shop, card, &self.slate, &self.at_stand) }
                </div>
                <p key="said" role="status">{ said }</p>
            </section>
        }
    }
}
