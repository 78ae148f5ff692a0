//! Attempts in which a scenario set is taken: what is evidence, what is sealed, and how they go on.

mod support;

use std::sync::Arc;
use stepboard::content::Content;
use stepboard::learn::check::{Now, Sealed, Sitting, answers_of, lost_sets, sheet_of};
use stepboard::learn::evidence::{Asked, Uncounted, evidence};
use stepboard::record::{Attempts, Certainty, Event, Journal, Moment, Standing, Step, Taking, Within};
use support::content;
use support::log::{Log, date};

/// A family about safety, and the competency that it bears on.
const FAMILY: &str = "mask-wants";
const COMPETENCY: &str = "mask-worn";

fn on(day: u32) -> Now {
    let day = date(day);
    Now { day: Some(day), at: Moment::of(&format!("{day}T20:00:00Z")) }
}

/// A set of three cards, opened; what is answered next belongs to it.
fn taken(evidence: bool, at_once: bool) -> Log {
    let mut log = Log::new("a", "Ana");
    let (attempt, set) = ("one".to_owned(), "set-1".to_owned());
    let competencies = if evidence { vec![COMPETENCY.to_owned()] } else { Vec::new() };
    let taking = Some(Taking { cards: 3, at_once });
    log.step("one", Step::Opened { set: set.clone(), competencies, taking });
    log.within = if evidence { Within::Check { attempt, set } } else { Within::Set { attempt, set } };
    log
}

fn is_sealed(content: &Content, log: &Log, day: u32) -> Vec<bool> {
    let sealed = Sealed::of(content, &log.events, on(day));
    log.events.iter().filter_map(|event| event.answer()).map(|entry| sealed.hides(entry)).collect()
}

#[test]
fn a_set_that_is_no_evidence_counts_as_practice_and_opens_no_error_about_safety() {
    let content = content();
    let mut log = taken(false, false);
    log.certainty = Certainty::OnTheJob;
    log.answer(FAMILY, false).answer(FAMILY, true).answer("own-card-0011223344556677", true);
    let competency = content.competency(COMPETENCY).expect("known");
    let found = evidence(&log.events, &Asked::usual(&content, "Ana", competency));
    assert_eq!((found.attempt, found.state.answers, found.hazards.len()), (0, 0, 0));
    // The card of the shop's own bears on nothing.
    assert_eq!(found.uncounted, [(Uncounted::Practice, 2)].into());
    let (attempts, strays) = Attempts::of(&log.events);
    assert_eq!((attempts.all()[0].answers, attempts.all()[0].set_left(), strays.len()), (3, 0, 0));
}

#[test]
fn a_set_that_is_a_check_counts_as_any_other_check() {
    let content = content();
    let competency = content.competency(COMPETENCY).expect("known");
    let of = |log: &Log| evidence(&log.events, &Asked::usual(&content, "Ana", competency));
    let mut set = taken(true, false);
    let mut check = Log::new("a", "Ana");
    check.open("one", &[COMPETENCY]);
    for log in [&mut set, &mut check] {
        log.answer(FAMILY, true).answer(FAMILY, false).answer("own-card-0011223344556677", false);
    }
    assert_eq!(of(&set), of(&check));
    assert_eq!((of(&set).state.answers, of(&set).hazards.len()), (2, 1));
}

#[test]
fn answers_are_sealed_until_all_cards_of_the_set_are_given_whatever_the_day() {
    let content = content();
    for evidence in [true, false] {
        let mut log = taken(evidence, false);
        log.answer(FAMILY, true);
        assert_eq!(is_sealed(&content, &log, 0), [true]);
        assert_eq!(is_sealed(&content, &log, 1), [true], "the next day tells nothing of half a set");
        log.on(1).answer(FAMILY, true);
        assert_eq!(is_sealed(&content, &log, 1), [true; 2]);
        log.answer(FAMILY, true);
        assert_eq!(is_sealed(&content, &log, 1), [false; 3]);
        let mut closed = taken(evidence, false);
        closed.answer(FAMILY, true).step("one", Step::Closed);
        assert_eq!(is_sealed(&content, &closed, 0), [false], "closed early it is told");
    }
    let mut practised = taken(false, true);
    practised.answer(FAMILY, true);
    assert_eq!(is_sealed(&content, &practised, 0), [false]);
}

#[test]
fn a_check_goes_on_from_the_day_after_its_set_is_done() {
    let content = content();
    let mut log = taken(true, false);
    let state = |log: &Log, day| {
        let sitting = Sitting::of(&content, &log.events, "a", "one", on(day)).expect("open");
        (sitting.is_done(), sitting.is_over())
    };
    let deals = |log: &Log, day| {
        let sitting = Sitting::of(&content, &log.events, "a", "one", on(day)).expect("open");
        let sheet = content.sheets.first().expect("ships");
        sitting.next(&stepboard::content::World { content: &content, sheet }).is_some()
    };
    log.answer(FAMILY, true).answer(FAMILY, true);
    assert_eq!((state(&log, 0), deals(&log, 0)), ((false, false), false), "the set deals its third card");
    log.answer(FAMILY, true);
    assert_eq!((state(&log, 0), deals(&log, 0)), ((true, false), false), "told: no card more today");
    assert_eq!((state(&log, 1), deals(&log, 1)), ((false, false), true), "evidence asks for other days");
    // A set that is no evidence is over with its last card.
    let mut practised = taken(false, true);
    practised.answer(FAMILY, true).answer(FAMILY, true).answer(FAMILY, true);
    assert_eq!(state(&practised, 1), (true, true));
}

#[test]
fn a_check_goes_on_with_the_sheet_that_it_began_on_or_not_at_all() {
    let content = content();
    let in_use = content.sheets.last();
    let mut log = taken(true, false);
    let on = |log: &Log, set: &str| {
        let answers = answers_of(&log.events, "a", "one");
        sheet_of(&content, set, &answers, in_use).map(|sheet| sheet.slug.clone())
    };
    assert_eq!(on(&log, "set-1"), in_use.map(|sheet| sheet.slug.clone()), "nothing is answered yet");
    log.answer(FAMILY, true);
    assert_eq!(on(&log, "set-1").as_deref(), Some("nitrocellulose"), "that of the first answer");
    let ships = content.sets.first().expect("one ships");
    assert_eq!(on(&log, &ships.slug).as_ref(), Some(&ships.sheet));
    for event in &mut log.events {
        if let Event::Answered(entry) = event {
            let entry = Arc::make_mut(entry);
            "own-00112233".clone_into(&mut entry.sheet.slug);
        }
    }
    assert_eq!(on(&log, "set-1"), None, "the sheet in use would ask about another process");
}

#[test]
fn the_events_of_one_person_keep_their_numbers() {
    let mut log = taken(false, true);
    log.answer(FAMILY, true);
    "Bo".clone_into(&mut log.person);
    log.answer(FAMILY, false);
    let of = |person| -> Vec<u64> {
        let own = Journal::new(log.events.clone()).of_person(person);
        own.events().iter().map(|event| event.stamp().sequence).collect()
    };
    assert_eq!((of("Ana"), of("Bo")), (vec![1, 2], vec![3]));
}

#[test]
fn events_of_sets_are_read_as_they_were_written() {
    let mut log = taken(false, true);
    log.answer(FAMILY, true).step("one", Step::Left);
    let text = serde_json::to_string(&log.events).expect("writes");
    for part in [
        r#""step":{"opened":{"set":"set-1","competencies":[],"taking":{"cards":3,"at_once":true}}}"#,
        r#""within":{"set":{"attempt":"one","set":"set-1"}}"#,
    ] {
        assert!(text.contains(part), "{part} in {text}");
    }
    let read: Journal = serde_json::from_str(&text).expect("reads");
    assert_eq!(read.events(), log.events);
    assert_eq!(Attempts::of(read.events()).0.all()[0].standing, Standing::Left);
    // A check without a set is written as before.
    let mut check = Log::new("a", "Ana");
    check.open("one", &[COMPETENCY]);
    assert!(!serde_json::to_string(&check.events).expect("writes").contains("taking"));
}

/// Practice of a set that is not here any more can be closed; what is here, done, closed, somebody else's, of another tablet or
/// a check cannot be lost.
#[test]
fn a_set_under_way_whose_file_is_gone_can_be_closed() {
    let lost = |log: &Log, person: &str, device: &str, here: &[&str]| {
        let found = lost_sets(&log.events, person, device, |id| here.contains(&id));
        found.iter().map(|one| (one.id.to_owned(), one.answers)).collect::<Vec<_>>()
    };
    let none: Vec<(String, u32)> = Vec::new();
    let mut log = taken(false, false);
    log.answer(FAMILY, true);
    assert_eq!(lost(&log, "Ana", "a", &["set-2"]), [("one".to_owned(), 1)]);
    assert_eq!(lost(&log, "Ana", "a", &["set-1"]), none);
    assert_eq!((lost(&log, "Jo", "a", &[]), lost(&log, "Ana", "b", &[])), (none.clone(), none.clone()));
    let mut done = taken(false, false);
    done.answer(FAMILY, true).answer(FAMILY, true).answer(FAMILY, true);
    assert_eq!(lost(&done, "Ana", "a", &[]), none);
    assert_eq!(lost(&taken(true, false), "Ana", "a", &[]), none, "a check");
    log.step("one", Step::Closed);
    assert_eq!(lost(&log, "Ana", "a", &[]), none);
    // Closed half-way its answers are told, as those of any check that is over.
    assert!(is_sealed(&content(), &log, 1).iter().all(|sealed| !sealed));
}
