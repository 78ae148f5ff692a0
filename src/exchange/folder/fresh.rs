//! What of a journal has not been handed in.

use crate::record::{Event, Journal, Step};
use std::collections::BTreeMap;

/// The events of a journal behind number `sent`, those that the last file did not have. A file holds what is new since the
/// one before it, so that the folder does not get the whole journal each time; whoever reads them all has everything.
#[must_use]
pub fn fresh(journal: &Journal, sent: u64) -> Vec<Event> {
    journal.events().iter().filter(|event| event.stamp().sequence > sent).cloned().collect()
}

/// Whether a check, a set or a walk was finished behind number `sent`: then there is something to hand in by itself. A set is
/// finished with its last card too, since one that is evidence stays open for the cards of its check.
#[must_use]
pub fn finished(journal: &Journal, sent: u64) -> bool {
    let mut left: BTreeMap<&str, u32> = BTreeMap::new();
    journal.events().iter().any(|event| {
        let ends = match event {
            Event::Attempt(turn) => {
                if let Step::Opened { taking: Some(taking), .. } = &turn.step {
                    left.insert(&turn.attempt, taking.cards);
                }
                turn.step == Step::Closed
            }
            Event::Answered(entry) => {
                let of = entry.within.attempt().and_then(|(attempt, _)| left.get_mut(attempt));
                of.is_some_and(|left| {
                    let last = *left == 1;
                    *left = left.saturating_sub(1);
                    last
                })
            }
            Event::Walked(walked) => walked.ends(),
            _ => false,
        };
        ends && event.stamp().sequence > sent
    })
}
