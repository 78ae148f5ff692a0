//! How the person at work stands with a set on this tablet.

use crate::app::state::{KeptSet, Shop};
use crate::learn::check::{Stand, Takings, takings};
use crate::record::{Attempt, Journal};

/// The latest attempt of the person at work at a set, on this tablet.
pub(super) fn latest<'a>(shop: &Shop, journal: &'a Journal, id: &str) -> Option<Attempt<'a>> {
    takings(journal.events(), &shop.settings.person, &shop.settings.device).rfind(|one| one.set == id)
}

pub(super) fn stand(shop: &Shop, journal: &Journal, kept: &KeptSet) -> Stand {
    let takings = Takings::of(journal.events(), &shop.settings.person, &shop.settings.device);
    takings.stand(&kept.id, kept.set.is_done_once())
}
