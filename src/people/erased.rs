//! What is left in the journal when a person is erased: that something was, under which numbers, and nothing else.

use crate::record::{Erased, Event, Journal, Stamp};
use std::collections::BTreeMap;

/// What stands in the place of all of a person's events: the numbers that it erases. Its stamp names nobody.
#[must_use]
pub fn erased(journal: &Journal, person: &str, stamp: Stamp) -> Erased {
    let theirs = journal.events().iter().map(Event::stamp).filter(|stamp| stamp.person == person);
    let (mut numbers, mut earlier) = (Vec::new(), BTreeMap::<String, Vec<u64>>::new());
    for one in theirs {
        numbers.push(one.sequence);
        if one.device != stamp.device {
            earlier.entry(one.device.clone()).or_default().push(one.sequence);
        }
    }
    Erased { stamp: Stamp { person: String::new(), ..stamp }, numbers, earlier }
}
