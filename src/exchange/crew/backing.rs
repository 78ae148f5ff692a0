//! Knowledge evidence of one person from this tablet and from others together.

use super::{Gathered, Person};
use crate::people::Member;
use crate::record::{Event, Journal, merge};
use std::collections::{BTreeMap, BTreeSet};

/// The events of this tablet with the cards, checks and walks that a person did on others, under the name that their events have
/// here; `None` where they did none elsewhere.
///
/// What assessors watched is not taken from elsewhere: a file can be changed by whoever carries it, and whoever signs would
/// read names under work that nobody here has seen. That a hazard was taught again is, as marks are: it leads to no more than that
/// a card is asked for anew.
#[must_use]
pub fn backing(
    journal: &Journal,
    gathered: &Gathered,
    person: &Person,
    member: &Member,
) -> Option<Vec<Event>> {
    let own: BTreeSet<&str> = journal.events().iter().map(|event| event.stamp().device.as_str()).collect();
    let mut elsewhere: BTreeMap<String, Vec<Event>> = BTreeMap::new();
    for event in person.events(gathered, &member.journal) {
        let counts =
            matches!(&*event, Event::Answered(_) | Event::Attempt(_) | Event::Taught(_) | Event::Walked(_));
        if counts && !own.contains(event.stamp().device.as_str()) {
            elsewhere.entry(event.stamp().device.clone()).or_default().push(event.into_owned());
        }
    }
    let journals: Vec<Journal> =
        [journal.clone()].into_iter().chain(elsewhere.into_values().map(Journal::new)).collect();
    (journals.len() > 1).then(|| merge(&journals).ok())?
}
