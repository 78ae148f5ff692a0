//! The answers of a check, as they are looked at when they may be told.

use crate::card::Mark;
use crate::record::{Entry, Event, Placed};
use crate::rules::sorted::sorted;

/// The answers of the check of that name on that device, oldest first; what is stray is none of them.
#[must_use]
pub fn answers_of<'a>(events: &'a [Event], device: &str, name: &str) -> Vec<&'a Entry> {
    Placed::of(events).answers(name, device)
}

/// The same in the order in which they are looked at: sure and wrong, wrong, right; the earlier first.
#[must_use]
pub fn in_order(answers: Vec<&Entry>) -> Vec<&Entry> {
    let key = |entry: &Entry| (!entry.sure_and_wrong(), entry.mark == Mark::Right, entry.stamp.sequence);
    sorted(answers, |a, b| key(a).cmp(&key(b)))
}
