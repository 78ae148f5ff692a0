//! Handing in the cards of a set, and closing it with the last one.

use super::super::events::{HandedIn, answered, answered_own, turn};
use super::view::View;
use crate::app::hooks::use_book;
use crate::app::state::{OnDesk, use_shop};
use crate::card::Answer;
use crate::device::Watch;
use crate::exchange::set::OwnCard;
use crate::record::{Certainty, Event, Step, Within};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// A card of the shop's own with what was answered.
pub(super) type HandedOwn = (Rc<OwnCard>, Answer, Certainty);

/// How a card is handed in: one that is computed, one of the shop's own.
pub(super) struct Giving {
    pub(super) computed: Callback<HandedIn>,
    pub(super) own: Callback<HandedOwn>,
}

/// With the last card a set that is no check of a competency is closed, and `closed` told so; `watch` is how long the card took.
#[hook]
pub(super) fn use_giving(
    view: Option<Rc<View>>,
    within: Within,
    watch: Rc<Option<Watch>>,
    closed: Rc<RefCell<bool>>,
) -> Giving {
    let shop = use_shop();
    let hand_in = use_book().hand_in;
    let sheet = view.as_ref().map(|view| view.sheet.clone());
    let give = {
        let shop = shop.clone();
        Callback::from(move |event: Event| {
            hand_in.emit((event, OnDesk::NextOfCheck));
            let last = |view: &&Rc<View>| view.at() + 1 >= view.cards.len() && !view.counts;
            let Some(view) = view.as_ref().filter(last) else { return };
            *closed.borrow_mut() = true;
            hand_in.emit((turn(&shop, &view.attempt, Step::Closed), OnDesk::Same));
        })
    };
    let seconds = {
        let watch = Rc::clone(&watch);
        move || watch.as_ref().as_ref().map(Watch::seconds)
    };
    let computed = {
        let (shop, give, seconds, within) = (shop.clone(), give.clone(), seconds.clone(), within.clone());
        Callback::from(move |handed: HandedIn| {
            if let Some(event) = answered(&shop, &handed, seconds(), within.clone()) {
                give.emit(event);
            }
        })
    };
    let own = Callback::from(move |(card, answer, certainty): HandedOwn| {
        if let Some(sheet) = sheet.clone() {
            give.emit(answered_own(&shop, &card, sheet, (answer, certainty), seconds(), within.clone()));
        }
    });
    Giving { computed, own }
}
