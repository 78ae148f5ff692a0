//! An error about safety: opened by one wrong answer in a check, lifted by a run of right ones on other cards, as worked by
//! hand (runs by the guess rate: `mastery_check.csv`, M46).

mod support;

use stepboard::learn::evidence::{Asked, Evidence, Hazard, evidence};
use stepboard::learn::mastery::{Call, Guess, Missing};
use stepboard::record::{Certainty, Help, Step, Within};
use stepboard::rules::term::Severity;
use support::log::{Log, date, families};
use support::table::table;

const SAFE: &str = "mask-worn";

/// The first family about safety.
fn family() -> String {
    let content = support::content();
    let found = content
        .evidence_for(SAFE)
        .find(|family| family.severity == Severity::Safety)
        .map(|one| one.id.clone());
    found.expect("one about safety")
}

fn proof(log: &Log) -> Evidence {
    let content = support::content();
    evidence(&log.events, &Asked::usual(&content, "Ana", content.competency(SAFE).expect("ships")))
}

/// An error on the first day, at 8:03, in a check of many days; answers before it keep the attempt open.
fn error() -> Log {
    let mut log = Log::new("a", "Ana");
    let family = family();
    log.open("one", &[SAFE]).answer(&family, true).answer(&family, false);
    log
}

fn open(log: &Log) -> Option<Hazard> {
    proof(log).hazards.into_iter().next()
}

#[test]
fn one_wrong_answer_opens_it_and_practice_does_not() {
    let hazard = open(&error()).expect("open");
    assert_eq!((hazard.family, hazard.since, hazard.tries), (family(), Some(date(0)), 0));
    assert!(proof(&error()).state.missing.contains(&Missing::CriticalErrors(1)));
    let mut practised = Log::new("a", "Ana");
    practised.answer(&family(), false);
    assert_eq!(open(&practised), None);
    // On an unguided walk it opens though no attempt is open.
    practised.within = Within::Walk { walk: "w".into(), guided: false };
    practised.answer(&family(), false);
    assert!(open(&practised).is_some());
    assert_eq!(proof(&practised).attempt, 0);
}

/// The run that lifts it, by the options of the cards.
#[test]
fn it_is_lifted_by_a_run_on_two_days_as_long_as_the_luck_asks_for() {
    let rows = table("mastery_check.csv");
    let mut tried = 0;
    for row in rows.iter().filter(|row| row.text("id").starts_with("M46.")) {
        let options: u32 = row.text("id")[4..].parse().expect("options");
        let run: u32 = row.text("value").split(' ').next().expect("a run").parse().expect("a number");
        let guess = Guess::options(options).expect("two or more");
        let mut log = error();
        log.guess = Some(guess.chance());
        log.on(2);
        assert_eq!(open(&log).expect("open").answers_missing(guess), run, "{options} options");
        for nth in 1..run {
            log.answer(&family(), true);
            let left = open(&log).expect("not yet");
            assert_eq!((left.answers_missing(guess), left.days_missing()), (run - nth, 1));
        }
        // The last one on the same day does not do; on another it does.
        let mut same_day = log.clone();
        same_day.answer(&family(), true);
        assert_eq!(open(&same_day).expect("one day alone").days_missing(), 1);
        log.on(3).answer(&family(), true);
        assert_eq!(open(&log), None, "{options} options, a run of {run}");
        tried += 1;
    }
    assert_eq!(tried, 5);
}

/// The luckiest card of a run sets its length.
#[test]
fn one_card_with_two_options_makes_the_run_longer() {
    let mut log = error();
    log.on(2);
    for guess in [0.25, 0.5, 0.25] {
        log.guess = Some(guess);
        log.answer(&family(), true);
    }
    log.on(3).guess = Some(0.25);
    for _ in 0..3 {
        log.answer(&family(), true);
        assert!(open(&log).is_some());
    }
    log.answer(&family(), true);
    assert_eq!(open(&log), None, "seven, as with two options");
}

#[test]
fn answers_within_a_day_with_help_unsure_or_of_the_same_card_do_not_lift_it() {
    let run = |change: &dyn Fn(&mut Log)| {
        let mut log = error();
        for day in [2, 3] {
            log.on(day);
            for _ in 0..3 {
                change(&mut log);
                log.answer(&family(), true);
            }
        }
        open(&log)
    };
    assert_eq!(run(&|_| {}), None);
    assert!(run(&|log| log.help = Help::Hint).is_some());
    assert!(run(&|log| log.certainty = Certainty::AskFirst).is_some());
    assert!(run(&|log| log.guess = None).is_some());
    assert!(run(&|log| log.within = Within::Practice).is_some());
    let mut same_card = error();
    same_card.on(2).answer(&family(), true).again(&family(), true).again(&family(), true);
    same_card.on(3).again(&family(), true).again(&family(), true);
    let left = open(&same_card).expect("one card only");
    assert_eq!(left.answers_missing(Guess::options(4).expect("four")), 3);
    // 24 hours from 8:03: 8:02 the next day is too early, 8:03 is not.
    let missing = |minute: u32| {
        let mut log = error();
        (log.day, log.minute) = (1, minute - 1);
        log.answer(&family(), true);
        open(&log).expect("open").answers_missing(Guess::options(4).expect("four"))
    };
    assert_eq!((missing(8 * 60 + 2), missing(8 * 60 + 3)), (4, 3));
}

#[test]
fn after_two_tries_an_instructor_must_teach() {
    let mut log = error();
    // Wrong again within the day: the same error, no try.
    log.answer(&family(), false);
    assert_eq!(open(&log).expect("open").tries, 0);
    log.on(2).answer(&family(), true).answer(&family(), true).answer(&family(), false);
    let one = open(&log).expect("open");
    assert_eq!((one.tries, one.must_be_taught(), one.answers_missing(Guess::NUMBER)), (1, false, 2));
    log.on(4).answer(&family(), false);
    assert!(open(&log).expect("open").must_be_taught());
    // Right answers do nothing now, however many.
    for day in [6, 7, 8] {
        log.on(day).answers(&[family()], 5, &[]);
    }
    assert!(open(&log).is_some_and(|hazard| hazard.must_be_taught()));
    log.on(9).taught(&family());
    assert_eq!(open(&log).expect("taught, not passed").tries, 0);
    log.on(10).answers(&[family()], 2, &[]).on(11).answers(&[family()], 2, &[]);
    assert_eq!(open(&log), None);
    // The wrong answers stay in the record.
    let wrong = log
        .events
        .iter()
        .filter_map(|event| event.answer())
        .filter(|one| one.mark != stepboard::card::Mark::Right);
    assert_eq!(wrong.count(), 4);
}

#[test]
fn wrong_and_sure_wants_initials_besides() {
    let mut log = Log::new("a", "Ana");
    log.open("one", &[SAFE]).answer(&family(), true);
    log.certainty = Certainty::OnTheJob;
    log.answer(&family(), false);
    log.certainty = Certainty::TestBoard;
    log.on(2).answers(&[family()], 2, &[]).on(3).answers(&[family()], 2, &[]);
    let hazard = open(&log).expect("initials are missing");
    assert!(hazard.wants_initials && hazard.days_missing() == 0);
    log.taught(&family());
    assert_eq!(open(&log), None);
}

/// An attempt that an error was blocking when the next one was begun came to nothing, and lifting the error later makes
/// nothing of it: else the attempt after that would have the whole alpha again. By hand: 55 x 0.147405 - 2.302585 = 5.805
/// of 5.298317; a wrong first answer ends a second attempt (-2.302585 of -2.300082).
#[test]
fn an_attempt_that_was_blocked_does_not_suffice_once_another_was_begun() {
    let content = support::content();
    let others: Vec<String> =
        families(&content, SAFE).into_iter().filter(|other| *other != family()).collect();
    let mut log = error();
    for day in [0, 4, 8] {
        log.day = day;
        log.answers(&others, 18, &[]);
    }
    let blocked = proof(&log);
    assert_eq!((blocked.state.call, blocked.state.missing), (Call::GoOn, vec![Missing::CriticalErrors(1)]));
    // Nothing but the error is missing: passed again on a walk, before another attempt, it suffices.
    let mut walked = log.clone();
    walked.step("one", Step::Closed).within = Within::Walk { walk: "w".into(), guided: false };
    walked.on(11).answers(&[family()], 2, &[]).on(12).answers(&[family()], 2, &[]);
    assert_eq!(proof(&walked).sufficient_since, Some(date(12)));

    log.step("one", Step::Closed).on(9).open("two", &[SAFE]).answer(&family(), false);
    let second = proof(&log);
    assert_eq!((second.attempt, second.state.call, second.earlier), (2, Call::BackToStudy, vec![Call::GoOn]));
    log.on(11).answers(&[family()], 2, &[]).on(12).answers(&[family()], 2, &[]);
    let lifted = proof(&log);
    assert_eq!((lifted.hazards.len(), lifted.sufficient_since, lifted.earlier), (0, None, vec![Call::GoOn]));
    log.step("two", Step::Closed).on(20).open("three", &[SAFE]).answer(&family(), true);
    let third = proof(&log);
    assert_eq!((third.attempt, third.earlier), (3, vec![Call::GoOn, Call::BackToStudy]));
    assert!((third.state.asked - libm::log(800.0)).abs() < 1e-12, "ln(8 / 0.01)");
}

/// Evidence that sufficed is blocked by a later error, and stands again once that is passed.
#[test]
fn a_later_error_blocks_what_sufficed() {
    let content = support::content();
    let families: Vec<String> = content.evidence_for(SAFE).map(|family| family.id.clone()).collect();
    let mut log = Log::new("a", "Ana");
    log.open("one", &[SAFE]);
    for day in [0, 4, 8] {
        log.on(day);
        for nth in 0..15 {
            log.answer(&families[nth % families.len()], true);
        }
    }
    let sufficed = proof(&log);
    assert_eq!((sufficed.state.call, sufficed.sufficient_since), (Call::Sufficient, Some(date(8))));
    log.on(9).answer(&family(), false);
    let blocked = proof(&log);
    assert_eq!((blocked.state.call, blocked.state.missing), (Call::GoOn, vec![Missing::CriticalErrors(1)]));
    log.on(11).answers(&[family()], 2, &[]).on(12).answers(&[family()], 2, &[]);
    assert!(proof(&log).suffices());
    assert_eq!(proof(&log).sufficient_since, Some(date(8)), "validity counts from the first day");
}
