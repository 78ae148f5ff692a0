//! What is left in the journal when a person is erased: that something was, under which numbers, and nothing else.

use crate::record::{Erased, Event, Journal, Stamp};

/// What stands in the place of all of a person's events: the numbers that it erases. Its stamp names nobody.
#[must_use]
pub fn erased(journal: &Journal, person: &str, stamp: Stamp) -> Erased {
    let theirs = journal.events().iter().map(Event::stamp).filter(|stamp| stamp.person == person);
    let numbers = theirs.map(|stamp| stamp.sequence).collect();
    Erased { stamp: Stamp { person: String::new(), ..stamp }, numbers }
}
