//! What of a journal has not been handed in.

use crate::record::{Event, Journal, Step};

/// The events of a journal behind number `sent`, those that the last file did not have; `None` where there are none. A file
/// holds what is new since the one before it, so that the folder does not get the whole journal each time; whoever reads
/// them all has everything.
#[must_use]
pub fn fresh(journal: &Journal, sent: u64) -> Option<Journal> {
    let new: Vec<Event> =
        journal.events().iter().filter(|event| event.stamp().sequence > sent).cloned().collect();
    (!new.is_empty()).then(|| Journal::new(new))
}

/// Whether a check or a set was finished behind number `sent`: then there is something to hand in by itself.
#[must_use]
pub fn finished(journal: &Journal, sent: u64) -> bool {
    let closes = |event: &&Event| matches!(event, Event::Attempt(turn) if turn.step == Step::Closed);
    journal.events().iter().filter(closes).any(|event| event.stamp().sequence > sent)
}
