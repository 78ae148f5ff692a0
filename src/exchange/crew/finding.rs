//! What was found wrong as a file by itself, for the tablets that still count it.

use crate::exchange::Results;
use crate::record::{Event, EventName, Journal, Wrong};

/// The voiding of that origin as this tablet wrote it down, with what took it back: a file of results that holds nothing else,
/// and the same one however often it is made. `None` where it is not written down here.
#[must_use]
pub fn finding(journal: &Journal, origin: &EventName) -> Option<Results> {
    let of_it = |event: &&Event| {
        let Event::Voided(one) = event else { return false };
        let lifts = matches!(&one.wrong, Wrong::Void { void } if void == origin);
        lifts || one.origin() == *origin
    };
    let events: Vec<Event> = journal.events().iter().filter(of_it).cloned().collect();
    let stamp = events.last()?.stamp();
    let (device, at) = (stamp.device.clone(), stamp.at.clone());
    Some(Results { device, at, people: Vec::new(), sheets: Vec::new(), sets: Vec::new(), events })
}
