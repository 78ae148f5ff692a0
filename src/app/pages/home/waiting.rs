//! What waits for the person at work: a set that was begun, a set that somebody put together for them, a check whose cards of
//! today are not done.

use super::next::Said;
use crate::app::route::Route;
use crate::app::state::{KeptSet, Origin, Shop, Told};
use crate::device::clock;
use crate::exchange::set::Validity;
use crate::learn::check::{Sitting, Stand, Takings, sheet_of};
use crate::record::{Attempt, Placed};

/// A check of this tablet whose cards of today are not done.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct OpenCheck {
    attempt: String,
    competencies: Vec<String>,
    today: u32,
}

impl OpenCheck {
    /// The one of the person at work that was begun last. Where a set deals its cards that set is gone on with.
    pub(super) fn of(shop: &Shop, told: &Told) -> Option<Self> {
        let (content, device) = (shop.content(), shop.settings.device.as_str());
        let events = Placed::of(told.journal.events());
        let is_here = |one: &&Attempt<'_>| {
            one.person == told.person
                && one.device == device
                && one.set_left() == 0
                && !one.competencies.is_empty()
        };
        let own = events.attempts().all().iter().rev().filter(is_here);
        let sitting = |one: &Attempt<'_>| Sitting::among(content, &events, device, one.id, told.now);
        let has_sheet = |one: &Sitting<'_>| {
            let Attempt { id, set, .. } = one.attempt;
            sheet_of(content, set, &events.answers(id, device), shop.sheet()).is_some()
        };
        let left = own.filter_map(sitting).find(|one| !one.is_done() && has_sheet(one))?;
        let Attempt { id, competencies, .. } = left.attempt;
        Some(Self { attempt: id.to_owned(), competencies: competencies.to_vec(), today: left.today })
    }

    /// The number of the card of today that comes next.
    pub(super) const fn next_card(&self) -> u32 {
        self.today + 1
    }
}

/// What waits.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Waiting {
    /// A set, and how many of its cards are answered.
    Set(KeptSet, u32),
    Check(OpenCheck),
}

impl Waiting {
    /// A set that was begun, those of the shop before those that ship; else the set taken first that is open and not begun.
    pub(super) fn of(sets: &[KeptSet], takings: &Takings) -> Option<Self> {
        let (ready, shops): (Vec<&KeptSet>, Vec<&KeptSet>) =
            sets.iter().rev().partition(|one| one.origin == Origin::Ready);
        let stand = |one: &KeptSet| takings.stand(&one.id, one.set.is_done_once());
        // One under way goes on whatever the day: its days are those on which it may be begun.
        let under = |one: &&KeptSet| match stand(one) {
            Stand::Under(at) => Some(Self::Set((*one).clone(), at)),
            Stand::New | Stand::Done => None,
        };
        let today = clock::today();
        let is_new = |one: &&&KeptSet| {
            one.origin == Origin::Taken && one.validity(today) == Validity::Open && stand(one) == Stand::New
        };
        let begun = shops.iter().chain(&ready).find_map(under);
        let new = || shops.iter().find(is_new).map(|one| Self::Set((*one).clone(), 0));
        begun.or_else(new)
    }

    /// Where it is gone on with: the next card, or the page of a set that is not begun or whose sheet is not to be had.
    pub(super) fn way_on(&self, shop: &Shop) -> Route {
        match self {
            // The sheet of a set that ships is there; those of others are read together with what looks for them.
            Self::Set(kept, at)
                if *at > 0 && (kept.origin == Origin::Ready || kept.set.sheet_of(shop.content()).is_ok()) =>
            {
                Route::TakeSet { id: kept.id.clone() }
            }
            Self::Set(kept, _) => Route::SetOf { id: kept.id.clone() },
            Self::Check(check) => Route::Sitting { attempt: check.attempt.clone() },
        }
    }

    pub(super) fn said(&self, shop: &Shop) -> Said {
        match self {
            Self::Set(kept, at) => {
                let named = [
                    ("title", shop.set_title(&kept.id, &kept.set.title).to_string()),
                    ("by", kept.set.by.clone()),
                    ("n", (at + 1).to_string()),
                ];
                let why = if kept.origin == Origin::Ready { "home.set-begun" } else { "home.set-why" };
                let go = if *at > 0 { "home.go-on" } else { "home.set-go" };
                Said {
                    title: shop.say_with("home.set", &named),
                    why: shop.say_with(why, &named),
                    go: shop.say_with(go, &named),
                }
            }
            Self::Check(check) => {
                let names = shop.competencies(&check.competencies);
                Said {
                    title: shop.say("home.check-open"),
                    why: shop.say_with("home.check-why", &[("names", names)]),
                    go: shop.say_with("home.go-on", &[("n", check.next_card().to_string())]),
                }
            }
        }
    }
}
