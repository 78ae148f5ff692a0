//! What an instructor sees of scenario sets that people did: passed or not by the rule of the set, or why that is not said.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod support;

use stepboard::content::{Content, PassRule, Purpose, Task};
use stepboard::exchange::CarriedSheet;
use stepboard::exchange::Results;
use stepboard::exchange::crew::{Came, Gathered, KnownSet, Roll, SetDone, Way, did_set, sets_done};
use stepboard::exchange::set::{Set, Withdrawal};
use stepboard::record::{CardKind, Certainty, Event, SheetName, Step, Taking, Voids, Within, Wrong};
use stepboard::rules::term::Severity;
use support::log::{Log, ana, date};

const CARDS: u32 = 4;
const WHY: &str = "The card takes the wrong edge";

/// Four cards, three of them right to pass.
fn set(content: &Content, safety: bool) -> Set {
    Set {
        title: "Monday".to_owned(),
        note: String::new(),
        by: "Ines 12".to_owned(),
        at: "2027-01-01T07:00:00Z".to_owned(),
        sheet: CarriedSheet::Ships(SheetName::of(&content.sheets[0])),
        task: Task {
            count: CARDS,
            purpose: Purpose::Check,
            pass: Some(PassRule { right: 3, safety }),
            ..Task::default()
        },
        from: None,
        until: None,
        own_cards: Vec::new(),
    }
}

fn plain_families(content: &Content) -> Vec<String> {
    let plain = content.families.iter().filter(|one| one.severity != Severity::Safety);
    plain.take(4).map(|one| one.id.clone()).collect()
}

/// Opens the set, of four cards.
fn begin(log: &mut Log, set: &str, attempt: &str) {
    let taking = Some(Taking { cards: CARDS, at_once: false });
    log.step(attempt, Step::Opened { set: set.to_owned(), competencies: Vec::new(), taking });
    log.within = Within::Set { attempt: attempt.to_owned(), set: set.to_owned() };
}

/// A set done on the first of January, right but for the places named.
fn did(content: &Content, id: &str, wrong: &[usize]) -> Log {
    let mut log = ana();
    begin(&mut log, id, "one");
    log.answers(&plain_families(content), 4, wrong);
    log
}

fn found(content: &Content, log: &Log, set: Option<&Set>, withdrawn: Option<&Withdrawal>) -> Vec<SetDone> {
    let events: Vec<&Event> = log.events.iter().collect();
    sets_done(content, &events, |id| set.filter(|set| set.id() == id).map(|set| KnownSet { set, withdrawn }))
}

fn came(content: &Content, log: &Log, set: &Set) -> Came {
    found(content, log, Some(set), None)[0].came
}

#[test]
fn a_set_is_passed_by_its_own_rule() {
    let content = support::content();
    let set = set(&content, true);
    let id = set.id();
    for (wrong, came) in [(&[][..], Came::Passed), (&[1], Came::Passed), (&[1, 2], Came::NotPassed)] {
        let log = did(&content, &id, wrong);
        let [one] = &found(&content, &log, Some(&set), None)[..] else { panic!("one set") };
        assert_eq!((one.came, one.right as usize, one.answered, one.of), (came, 4 - wrong.len(), 4, 4));
        assert_eq!((one.way, one.day, one.void), (Way::Check, Some(date(0)), 0));
    }
    let mut free = set;
    free.task.pass = None;
    assert_eq!(came(&content, &did(&content, &free.id(), &[0, 1, 2, 3]), &free), Came::Done);
}

#[test]
fn a_dangerous_answer_fails_where_the_rule_says_so() {
    let content = support::content();
    let safety = content.families.iter().find(|one| one.severity == Severity::Safety).unwrap();
    for (rule, wanted) in [(true, Came::NotPassed), (false, Came::Passed)] {
        let set = set(&content, rule);
        let mut log = ana();
        begin(&mut log, &set.id(), "one");
        log.answers(&plain_families(&content), 3, &[]);
        log.certainty = Certainty::OnTheJob;
        log.answer(&safety.id, false);
        assert_eq!(came(&content, &log, &set), wanted);
        let told = |log: &Log| found(&content, log, Some(&set), None)[0].dangerous.clone();
        assert_eq!(told(&log), std::slice::from_ref(&safety.id));
        // Nobody is blamed for an answer to a card that was found wrong.
        log.voids(Wrong::Cards(CardKind { family: safety.id.clone(), version: 1 }), WHY);
        assert_eq!((told(&log), came(&content, &log, &set)), (vec![], Came::Passed));
    }
}

#[test]
fn what_is_not_done_or_was_begun_on_another_day_is_not_judged() {
    let content = support::content();
    let mut set = set(&content, true);
    let id = set.id();
    let mut log = ana();
    begin(&mut log, &id, "one");
    log.answers(&plain_families(&content), 3, &[]);
    assert_eq!(came(&content, &log, &set), Came::UnderWay, "three right are not four answered");
    log.step("one", Step::Closed);
    assert_eq!(came(&content, &log, &set), Came::Closed);
    // It goes by the day on which it was begun, which here is the first of January.
    (set.from, set.until) = (Some(date(1)), None);
    assert_eq!(came(&content, &did(&content, &set.id(), &[]), &set), Came::TooEarly);
    (set.from, set.until) = (None, Some(date(0)));
    let mut late = ana();
    begin(&mut late, &set.id(), "one");
    late.on(3).answers(&plain_families(&content), 4, &[]);
    assert_eq!(came(&content, &late, &set), Came::Passed, "begun in time and done later");
    let mut late = ana();
    begin(late.on(1), &set.id(), "one");
    late.answers(&plain_families(&content), 4, &[]);
    assert_eq!(came(&content, &late, &set), Came::TooLate);
}

#[test]
fn a_withdrawal_holds_from_its_moment_on() {
    let content = support::content();
    let set = set(&content, true);
    let log = did(&content, &set.id(), &[]);
    for (at, wanted) in [("2027-01-01T08:00:30Z", Came::Withdrawn), ("2027-01-01T08:02:00Z", Came::Passed)] {
        let (id, by) = (set.id(), set.by.clone());
        let withdrawal = Withdrawal { set: id, by, at: at.to_owned(), reason: String::new() };
        assert_eq!(found(&content, &log, Some(&set), Some(&withdrawal))[0].came, wanted, "{at}");
    }
}

#[test]
fn a_set_that_is_not_here_is_told_and_not_judged() {
    let content = support::content();
    let log = did(&content, "set-elsewhere", &[2]);
    let one = &found(&content, &log, None, None)[0];
    assert_eq!((one.came, one.right, one.of, one.set.as_str()), (Came::NotHere, 3, 4, "set-elsewhere"));
}

#[test]
fn what_was_found_wrong_since_is_left_out_and_said_where_it_matters() {
    let content = support::content();
    let (set, families) = (set(&content, true), plain_families(&content));
    let id = set.id();
    let void = |log: &mut Log, place: usize| {
        let family = families[place].clone();
        log.voids(Wrong::Cards(CardKind { family, version: 1 }), WHY);
    };
    // Right, void, right, right: three right are left.
    let mut log = did(&content, &id, &[]);
    void(&mut log, 1);
    let one = &found(&content, &log, Some(&set), None)[0];
    assert_eq!((one.came, one.right, one.answered, one.void), (Came::Passed, 3, 4, 1));
    // Wrong, void, right, right: with the void one it might be passed.
    let mut log = did(&content, &id, &[0]);
    void(&mut log, 1);
    assert_eq!(came(&content, &log, &set), Came::CardsWrong);
    // Wrong, void, wrong, right: it could not be passed whatever the void one was.
    let mut log = did(&content, &id, &[0, 2]);
    void(&mut log, 1);
    assert_eq!(came(&content, &log, &set), Came::NotPassed);
    let mut log = did(&content, &id, &[]);
    log.voids(Wrong::Set { set: id }, WHY);
    assert!(!Voids::of(&log.events).is_empty());
    assert_eq!(came(&content, &log, &set), Came::SetWrong);
}

#[test]
fn what_a_check_asks_behind_its_set_is_no_card_of_it() {
    let content = support::content();
    let set = set(&content, true);
    let mut log = did(&content, &set.id(), &[0]);
    log.on(1).answers(&plain_families(&content), 4, &[0, 1, 2, 3]);
    let one = &found(&content, &log, Some(&set), None)[0];
    assert_eq!((one.came, one.right, one.answered, one.day), (Came::Passed, 3, 4, Some(date(0))));
}

#[test]
fn worksheets_are_told_apart_by_their_code_and_an_answer_typed_in_twice_is_one() {
    let content = support::content();
    let set = set(&content, true);
    let (id, families) = (set.id(), plain_families(&content));
    let paper = |code: &str| Within::Paper { set: id.clone(), code: code.to_owned() };
    let mut log = ana();
    log.within = paper("AAAA-AAAA");
    log.answer(&families[0], true).again(&families[0], true).answer(&families[1], true);
    log.within = paper("BBBB-BBBB");
    log.on(1).answers(&families, 4, &[3]);
    let [second, first] = &found(&content, &log, Some(&set), None)[..] else { panic!("two worksheets") };
    assert_eq!((second.name.as_str(), second.came, second.right), ("BBBB-BBBB", Came::Passed, 3));
    assert_eq!((first.way, first.answered, first.right, first.of), (Way::Paper, 2, 2, 4));
    // What was left empty on paper is not right.
    assert_eq!((first.came, first.day), (Came::NotPassed, Some(date(0))));
}

#[test]
fn who_did_a_set_is_told_with_each_time_over_all_tablets() {
    let content = support::content();
    let set = set(&content, true);
    let mut one = did(&content, &set.id(), &[0, 1]);
    begin(one.on(2), "set-other", "two");
    let mut again = did(&content, &set.id(), &[]);
    again.on(5).answer("koa", true);
    for (nth, event) in again.events.iter_mut().enumerate() {
        let stamp = event.stamp_mut();
        (stamp.device, stamp.date) = ("b".to_owned(), Some(date(5)));
        stamp.at = format!("{}T09:{nth:02}:00Z", date(5));
    }
    let mut all = Gathered::default();
    for log in [one, again] {
        let (device, at) = (log.device.clone(), "2027-02-01T00:00:00Z".to_owned());
        let of = Results { device, at, people: vec![], sheets: vec![], sets: vec![], events: log.events };
        all.take(of).unwrap();
    }
    let mut roll = Roll::begin(&all);
    while roll.take_some(100) {}
    let people = roll.people(&[]);
    let [person] = &people[..] else { panic!("one person") };
    let events = person.events(&all, &person.key);
    let events: Vec<&Event> = events.iter().map(|event| &**event).collect();
    let known = |id: &str| (set.id() == id).then_some(KnownSet { set: &set, withdrawn: None });
    let done = || sets_done(&content, &events, known);
    assert_eq!(done().len(), 3);
    let did = did_set(person, done(), &set.id()).unwrap();
    let times: Vec<(Came, u32)> = did.times.iter().map(|one| (one.came, one.right)).collect();
    assert_eq!(times, [(Came::Passed, 4), (Came::NotPassed, 2)]);
    assert_eq!((did.name.as_str(), did.passed()), ("Ana", 1));
    assert_eq!(did_set(person, done(), "set-third"), None);
}
