//! A check over days: which cards a day wants, what is told of it when, what it says at its end. Held to what the evidence
//! asks for, which `reference_mastery.rs` holds against tables.

mod support;

use std::collections::BTreeSet;
use stepboard::card::Mark;
use stepboard::content::{Content, World};
use stepboard::learn::check::{
    Ahead, COMPETENCIES_MOST, Now, Sealed, Sitting, answers_of, in_order, open_of, ready_sets,
};
use stepboard::learn::evidence::{Asked, Outcome, evidence, of_all};
use stepboard::record::{Certainty, Event, Moment, Standing, Step, Within};
use stepboard::rules::term::Term;
use support::content;
use support::log::{Log, ana, date, families, proof};

/// An ordinary competency and one about safety.
const PLAIN: &str = "pores-filled";
const SAFE: &str = "room-safe";

/// The afternoon of a day.
fn on(day: u32) -> Now {
    let day = date(day);
    Now { day: Some(day), at: Moment::of(&format!("{day}T16:00:00Z")) }
}

fn sitting<'a>(content: &'a Content, log: &'a Log, day: u32) -> Option<Sitting<'a>> {
    Sitting::of(content, &log.events, "a", "one", on(day))
}

/// Answers what a day wants, all right but for the first so many; how many cards it took.
fn work(content: &Content, log: &mut Log, day: u32, mut wrong: u32) -> u32 {
    let world = World { content, sheet: &content.sheets[0] };
    log.on(day);
    let mut cards = 0;
    loop {
        let next = sitting(content, log, day).expect("it is open").next(&world);
        let Some(card) = next else { return cards };
        log.answer(&card.family, wrong == 0);
        wrong = wrong.saturating_sub(1);
        cards += 1;
        assert!(cards < 100, "a day ends");
    }
}

#[test]
fn three_days_a_week_apart_suffice_where_all_is_right() {
    let content = content();
    for competency in [PLAIN, SAFE] {
        let mut log = ana();
        log.open("one", &[competency]);
        for (day, outcome) in [(0, Outcome::GoingOn), (3, Outcome::GoingOn), (8, Outcome::Suffices)] {
            let ahead = sitting(&content, &log, day).expect("open").ahead(&content);
            assert!(ahead.cards > 0 && ahead.minutes > 0);
            let cards = work(&content, &mut log, day, 0);
            assert!(cards >= 5, "{competency}: {cards} cards on day {day}");
            let sitting = sitting(&content, &log, day).expect("open");
            assert!(sitting.is_done() && sitting.today == cards && sitting.seconds == 20 * cards);
            assert_eq!(sitting.courses[0].evidence.outcome(), outcome, "{competency}, day {day}");
            assert_eq!(sitting.is_over(), outcome == Outcome::Suffices);
        }
        assert_eq!(proof(&content, &log.events, competency).sufficient_since, Some(date(8)));
    }
}

#[test]
fn a_day_that_cannot_help_wants_nothing_and_says_from_when_it_can() {
    let content = content();
    let mut log = ana();
    log.open("one", &[PLAIN]);
    // All answers and all days but one, which must lie a week after the first.
    for day in [0, 1, 2] {
        log.on(day).answers(&families(&content, PLAIN), 8, &[]);
    }
    let sitting = sitting(&content, &log, 4).expect("open");
    assert!(sitting.is_done() && !sitting.is_over(), "{:?}", sitting.courses);
    assert_eq!(sitting.courses[0].from, Some(date(7)));
    assert!(work(&content, &mut log, 7, 0) >= 5);
    assert_eq!(proof(&content, &log.events, PLAIN).outcome(), Outcome::Suffices);
}

#[test]
fn nobody_is_kept_answering_all_day() {
    let content = content();
    let mut log = ana();
    log.open("one", &[PLAIN]);
    log.certainty = Certainty::AskFirst;
    // Right answers that one would have asked about first do not count, and do not go on for ever either.
    let cards = work(&content, &mut log, 0, 0);
    assert!((5..=30).contains(&cards), "{cards}");
    assert_eq!(proof(&content, &log.events, PLAIN).state.answers, 0);
}

#[test]
fn what_is_decided_wants_no_more_and_a_later_check_takes_the_place() {
    let content = content();
    let mut log = ana();
    log.open("one", &[PLAIN]);
    work(&content, &mut log, 0, 2);
    let lost = sitting(&content, &log, 1).expect("open");
    assert_eq!(lost.courses[0].evidence.outcome(), Outcome::BackToStudy);
    assert!(lost.is_done() && lost.is_over());
    let mut log = ana();
    log.open("one", &[PLAIN]).answers(&families(&content, PLAIN), 2, &[]);
    log.open("two", &[PLAIN]).answers(&families(&content, PLAIN), 1, &[]);
    assert!(sitting(&content, &log, 0).expect("open").is_over(), "replaced by the second");
}

#[test]
fn an_attempt_is_taken_up_on_its_own_device_by_its_own_person_until_it_is_closed() {
    let content = content();
    let mut log = ana();
    log.open("one", &[PLAIN]).answers(&families(&content, PLAIN), 2, &[]).step("one", Step::Left);
    let open = open_of(&log.events, "Ana");
    assert_eq!((open.len(), open[0].standing, open[0].answers), (1, Standing::Left, 2));
    assert!(open_of(&log.events, "Jo").is_empty());
    assert!(Sitting::of(&content, &log.events, "b", "one", on(0)).is_none(), "another device");
    let before = sitting(&content, &log, 0)
        .expect("left")
        .next(&World { content: &content, sheet: &content.sheets[0] });
    log.step("one", Step::Resumed);
    let after = sitting(&content, &log, 0)
        .expect("taken up")
        .next(&World { content: &content, sheet: &content.sheets[0] });
    assert_eq!(before, after, "the same card lies there");
    log.step("one", Step::Closed);
    assert!(sitting(&content, &log, 0).is_none() && open_of(&log.events, "Ana").is_empty());
}

#[test]
fn an_answer_is_told_once_its_day_is_done_or_over_or_the_check_is_closed() {
    let content = content();
    let hidden = |log: &Log, day: u32| {
        let sealed = Sealed::of(&content, &log.events, on(day));
        let all = log.events.iter().filter_map(Event::answer);
        let hidden = all.filter(|entry| sealed.hides(entry)).count();
        let told = sealed.told_of(&log.events, "Ana").count();
        assert_eq!(hidden + told, log.events.iter().filter(|event| event.answer().is_some()).count());
        hidden
    };
    let mut log = ana();
    log.within = Within::Practice;
    log.answer("wants-filler", false);
    log.open("one", &[PLAIN]).answers(&families(&content, PLAIN), 2, &[1]);
    assert_eq!(hidden(&log, 0), 2, "practice is told, the check is not");
    log.step("one", Step::Left);
    assert_eq!(hidden(&log, 0), 2, "leaving tells nothing");
    assert_eq!(hidden(&log, 1), 0, "the day after");
    let mut closed = log.clone();
    closed.step("one", Step::Closed);
    assert_eq!(hidden(&closed, 0), 0);
    work(&content, &mut log, 0, 0);
    assert_eq!(hidden(&log, 0), 0, "the cards of the day are done");
    // What is not told yet is no part of what is shown.
    let mut log = ana();
    log.open("one", &[PLAIN]).answers(&families(&content, PLAIN), 2, &[]);
    let sealed = Sealed::of(&content, &log.events, on(0));
    let told: Vec<&Event> = sealed.told(&log.events).collect();
    let shown = of_all(&content, &told, "Ana", 0);
    assert!(shown.iter().all(|(_, found)| found.state.answers == 0));
    let all: Vec<&Event> = log.events.iter().collect();
    let (_, found) =
        of_all(&content, &all, "Ana", 3).into_iter().find(|(one, _)| one.slug == PLAIN).expect("ships");
    assert_eq!((found.state.answers, found.unreadable), (2, 3));
    let asked =
        Asked { unreadable: 3, ..Asked::usual(&content, "Ana", content.competency(PLAIN).expect("ships")) };
    assert_eq!(found, evidence(&log.events, &asked));
}

#[test]
fn an_error_about_safety_blocks_and_is_asked_again_after_its_rest() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut log = ana();
    log.open("one", &[SAFE]);
    work(&content, &mut log, 0, 0);
    let safety: BTreeSet<String> = content
        .evidence_for(SAFE)
        .filter(|family| family.severity.slug() == "safety")
        .map(|family| family.id.clone())
        .collect();
    let family = safety.iter().next().expect("some").clone();
    log.on(3).certainty = Certainty::OnTheJob;
    log.answer(&family, false);
    log.certainty = Certainty::TestBoard;
    let found = proof(&content, &log.events, SAFE);
    assert_eq!(found.outcome(), Outcome::Blocked);
    assert!(found.hazards[0].wants_initials && found.hazards[0].rests_until(on(3).at).is_some());
    let early = work(&content, &mut log, 3, 0);
    assert!(early > 0);
    let again = sitting(&content, &log, 5).expect("open");
    assert_eq!(again.next(&world).expect("a card").family, family, "what is to be passed again comes first");
    // Right answers on two days and the initials lift it.
    log.on(5).taught(&family);
    work(&content, &mut log, 5, 0);
    assert_eq!(proof(&content, &log.events, SAFE).hazards.len(), 1, "one day is not enough");
    work(&content, &mut log, 9, 0);
    assert!(proof(&content, &log.events, SAFE).hazards.is_empty());
}

#[test]
fn answers_are_looked_at_sure_and_wrong_first() {
    let content = content();
    let mut log = ana();
    let of = families(&content, PLAIN);
    log.open("one", &[PLAIN]).answer(&of[0], true).answer(&of[1], false);
    log.certainty = Certainty::OnTheJob;
    log.answer(&of[2], true).answer(&of[0], false);
    log.within = Within::Practice;
    log.answer(&of[0], false);
    let answers = in_order(answers_of(&log.events, "a", "one"));
    let told: Vec<_> =
        answers.iter().map(|entry| (entry.sure_and_wrong(), entry.mark == Mark::Right)).collect();
    assert_eq!(told, [(true, false), (false, false), (false, true), (false, true)]);
    assert!(answers_of(&log.events, "b", "one").is_empty());
}

#[test]
fn a_new_check_tells_what_the_day_will_ask() {
    let content = content();
    let none: Vec<&Event> = Vec::new();
    let all = of_all(&content, &none, "Ana", 0);
    for (competency, found) in &all {
        let told = Ahead::of_new(&content, &[(*competency, found)], on(0));
        let mut log = ana();
        log.open("one", &[&competency.slug]);
        assert_eq!(told, sitting(&content, &log, 0).expect("open").ahead(&content));
        assert_eq!(work(&content, &mut log, 0, 0), told.cards, "{}", competency.slug);
    }
    let sets = ready_sets(&content);
    assert!(sets.iter().any(|ready| ready.set.slug == "filling"));
    assert!(sets.iter().all(|ready| (1..=COMPETENCIES_MOST).contains(&ready.competencies.len())));
}
