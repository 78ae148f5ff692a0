//! What is handed in, and when; what is left of it when a person is erased.

use crate::support::content;
use crate::support::log::{Log, ana};
use stepboard::exchange::folder::{Name, Sort, Without, finished, fresh, parts, without};
use stepboard::exchange::{Named, Results};
use stepboard::record::{Event, Journal, Step, Taking, Within};

const FAMILY: &str = "wants-filler";
/// Number of the second of two answers to a set that was opened with the first event.
const SECOND: u64 = 3;

/// A set of two cards that is evidence, opened.
fn opened() -> Log {
    let mut log = ana();
    let taking = Some(Taking { cards: 2, at_once: false });
    let (attempt, set) = ("one".to_owned(), "set-1".to_owned());
    log.step("one", Step::Opened { set: set.clone(), competencies: vec!["mask-worn".to_owned()], taking });
    log.within = Within::Check { attempt, set };
    log
}

fn is_finished(log: &Log, sent: u64) -> bool {
    finished(&Journal::new(log.events.clone()), sent)
}

#[test]
fn a_set_is_finished_with_its_last_card_though_its_check_stays_open() {
    let mut log = opened();
    log.answer(FAMILY, true);
    assert!(!is_finished(&log, 0));
    log.within = Within::Practice;
    log.answer(FAMILY, true);
    assert!(!is_finished(&log, 0), "practice is no card of the set");
    let mut log = opened();
    log.answer(FAMILY, true).answer(FAMILY, false);
    assert!(is_finished(&log, 0) && is_finished(&log, SECOND - 1));
    assert!(!is_finished(&log, SECOND), "it was handed in");
    log.answer(FAMILY, true);
    assert!(!is_finished(&log, SECOND), "the cards of the check behind it finish nothing");
    log.step("one", Step::Closed);
    assert!(is_finished(&log, SECOND), "the end of the check does");
}

fn file_of(events: &[Event]) -> Option<String> {
    let journal = Journal::new(events.to_vec());
    Results::of(&content(), &journal, &[], Vec::new(), ("a", "2027-03-12T14:30:00Z")).text().ok()
}

#[test]
fn what_is_too_much_for_one_file_goes_in_several_that_have_every_event_once() {
    let mut log = ana();
    for _ in 0..20 {
        log.answer(FAMILY, true);
    }
    let events = fresh(&Journal::new(log.events.clone()), 3);
    assert_eq!(events, log.events[3..]);
    let whole = file_of(&events).expect("a file");
    let one = parts(&events, whole.len(), file_of);
    assert_eq!((one.len(), one[0].last, &one[0].text), (1, 20, &whole));
    let most = whole.len() / 3;
    let several = parts(&events, most, file_of);
    assert!(several.len() > 2 && several.iter().all(|part| part.text.len() <= most));
    let mut read = Vec::new();
    for part in &several {
        let results = Results::read(part.text.as_bytes()).expect("a file");
        assert_eq!(results.events.last().map(|event| event.stamp().sequence), Some(part.last));
        read.extend(results.events);
    }
    assert_eq!(read, events);
    assert!(parts(&[], most, file_of).is_empty());
    assert!(parts(&events, 100, file_of).is_empty(), "what fits in no file is not handed in");
}

#[test]
fn a_waiting_file_goes_without_the_person_who_was_erased() {
    let mut log = ana();
    log.answer(FAMILY, true);
    log.person = "Ben".to_owned();
    log.answer(FAMILY, false);
    let named = |who: &str| Named { journal: who.to_owned(), number: who.to_owned(), name: who.to_owned() };
    let people = vec![named("Ana"), named("Ben")];
    let journal = Journal::new(log.events.clone());
    let both = Results::of(&content(), &journal, &[], people, ("a", "2027-03-12T14:30:00Z"));
    let text = both.text().expect("a file");
    let name = Name::of(Sort::Results, &text);
    let Without::Less(other, less) = without(&name, &text, "Ben") else { panic!("Ben is in it") };
    assert!(other.fits(less.as_bytes()) && !less.contains("Ben"));
    let left = Results::read(less.as_bytes()).expect("a file");
    assert_eq!((&left.events[..], &left.people[..]), (&log.events[..1], &both.people[..1]));
    assert_eq!(without(&other, &less, "Ben"), Without::Same);
    assert_eq!(without(&other, &less, "Ana"), Without::Nothing);
    assert_eq!(without(&name, "damaged", "Ben"), Without::Nothing);
    assert_eq!(
        without(&Name::of(Sort::Set, "Ben"), "Ben", "Ben"),
        Without::Same,
        "a set is nobody's answers"
    );
}
