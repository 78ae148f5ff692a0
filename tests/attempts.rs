//! Attempts belong to one device until they are closed, and journals of several devices are merged without doubling.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod support;

use stepboard::card::Dice;
use stepboard::record::{AssessorName, Attempts, Clash, Event, Journal, Standing, Step, Stray, merge};
use support::any::USUAL;
use support::inputs;
use support::log::Log;

const FAMILY: &str = "wants-filler";

fn log(device: &str) -> Log {
    Log::new(device, "Ana")
}

/// What stands of each attempt: name, device, answers, standing; and what belongs to none.
type Told<'a> = (Vec<(&'a str, &'a str, u32, Standing)>, Vec<Stray>);

fn told(events: &[Event]) -> Told<'_> {
    let (attempts, strays) = Attempts::of(events);
    let all = attempts.all().iter().map(|one| (one.id, one.device, one.answers, one.standing)).collect();
    (all, strays.into_iter().map(|(_, stray)| stray).collect())
}

#[test]
fn an_attempt_is_opened_left_taken_up_again_and_closed() {
    let mut log = log("a");
    log.open("one", &["pores-filled"]).answer(FAMILY, true);
    assert_eq!(told(&log.events).0, [("one", "a", 1, Standing::Open)]);
    log.step("one", Step::Left);
    assert_eq!(told(&log.events).0, [("one", "a", 1, Standing::Left)]);
    // Answers right after it was left: somebody took it up again, though nothing said so.
    let mut silent = log.clone();
    silent.answer(FAMILY, true);
    assert_eq!(told(&silent.events).0, [("one", "a", 2, Standing::Open)]);
    log.on(3).step("one", Step::Resumed).answer(FAMILY, false).step("one", Step::Closed);
    assert_eq!(told(&log.events), (vec![("one", "a", 2, Standing::Closed)], vec![]));
    let events = log.events.clone();
    let (attempts, _) = Attempts::of(&events);
    let one = &attempts.all()[0];
    assert_eq!(
        (one.person, one.set, one.competencies),
        ("Ana", "a-set", ["pores-filled".to_owned()].as_slice())
    );
    // A closed one takes nothing more.
    log.answer(FAMILY, true)
        .step("one", Step::Resumed)
        .step("one", Step::Opened { set: String::new(), competencies: vec![], taking: None });
    assert_eq!(told(&log.events).0, [("one", "a", 2, Standing::Closed)]);
    assert_eq!(told(&log.events).1, [Stray::Closed, Stray::Closed, Stray::OpenedBefore]);
}

#[test]
fn halves_of_an_attempt_on_two_devices_are_never_joined() {
    let (mut one, mut other) = (log("a"), log("b"));
    one.open("one", &["pores-filled"]).answer(FAMILY, true);
    // The second tablet goes on as if the attempt were its own.
    other.on(1);
    other.within = one.within.clone();
    other.answer(FAMILY, true).step("one", Step::Closed);
    let events = merge(&[Journal::new(one.events.clone()), Journal::new(other.events.clone())]).unwrap();
    let (attempts, strays) = told(&events);
    assert_eq!(attempts, [("one", "a", 1, Standing::Open)]);
    assert_eq!(strays, [Stray::OtherDevice, Stray::OtherDevice]);
    // Alone nobody knows of the first half.
    assert_eq!(told(&other.events).1, [Stray::NotOpened, Stray::NotOpened]);
    // Opened on both under one name they are two.
    let mut third = log("c");
    third.open("one", &["pores-filled"]).answer(FAMILY, false).answer(FAMILY, false);
    let events = merge(&[Journal::new(one.events), Journal::new(third.events)]).unwrap();
    assert_eq!(
        told(&events),
        (vec![("one", "a", 1, Standing::Open), ("one", "c", 2, Standing::Open)], vec![])
    );
}

#[test]
fn nobody_answers_in_the_attempt_of_somebody_else() {
    let mut log = log("a");
    log.open("one", &["pores-filled"]);
    log.person = "Jo".to_owned();
    log.answer(FAMILY, true).step("one", Step::Closed);
    assert_eq!(
        told(&log.events),
        (vec![("one", "a", 0, Standing::Open)], vec![Stray::OtherPerson, Stray::OtherPerson])
    );
}

#[test]
fn a_number_that_stands_for_two_events_is_a_clash_and_nothing_is_merged() {
    let mut one = log("a");
    one.answer(FAMILY, true).answer(FAMILY, true);
    let mut copied = one.clone();
    one.answer(FAMILY, true);
    copied.answer(FAMILY, false);
    let journals = [Journal::new(one.events), Journal::new(copied.events)];
    let clash = merge(&journals).unwrap_err();
    assert_eq!(clash, Clash { device: "a".to_owned(), sequence: 3 });
    assert!(clash.to_string().contains("device `a` has two different events of number 3"), "{clash}");
}

/// Journals of one to four devices, some of them cut short, some there twice, with clocks that go back at times.
fn journals(dice: &mut Dice) -> Vec<Journal> {
    let devices = 1 + dice.below(4);
    let mut made = Vec::new();
    for device in 0..devices {
        let mut log = log(&format!("device-{device}"));
        log.person = (*dice.pick(&["Ana", "Jo"]).unwrap()).to_owned();
        if dice.one_in(2) {
            log.open("one", &["pores-filled"]);
        }
        for _ in 0..dice.below(8) {
            log.on(log.day + dice.below(5)).minute += dice.below(300);
            log.day = log.day.saturating_sub(dice.below(3));
            log.answer(FAMILY, dice.one_in(2));
        }
        for _ in 0..=dice.below(2) {
            let kept = usize::try_from(dice.below(9)).unwrap().max(log.events.len().saturating_sub(3));
            made.push(Journal::new(log.events.iter().take(kept).cloned().collect()));
        }
        made.push(Journal::new(log.events));
    }
    made
}

#[test]
fn merging_keeps_each_event_once_and_the_order_of_each_device_whatever_the_order_of_journals() {
    let mut dice = Dice::new("merge");
    for _ in 0..inputs(USUAL / 4) {
        let mut all = journals(&mut dice);
        let merged = merge(&all).unwrap();
        let names = |event: &Event| (event.stamp().device.clone(), event.stamp().sequence);
        let mut wanted: Vec<_> = all.iter().flat_map(Journal::events).map(names).collect();
        wanted.sort();
        wanted.dedup();
        let mut found: Vec<_> = merged.iter().map(names).collect();
        for (device, _) in &wanted {
            let of: Vec<u64> =
                found.iter().filter(|(other, _)| other == device).map(|(_, number)| *number).collect();
            assert!(of.is_sorted(), "{device}: {of:?}");
        }
        found.sort();
        assert_eq!(found, wanted);
        dice.shuffle(&mut all);
        assert_eq!(merge(&all).unwrap(), merged, "the order of journals");
        let twice: Vec<Journal> = all.iter().chain(&all).cloned().collect();
        assert_eq!(merge(&twice).unwrap(), merged, "each twice");
    }
}

#[test]
fn whoever_sits_beside_must_be_there_before_the_first_answer() {
    let by = |name: &str| AssessorName { number: "s-01".to_owned(), name: name.to_owned() };
    let mut log = Log::new("a", "Ana");
    log.open("one", &["room-safe"]).step("one", Step::Supervised { by: by("Ruth") });
    log.answer("wants-filler", true).step("one", Step::Supervised { by: by("Theo") });
    log.open("two", &["room-safe"]).answer("wants-filler", true);
    log.step("two", Step::Supervised { by: by("Theo") });
    let (attempts, strays) = Attempts::of(&log.events);
    assert!(strays.is_empty());
    let told: Vec<Option<String>> =
        attempts.all().iter().map(|one| one.supervised.map(|by| by.name.clone())).collect();
    assert_eq!(told, [Some("Ruth".to_owned()), None]);
}
