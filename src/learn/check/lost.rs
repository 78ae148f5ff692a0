//! Sets that were begun and whose files are gone.

use super::open_of;
use crate::record::{Attempt, Event};

/// The sets under way of a person on a device that are evidence for nothing and are not here any more, oldest first. No card
/// of them can be dealt: they can be closed alone. Those that are evidence are checks, and closed with them.
#[must_use]
pub fn lost_sets<'a>(
    events: &'a [Event],
    person: &str,
    device: &str,
    here: impl Fn(&str) -> bool,
) -> Vec<Attempt<'a>> {
    let mut open = open_of(events, person);
    open.retain(|one| {
        one.device == device && one.competencies.is_empty() && one.set_left() > 0 && !here(one.set)
    });
    open
}
