//! Result files of tablets, and what a crew page makes of them.

use crate::support::log::Log;
use std::collections::{BTreeMap, BTreeSet};
use stepboard::exchange::crew::Gathered;
use stepboard::exchange::folder::Name;
use stepboard::exchange::{Named, Results};
use stepboard::record::Event;

/// Of how many tablets one has a wrong answer.
const WRONG_ONE_IN: usize = 3;

/// The results of one tablet of its own: one person, who answered one card.
pub(crate) fn result(number: usize) -> String {
    let device = format!("{number:016x}");
    let journal = format!("a-{number:05}");
    let mut log = Log::new(&device, &journal);
    log.answer("wants-filler", !number.is_multiple_of(WRONG_ONE_IN));
    let person = Named { journal, number: format!("p-{number:05}"), name: format!("Apprentice {number}") };
    let results = Results {
        device,
        at: "2027-03-12T14:30:00Z".to_owned(),
        people: vec![person],
        sheets: Vec::new(),
        sets: Vec::new(),
        events: log.events,
    };
    results.text().expect("json")
}

/// Takes all files in, and all of them once more: there is one answer of one person a file, none lost and none doubled.
pub(crate) fn assert_taken_in_once(files: &BTreeMap<Name, String>) {
    let mut gathered = Gathered::default();
    for known in [0, 1] {
        for (name, text) in files {
            let results = Results::read(text.as_bytes()).unwrap_or_else(|why| panic!("{name}: {why}"));
            let added = gathered.take(results).unwrap_or_else(|clash| panic!("{name}: {clash:?}"));
            assert_eq!((added.events, added.answers, added.known), (1 - known, 1 - known, known), "{name}");
        }
        let answers: Vec<_> = gathered.events().filter_map(Event::answer).collect();
        assert_eq!((answers.len(), gathered.devices().len()), (files.len(), files.len()));
        let whose: BTreeSet<&str> = answers.iter().map(|answer| answer.stamp.person.as_str()).collect();
        let people: BTreeSet<&str> =
            gathered.devices().flat_map(|one| &one.people).map(|one| one.journal.as_str()).collect();
        assert_eq!((whose.len(), &whose), (files.len(), &people), "everybody who answered is known");
    }
}
