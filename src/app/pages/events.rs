//! Events that the screens hand in. Their numbers are given when they are stored.

use super::spray::Came;
use crate::app::state::Shop;
use crate::card::{self, Answer, Card};
use crate::exchange::set::OwnCard;
use crate::record::{Certainty, Draft, Entry, Event, Help, SheetName, Step, Turn, Within};
use std::rc::Rc;

/// A card that is handed in, with what its run came to.
pub(super) struct HandedIn {
    pub(super) draft: Rc<Draft>,
    pub(super) card: Rc<Card>,
    pub(super) came: Came,
}

/// The answer of a draft. `None` while something is missing.
pub(super) fn answered(
    shop: &Shop,
    HandedIn { draft, card, came }: &HandedIn,
    active_seconds: Option<u32>,
    within: Within,
) -> Option<Event> {
    let world = shop.world(&draft.card.sheet.slug)?;
    let answer = draft.slate.answer(card)?;
    let graded = came.graded(card, &world, &answer)?;
    let entry = Entry {
        stamp: shop.stamp(&draft.person),
        family: card.family.clone(),
        version: card.version,
        seed: card.seed,
        sheet: draft.card.sheet.clone(),
        answer,
        certainty: draft.certainty?,
        mark: graded.mark,
        guess: card::luck(card, &world),
        active_seconds,
        help: Help::None,
        within,
    };
    Some(entry.into())
}

/// An answer to a card of the shop's own, in a set that is dealt on that sheet.
pub(super) fn answered_own(
    shop: &Shop,
    card: &OwnCard,
    sheet: SheetName,
    (answer, certainty): (Answer, Certainty),
    active_seconds: Option<u32>,
    within: Within,
) -> Event {
    let entry = Entry {
        stamp: shop.stamp(&shop.settings.person),
        family: card.id(),
        version: OwnCard::VERSION,
        seed: 0,
        sheet,
        mark: card.grade(&answer),
        answer,
        certainty,
        guess: Some(card.luck()),
        active_seconds,
        help: Help::None,
        within,
    };
    entry.into()
}

/// A step of a check of whoever works.
pub(super) fn turn(shop: &Shop, attempt: &str, step: Step) -> Event {
    let stamp = shop.stamp(&shop.settings.person);
    Turn { stamp, attempt: attempt.to_owned(), step }.into()
}
