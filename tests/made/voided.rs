//! What was found wrong, on a tablet of its own: a set, the cards of a family that a check asks, and such as were found right
//! again.

use crate::log::Log;
use std::fs;
use std::path::Path;
use stepboard::record::{CardKind, Event, Journal, Wrong};

/// Of how many families that were asked in checks one is found wrong, and one more is found right again.
const ONE_IN: usize = 5;

/// Writes it beside the journals in a folder.
pub(crate) fn write(folder: &Path) {
    let text = fs::read_to_string(folder.join("tablet-0000.json")).expect("a journal");
    let journal: Journal = serde_json::from_str(&text).expect("a journal");
    let checked = |event: &Event| {
        let entry = event.answer().filter(|entry| entry.within.set().is_some())?;
        Some((
            CardKind { family: entry.family.clone(), version: entry.version },
            entry.within.set()?.to_owned(),
        ))
    };
    let asked: Vec<(CardKind, String)> = journal.events().iter().filter_map(checked).collect();
    let (mut kinds, mut sets): (Vec<CardKind>, Vec<String>) = asked.into_iter().unzip();
    kinds.sort();
    kinds.dedup();
    sets.sort();
    sets.dedup();
    let mut log = Log::new("voided", "");
    log.voids(Wrong::Set { set: sets.first().expect("a set").clone() }, "Wrong picture");
    for kind in kinds.iter().step_by(ONE_IN) {
        log.voids(Wrong::Cards(kind.clone()), "Wrong table");
    }
    for kind in kinds.iter().skip(1).step_by(ONE_IN) {
        log.voids(Wrong::Cards(kind.clone()), "Wrong edge");
        let void = log.events.last().expect("a voiding").stamp().name();
        log.voids(Wrong::Void { void }, "It was right after all");
    }
    let text = serde_json::to_string(&Journal::new(log.events)).expect("json");
    fs::write(folder.join("voided.json"), text).expect("written");
}
