//! How the person at work stands with a set on this tablet.

use crate::app::route::Route;
use crate::app::state::{KeptSet, Origin, SetsContext, Shop};
use crate::device::clock;
use crate::exchange::set::Validity;
use crate::learn::check::{Taken, Takings, takings};
use crate::record::{Attempt, Journal};

/// How far somebody is with a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stand {
    /// Not begun, or closed half-way and to be begun again.
    New,
    /// Under way: so many cards are answered.
    Under(u32),
    /// All cards are answered, or it was closed and is done once.
    Done,
}

/// The latest attempt of the person at work at a set, on this tablet.
pub(super) fn latest<'a>(shop: &Shop, journal: &'a Journal, id: &str) -> Option<Attempt<'a>> {
    takings(journal.events(), &shop.settings.person, &shop.settings.device).rfind(|one| one.set == id)
}

pub(super) fn stand(shop: &Shop, journal: &Journal, kept: &KeptSet) -> Stand {
    stand_by(&Takings::of(journal.events(), &shop.settings.person, &shop.settings.device), kept)
}

fn stand_by(takings: &Takings, kept: &KeptSet) -> Stand {
    match takings.at(&kept.id) {
        None => Stand::New,
        Some(Taken { left: 0, .. }) => Stand::Done,
        Some(Taken { closed: true, .. }) if kept.set.is_done_once() => Stand::Done,
        Some(Taken { closed: true, .. }) => Stand::New,
        Some(Taken { answers, .. }) => Stand::Under(answers),
    }
}

/// Where somebody goes who is so many cards into a set: to its next card, or to its page where it is not begun or its sheet is
/// not to be had.
pub(in crate::app) fn way_on(shop: &Shop, kept: &KeptSet, at: u32) -> Route {
    let id = kept.id.clone();
    if at > 0 && kept.set.sheet_of(shop.content()).is_ok() {
        Route::TakeSet { id }
    } else {
        Route::SetOf { id }
    }
}

/// The set that waits for the person at work: one under way, else the one taken first that is open and not begun.
pub(in crate::app) fn set_waiting<'a>(
    sets: &'a SetsContext,
    takings: &Takings,
) -> Option<(&'a KeptSet, u32)> {
    let today = clock::today();
    // One under way goes on whatever the day: its days are those on which it may be begun.
    let under =
        sets.all.iter().rev().filter(|one| one.origin != Origin::Ready).find_map(|one| {
            match stand_by(takings, one) {
                Stand::Under(at) => Some((one, at)),
                Stand::New | Stand::Done => None,
            }
        });
    let new = |one: &&KeptSet| {
        one.origin == Origin::Taken
            && one.validity(today) == Validity::Open
            && stand_by(takings, one) == Stand::New
    };
    under.or_else(|| sets.all.iter().rev().find(new).map(|one| (one, 0)))
}
