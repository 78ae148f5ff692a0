//! What decisions of walks count for where the record is read: each of these was worked by hand.

use crate::support::content;
use crate::support::log::{Log, ana, date, decided, families, proof};
use stepboard::exchange::crew::{decides, rests_on_void};
use stepboard::learn::check::{Now, Sealed};
use stepboard::learn::evidence::{Evidence, Uncounted};
use stepboard::record::{
    CardKind, Certainty, Decided, Event, Inspected, Journal, Moment, Voids, WalkStep, Walked, Way, Wrong,
};
use stepboard::walk::Lapse;

/// A competency of the ordinary profile without families about safety, and one of the safety profile.
const PLAIN: &str = "pores-filled";
const SAFE: &str = "mask-worn";
const SEAL: &str = "seal-check";
const RULE: &str = "hazard.seal-check-each-time";

/// Answers that count, and what was left out.
fn told(log: &Log, competency: &str) -> (u32, u32, Vec<(Uncounted, u32)>) {
    let found: Evidence = proof(&content(), &log.events, competency);
    (found.state.answers, found.state.right, found.uncounted.into_iter().collect())
}

fn with(says: &[(&str, Option<&str>)], change: impl Fn(&mut Decided)) -> WalkStep {
    let mut one = decided(says);
    change(&mut one);
    WalkStep::Decided(Box::new(one))
}

#[test]
fn of_each_job_the_first_decision_of_a_family_counts_and_a_guided_one_never() {
    let family = families(&content(), PLAIN).remove(0);
    let says = [(family.as_str(), None)];
    let mut log = ana();
    log.open("one", &[PLAIN]).decides("w", "a-job", &says).decides("w", "a-job", &says);
    assert_eq!(told(&log, PLAIN), (1, 1, vec![(Uncounted::Repeat, 1)]));
    // The same job walked again, another job, and nobody's attempt.
    log.decides("w-2", "a-job", &says).decides("w-3", "another-job", &says);
    assert_eq!(told(&log, PLAIN), (2, 2, vec![(Uncounted::Repeat, 2)]));
    let mut none = ana();
    none.decides("w", "a-job", &says);
    assert_eq!(told(&none, PLAIN), (0, 0, vec![(Uncounted::NoAttempt, 1)]));
    // Guided, or gone on with after what came of it was told.
    let guided = with(&says, |one| one.way = Way::Guided);
    let again = with(&says, |one| one.again = true);
    for (step, why) in [(guided, Uncounted::Practice), (again, Uncounted::Repeat)] {
        let mut log = ana();
        log.open("one", &[PLAIN]).walks("w", "a-job", step);
        assert_eq!(told(&log, PLAIN), (0, 0, vec![(why, 1)]));
        // Whoever was guided through a job, or told of it, has met it.
        log.decides("w-2", "a-job", &says);
        assert_eq!(told(&log, PLAIN).0, 0);
    }
    // So has who went through somebody else's walk of it.
    let seen = Inspected { seed: 1, found: 1, half: 0, missed: Vec::new(), wrong: 0 };
    let mut log = ana();
    log.open("one", &[PLAIN]).walks("w", "a-job", WalkStep::Inspected(seen)).decides("w-2", "a-job", &says);
    assert_eq!(told(&log, PLAIN), (0, 0, vec![(Uncounted::Repeat, 1)]));
}

/// Two windows may each have written the same decision: it is told once, and a wrong one is one error.
#[test]
fn a_decision_that_is_written_twice_counts_once() {
    let says = [(SEAL, Some(RULE))];
    let mut log = ana();
    log.open("one", &[SAFE]).decides("w", "a-job", &says);
    let once = told(&log, SAFE);
    let twice = log.events.last().expect("a decision").clone();
    log.events.push(twice);
    assert_eq!(told(&log, SAFE), once);
}

/// A sign-off rests on what the test took: later decisions of a job and guided ones are not pointed at.
#[test]
fn a_sign_off_is_pointed_at_by_the_decisions_that_are_evidence_alone() {
    let content = content();
    let says = [(SEAL, None)];
    let mut log = ana();
    log.open("one", &[SAFE]).walks("g", "a-job", with(&says, |one| one.way = Way::Guided));
    log.decides("w", "a-job", &says).decides("v", "another-job", &says).decides("v", "another-job", &says);
    log.walks("u", "a-third-job", with(&says, |one| one.again = true));
    log.voids(Wrong::Cards(CardKind { family: SEAL.to_owned(), version: 1 }), "Read off the wrong table");
    let events: Vec<&Event> = log.events.iter().collect();
    let signed = "2027-12-31".parse().expect("a day");
    let (decisions, voids) = rests_on_void(&content, SAFE, signed, &events);
    assert_eq!((decisions, voids.len()), (1, 1));
}

/// A wrong first decision counts as wrong, and giving the walk up or walking on takes nothing of it back.
#[test]
fn a_wrong_decision_counts_and_letting_go_takes_nothing_back() {
    let family = families(&content(), PLAIN).remove(0);
    let mut log = ana();
    log.open("one", &[PLAIN]).decides("w", "a-job", &[(&family, Some("filling.whichever"))]);
    let wrong = told(&log, PLAIN);
    assert_eq!(wrong, (1, 0, vec![]));
    log.walks("w", "a-job", WalkStep::LetGo);
    assert_eq!(told(&log, PLAIN), wrong);
}

/// Luck of a coin: ln((0.95 + 0.05 / 2) / (0.70 + 0.30 / 2)) = 0.137201 a right decision, under the standard of the ordinary
/// profile (k1 = 0.95, k0 = 0.70).
#[test]
fn a_right_decision_counts_with_the_luck_of_a_coin() {
    let family = families(&content(), PLAIN).remove(0);
    let mut log = ana();
    log.open("one", &[PLAIN]).decides("w", "a-job", &[(&family, None)]);
    let found = proof(&content(), &log.events, PLAIN);
    assert!((found.state.evidence - 0.137_201).abs() < 1e-6, "{}", found.state.evidence);
}

/// A lapse about safety blocks like a wrong card that would have been done on the job, whether it was the first decision of
/// its family on that job or not; guided it does not.
#[test]
fn a_lapse_of_safety_blocks_until_it_is_passed_again() {
    let (right, wrong) = ([(SEAL, None)], [(SEAL, Some(RULE))]);
    let mut log = ana();
    log.open("one", &[SAFE]).decides("w", "a-job", &right).decides("w", "a-job", &wrong);
    let found = proof(&content(), &log.events, SAFE);
    let [hazard] = &found.hazards[..] else { panic!("{:?}", found.hazards) };
    assert_eq!((hazard.family.as_str(), hazard.wants_initials), (SEAL, true));
    assert_eq!((found.state.answers, found.uncounted.get(&Uncounted::Repeat)), (1, Some(&1)));
    // Right ones of the same job lift nothing: they are repeats.
    for day in [2, 3, 4, 5] {
        log.on(day).decides("w", "a-job", &right);
    }
    log.taught(SEAL);
    assert_eq!(proof(&content(), &log.events, SAFE).hazards.len(), 1);
    // Cards of a check on two days do.
    log.certainty = Certainty::TestBoard;
    for day in [8, 9] {
        log.on(day);
        for _ in 0..6 {
            log.answer(SEAL, true);
        }
    }
    assert_eq!(proof(&content(), &log.events, SAFE).hazards, []);
    let mut guided = ana();
    guided.open("one", &[SAFE]).walks("w", "a-job", with(&wrong, |one| one.way = Way::Guided));
    assert_eq!(proof(&content(), &guided.events, SAFE).hazards, []);
}

#[test]
fn what_rests_on_a_rule_or_a_family_that_was_found_wrong_does_not_count() {
    let (right, wrong) = ([(SEAL, None)], [(SEAL, Some(RULE))]);
    let family = Wrong::Cards(CardKind { family: SEAL.to_owned(), version: 1 });
    let rule = Wrong::Rule { rule: RULE.to_owned(), cards: Vec::new() };
    for (says, void, left) in
        [(right, family.clone(), 0), (wrong, family, 0), (wrong, rule.clone(), 0), (right, rule, 1)]
    {
        let mut log = ana();
        log.open("one", &[SAFE]).decides("w", "a-job", &says).voids(void, "Read off the wrong table");
        let found = proof(&content(), &log.events, SAFE);
        assert_eq!((found.state.answers, found.hazards.len()), (left, 0));
    }
}

/// A rule by which decisions of walks are right or wrong in a family takes them with it, right ones too, whether a card of the
/// family is decided by it or not.
#[test]
fn a_rule_that_is_void_takes_with_it_what_was_right_by_it() {
    let content = content();
    let wheel = Lapse::WheelUnchecked.rule().0;
    for (rule, family) in [(RULE, SEAL), (wheel, "at-the-wheel"), ("drying.longest-path", "delivery-day")] {
        assert!(decides(&content, rule, family), "{rule} in {family}");
    }
    assert!(!decides(&content, wheel, "delivery-day"));
    let cards = vec![CardKind { family: SEAL.to_owned(), version: 1 }];
    let mut log = ana();
    log.open("one", &[SAFE]).decides("w", "a-job", &[(SEAL, None)]);
    assert_eq!(proof(&content, &log.events, SAFE).state.answers, 1);
    log.voids(Wrong::Rule { rule: RULE.to_owned(), cards }, "Read off the wrong table");
    assert_eq!(proof(&content, &log.events, SAFE).state.answers, 0);
}

/// On one's own nothing is told before the work is handed over or the walk let go; guided it was told before.
#[test]
fn what_was_decided_on_ones_own_is_sealed_until_the_walk_is_over() {
    let now = Now { day: None, at: Moment::of("2027-03-12T14:30:00Z") };
    let content = content();
    let hidden = |log: &Log| {
        let sealed = Sealed::of(&content, &log.events, now);
        log.events.iter().filter(|event| sealed.hides_event(event)).count()
    };
    let wrong = [(SEAL, Some(RULE))];
    let mut log = ana();
    log.decides("w", "a-job", &wrong).walks("g", "a-job", with(&wrong, |one| one.way = Way::Guided));
    assert_eq!(hidden(&log), 1);
    let sealed = Sealed::of(&content, &log.events, now);
    assert_eq!(sealed.told(&log.events).count(), 1);
    let mut over = log.clone();
    over.walks("w", "a-job", with(&[], |one| one.over = true));
    assert_eq!(hidden(&over), 0);
    let mut gone = log.clone();
    gone.walks("w", "a-job", WalkStep::LetGo);
    assert_eq!(hidden(&gone), 0);
    // Another tablet's walk of that name is another walk.
    let mut other = Log::new("b", "Ana");
    other.walks("w", "a-job", WalkStep::LetGo);
    log.events.extend(other.events);
    assert_eq!(hidden(&log), 1);
}

/// A second rule was broken with the void one: that it was wrong stands.
#[test]
fn a_rule_that_is_void_excuses_no_other() {
    const OTHER: &str = "hazard.draw-is-no-respirator";
    let mut log = ana();
    log.walks(
        "w",
        "a-job",
        with(&[(SEAL, Some(RULE))], |one| {
            one.exercised[0].broke.push(OTHER.to_owned());
            one.broke.push(OTHER.to_owned());
        }),
    );
    let hazards = |log: &Log| proof(&content(), &log.events, SAFE).hazards.len();
    log.voids(Wrong::Rule { rule: RULE.to_owned(), cards: Vec::new() }, "Read off the wrong table");
    assert_eq!(hazards(&log), 1);
    log.voids(Wrong::Rule { rule: OTHER.to_owned(), cards: Vec::new() }, "So was that");
    assert_eq!(hazards(&log), 0);
}

/// A coat exercises many families: one that is void leaves what the others say.
#[test]
fn a_family_that_is_void_leaves_what_a_decision_says_of_others() {
    let void = |family: &str| Wrong::Cards(CardKind { family: family.to_owned(), version: 1 });
    let touched = |log: &Log| {
        let one = log.events[0].walked().and_then(Walked::decided).expect("a decision");
        Voids::of(&log.events).touches_decided(one).is_some()
    };
    let mut right = ana();
    right.decides("w", "a-job", &[(SEAL, None), ("recoat-now", None)]);
    let mut wrong = ana();
    wrong.decides("w", "a-job", &[(SEAL, Some(RULE)), ("recoat-now", None)]);
    assert!(!touched(&right) && !touched(&wrong));
    for log in [&mut right, &mut wrong] {
        log.voids(void("recoat-now"), "Wrong table");
        assert!(!touched(log));
        log.voids(void(SEAL), "Wrong table");
        assert!(touched(log));
    }
}

/// A walk whose file is lost ends nowhere: it is told when nobody went on for a week.
#[test]
fn a_walk_that_nobody_goes_on_with_is_told_after_a_week() {
    let mut log = ana();
    log.on(1).decides("w", "a-job", &[(SEAL, Some(RULE))]).on(3).decides("w", "a-job", &[(SEAL, None)]);
    let hidden = |day: u32| {
        let now = Now { day: Some(date(day)), at: None };
        let sealed = Sealed::of(&content(), &log.events, now);
        log.events.iter().filter(|event| sealed.hides_event(event)).count()
    };
    assert_eq!([3, 9, 10, 40].map(hidden), [2, 2, 0, 0]);
}

#[test]
fn what_happened_on_walks_is_read_as_it_was_written() {
    let mut log = ana();
    let step = with(&[(SEAL, Some(RULE)), ("recoat-now", None)], |one| {
        one.known.shown = vec!["se-01".to_owned()];
        one.known.parts.insert(0, "sand-wood".to_owned());
    });
    let seen = Inspected { seed: 7, found: 1, half: 1, missed: vec![RULE.to_owned()], wrong: 2 };
    log.walks("w", "a-job", step).walks("i", "a-job", WalkStep::Inspected(seen)).walks(
        "w",
        "a-job",
        WalkStep::LetGo,
    );
    let text = serde_json::to_string(&Journal::new(log.events.clone())).expect("plain data");
    assert_eq!(serde_json::from_str::<Journal>(&text).expect("a journal").events(), log.events);
    let more = text.replacen("\"nth\":1", "\"nth\":1,\"admin\":true", 1);
    let why = serde_json::from_str::<Journal>(&more).expect_err("a member too much").to_string();
    assert!(why.contains("unknown field `admin`"), "{why}");
    assert!(matches!(log.events[2], Event::Walked(_)));
    assert_eq!(Journal::new(log.events).people(), ["Ana"]);
}
