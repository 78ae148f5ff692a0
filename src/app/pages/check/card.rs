//! The card of a check that is to be answered: dealt where none lies on the desk, and handed in with its time.

use super::super::deal;
use super::super::events::{HandedIn, answered};
use super::view::View;
use crate::app::hooks::{use_book, use_desk};
use crate::app::state::{OnDesk, use_shop};
use crate::card::{Card, Slate};
use crate::device::Watch;
use crate::record::{Draft, Within};
use std::rc::Rc;
use yew::prelude::*;

pub(super) struct OfCheck {
    /// How far it is answered; none before one is dealt.
    pub(super) draft: Option<Rc<Draft>>,
    pub(super) card: Option<Rc<Card>>,
    pub(super) hand_in: Callback<HandedIn>,
}

#[hook]
pub(super) fn use_card(attempt: &str, view: Option<&View>) -> OfCheck {
    let shop = use_shop();
    let hand_in = use_book().hand_in;
    let desk = use_desk();
    let draft = desk.check.filter(|draft| view.is_some_and(|view| view.waits(&shop, attempt, draft)));
    let missing = view.filter(|_| draft.is_none()).and_then(|view| view.next.clone());
    use_effect_with(missing, {
        let put = desk.put_check;
        move |missing| {
            if missing.is_some() {
                put.emit(missing.clone());
            }
        }
    });
    let name = draft.as_ref().map(|draft| draft.card.clone());
    let card = use_memo((shop.clone(), name), |(shop, name)| {
        name.as_ref().and_then(|name| deal::again(shop, name)).map(Rc::new)
    });
    let card = (*card).clone();
    let fresh =
        draft.as_ref().zip(card.as_ref()).is_some_and(|(draft, card)| draft.slate == Slate::for_card(card));
    // An answer that was begun before this page was opened is not timed.
    let watch = use_memo(card.as_ref().map(|card| card.seed), |_| fresh.then(Watch::start));
    let set = view.map(|view| view.set.clone()).unwrap_or_default();
    let hand_in = use_callback(
        (shop, hand_in, watch, attempt.to_owned(), set),
        |handed: HandedIn, (shop, hand_in, watch, attempt, set)| {
            let seconds = watch.as_ref().as_ref().map(Watch::seconds);
            let within = Within::Check { attempt: attempt.clone(), set: set.clone() };
            if let Some(event) = answered(shop, &handed, seconds, within) {
                hand_in.emit((event, OnDesk::NextOfCheck));
            }
        },
    );
    OfCheck { draft, card, hand_in }
}
