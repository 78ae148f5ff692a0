//! What a journal proves, as worked by hand: which answers count, the gates, attempts.

mod support;

use stepboard::content::Content;
use stepboard::learn::evidence::{Asked, Uncounted, evidence};
use stepboard::learn::mastery::{Call, Missing, Standard};
use stepboard::record::{Certainty, Help, Step, Within};
use stepboard::rules::term::Severity;
use support::content;
use support::log::{Log, ana, date, families, proof};

/// A competency of the ordinary profile without families about safety.
const PLAIN: &str = "pores-filled";

/// Days on which somebody sits, so that the gates can be met.
const SITTINGS: [u32; 3] = [0, 4, 8];

/// An attempt over three days, so many answers a day, all right.
fn all_right(content: &Content, competency: &str, a_day: usize) -> Log {
    let (mut log, families) = (ana(), families(content, competency));
    log.open("one", &[competency]);
    for (nth, day) in SITTINGS.into_iter().enumerate() {
        for card in 0..a_day {
            log.minute = log.minute.max(8 * 60);
            log.day = day;
            log.answer(&families[(nth * a_day + card) % families.len()], true);
        }
    }
    log
}

/// The standard asks for ln(2 / 0.05) = 3.689 in a first attempt, and a right answer to four options adds 0.216671: 18 in a
/// row (`mastery_check.csv`, M13, M18 and the halving of section M51).
#[test]
fn eighteen_right_answers_over_three_days_suffice_and_seventeen_do_not() {
    let content = content();
    let enough = proof(&content, &all_right(&content, PLAIN, 6).events, PLAIN);
    assert_eq!((enough.attempt, enough.state.call, enough.state.answers), (1, Call::Sufficient, 18));
    assert_eq!(enough.sufficient_since, Some(date(8)));
    assert!(enough.suffices() && enough.state.lower.is_some());
    let mut log = all_right(&content, PLAIN, 6);
    log.events.pop();
    let short = proof(&content, &log.events, PLAIN);
    assert_eq!((short.state.call, short.sufficient_since), (Call::GoOn, None));
    assert_eq!(short.state.missing, [Missing::Answers(1)]);
}

/// Before any card is known five ways to answer are taken: ln(40) / ln(0.96 / 0.76) = 15.8. After six right answers to four
/// options: (3.688879 - 6 x 0.216671) / 0.216671 = 11.03.
#[test]
fn the_bar_tells_what_is_missing() {
    let content = content();
    let none = proof(&content, &[], PLAIN);
    assert_eq!((none.attempt, none.closed, none.state.answers), (0, false, 0));
    assert_eq!(
        none.state.missing,
        [Missing::Answers(16), Missing::Days(3), Missing::DaysApart(7), Missing::Families(6)]
    );
    let mut log = ana();
    log.open("one", &[PLAIN]).answers(&families(&content, PLAIN)[..2], 6, &[]);
    let begun = proof(&content, &log.events, PLAIN);
    assert_eq!(
        begun.state.missing,
        [Missing::Answers(12), Missing::Days(2), Missing::DaysApart(7), Missing::Families(4)]
    );
    log.step("one", Step::Closed);
    assert!(proof(&content, &log.events, PLAIN).closed, "a new attempt is wanted");
}

/// Each way in which an answer does not count, one at a time.
#[test]
fn only_first_answers_of_checks_and_unguided_walks_count_and_no_wrong_one_is_dropped() {
    let content = content();
    let family = families(&content, PLAIN).remove(0);
    let told = |change: &dyn Fn(&mut Log), right: bool| {
        let mut log = ana();
        log.open("one", &[PLAIN]);
        change(&mut log);
        log.answer(&family, right);
        let found = proof(&content, &log.events, PLAIN);
        let why: Vec<Uncounted> = found.uncounted.keys().copied().collect();
        (found.state.answers, why)
    };
    let walk = |guided| Within::Walk { walk: "w".into(), guided };
    let counts = (1, vec![]);
    let left_out = |why| (0, vec![why]);
    assert_eq!(told(&|_| {}, true), counts);
    assert_eq!(told(&|log| log.within = walk(false), true), counts);
    for right in [true, false] {
        assert_eq!(told(&|log| log.within = Within::Practice, right), left_out(Uncounted::Practice));
        assert_eq!(told(&|log| log.within = walk(true), right), left_out(Uncounted::Practice));
        let other = |log: &mut Log| {
            log.within = Within::Check { attempt: "two".into(), set: "a-set".into() };
        };
        assert_eq!(told(&other, right), left_out(Uncounted::Stray));
        let moved = |log: &mut Log| log.device = "b".into();
        assert_eq!(told(&moved, right), left_out(Uncounted::Stray));
        let closed = |log: &mut Log| {
            log.step("one", Step::Closed).within = walk(false);
        };
        assert_eq!(told(&closed, right), left_out(Uncounted::NoAttempt));
    }
    // What leaves a right answer out leaves no wrong one out.
    let helped = |log: &mut Log| log.help = Help::Hint;
    let unsure = |log: &mut Log| log.certainty = Certainty::AskFirst;
    let unknown = |log: &mut Log| log.guess = None;
    let sure_to_hit = |log: &mut Log| log.guess = Some(1.0);
    type Change<'a> = &'a dyn Fn(&mut Log);
    let changes: [(Change<'_>, Uncounted); 4] = [
        (&helped, Uncounted::Helped),
        (&unsure, Uncounted::Unsure),
        (&unknown, Uncounted::LuckUnknown),
        (&sure_to_hit, Uncounted::LuckUnknown),
    ];
    for (change, why) in changes {
        assert_eq!(told(change, true), left_out(why));
        assert_eq!(told(change, false), counts, "{why:?}");
    }
    // Practised before, right or wrong: the card is known.
    for right in [true, false] {
        let mut log = ana();
        log.answer(&family, false).open("one", &[PLAIN]).again(&family, right);
        let found = proof(&content, &log.events, PLAIN);
        assert_eq!((found.state.answers, found.uncounted.get(&Uncounted::Repeat)), (0, Some(&1)));
    }
    // A shop may let unsure answers count.
    let mut log = ana();
    log.certainty = Certainty::AskFirst;
    log.open("one", &[PLAIN]).answer(&family, true);
    let asked = Asked::usual(&content, "Ana", content.competency(PLAIN).expect("ships"));
    assert_eq!(evidence(&log.events, &Asked { unsure_counts: true, ..asked }).state.answers, 1);
}

#[test]
fn a_check_is_evidence_for_the_competencies_it_was_opened_for_alone() {
    let content = content();
    let both =
        content.families.iter().find(|one| one.competencies.len() > 1 && one.severity != Severity::Safety);
    let both = both.expect("one that serves two");
    let mut log = ana();
    log.open("one", &[&both.competencies[0]]).answer(&both.id, true);
    assert_eq!(proof(&content, &log.events, &both.competencies[0]).state.answers, 1);
    let other = proof(&content, &log.events, &both.competencies[1]);
    assert_eq!((other.attempt, other.state.answers), (0, 0));
    assert_eq!(other.uncounted.get(&Uncounted::NoAttempt), Some(&1));
}

/// Alpha is halved with each attempt: 0.025, 0.0125, then anew after evidence sufficed (bounds ln(1/alpha)).
#[test]
fn each_attempt_halves_alpha_until_the_evidence_suffices() {
    let content = content();
    let families = families(&content, PLAIN);
    let mut log = ana();
    log.open("one", &[PLAIN]).answers(&families, 2, &[0, 1]).answer(&families[2], true);
    let failed = proof(&content, &log.events, PLAIN);
    assert_eq!((failed.attempt, failed.state.call), (1, Call::BackToStudy));
    assert_eq!(failed.uncounted.get(&Uncounted::Decided), Some(&1), "a decided attempt takes nothing more");
    log.step("one", Step::Closed).open("two", &[PLAIN]);
    assert_eq!(proof(&content, &log.events, PLAIN).attempt, 1, "not begun");
    for day in [20, 24, 28] {
        log.on(day).answers(&families, 7, &[]);
    }
    let second = proof(&content, &log.events, PLAIN);
    assert_eq!((second.attempt, second.earlier.as_slice()), (2, [Call::BackToStudy].as_slice()));
    assert!((second.state.asked - libm::log(80.0)).abs() < 1e-12, "ln(4 / 0.05)");
    // 21 x 0.216671 = 4.550 of 4.382.
    assert_eq!((second.state.call, second.sufficient_since), (Call::Sufficient, Some(date(28))));
    log.step("two", Step::Closed).on(400).open("three", &[PLAIN]).answer(&families[0], true);
    let third = proof(&content, &log.events, PLAIN);
    assert_eq!((third.attempt, third.state.call), (1, Call::GoOn), "shown anew: alpha is whole again");
    assert_eq!(third.earlier, [Call::BackToStudy, Call::Sufficient]);
}

/// Of two attempts that are open the one begun last takes answers; whoever goes back to the other is told so.
#[test]
fn an_attempt_takes_no_answers_once_another_was_begun() {
    let content = content();
    let family = families(&content, PLAIN).remove(0);
    for right in [true, false] {
        let mut log = ana();
        log.open("one", &[PLAIN]).answer(&family, true);
        let first = log.within.clone();
        log.open("two", &[PLAIN]).answer(&family, true).within = first;
        log.answer(&family, right);
        let found = proof(&content, &log.events, PLAIN);
        assert_eq!((found.attempt, found.state.answers), (2, 1));
        assert_eq!(found.earlier, [Call::GoOn]);
        assert_eq!(found.uncounted.into_iter().collect::<Vec<_>>(), [(Uncounted::Superseded, 1)]);
    }
}

/// A clock that told neither date nor time: the answers count for the test and for no day, wherever they stand.
#[test]
fn answers_without_a_day_make_no_day() {
    let content = content();
    let at_places = |places: std::ops::Range<usize>| {
        let mut log = all_right(&content, PLAIN, 6);
        // The first event opens the attempt.
        for event in log.events.iter_mut().skip(1 + places.start).take(places.len()) {
            (event.stamp_mut().date, event.stamp_mut().at) = (None, "soon".to_owned());
        }
        proof(&content, &log.events, PLAIN).state
    };
    for (places, missing) in [
        (0..6, vec![Missing::Days(1), Missing::DaysApart(3)]),
        (6..12, vec![Missing::Days(1)]),
        (12..18, vec![Missing::Days(1), Missing::DaysApart(3)]),
        (0..18, vec![Missing::Days(3), Missing::DaysApart(7)]),
        // Five of six are left.
        (0..1, vec![]),
    ] {
        let state = at_places(places.clone());
        assert_eq!((state.answers, state.missing), (18, missing), "{places:?}");
    }
}

/// Summer time begins in the night to 14 March 2027 in the United States: 23 hours lie between two evenings, and each lies on
/// another day of universal time; by the calendar it is a day.
#[test]
fn days_are_those_of_the_local_calendar_through_a_change_of_the_clock() {
    let content = content();
    let families = families(&content, PLAIN);
    let mut log = ana();
    log.open("one", &[PLAIN]);
    // Days 71, 72 and 79 after 1 January 2027 are 13, 14 and 21 March; these are 23:30 of the east coast on each.
    for (day, universal) in
        [(71, "2027-03-14T04:30:00.000Z"), (72, "2027-03-15T03:30:00.000Z"), (79, "2027-03-22T03:30:00.000Z")]
    {
        assert_eq!(date(71).to_string(), "2027-03-13");
        log.on(day).answers(&families, 6, &[]);
        for event in log.events.iter_mut().rev().take(6) {
            event.stamp_mut().at = universal.to_owned();
        }
    }
    let found = proof(&content, &log.events, PLAIN);
    assert_eq!((found.state.call, found.sufficient_since), (Call::Sufficient, Some(date(79))));
    // The clock set back a year makes no days: all lie on the first.
    for event in log.events.iter_mut().rev().take(12) {
        event.stamp_mut().date = Some("2026-03-14".parse().expect("a date"));
    }
    let found = proof(&content, &log.events, PLAIN);
    assert_eq!(found.state.missing, [Missing::Days(2), Missing::DaysApart(7)]);
}

#[test]
fn an_attempt_without_gates_is_the_plain_test() {
    let content = content();
    let mut standard = Standard::ORDINARY;
    (standard.days, standard.days_apart, standard.coverage) =
        (0, 0, stepboard::quantity::Fraction::saturating(0.0));
    let mut log = ana();
    log.open("one", &[PLAIN]).answers(&families(&content, PLAIN)[..1], 18, &[]);
    let asked = Asked::usual(&content, "Ana", content.competency(PLAIN).expect("ships"));
    let found = evidence(&log.events, &Asked { standard, ..asked });
    assert_eq!((found.state.call, found.sufficient_since), (Call::Sufficient, Some(date(0))));
}
