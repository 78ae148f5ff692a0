//! Laws of the evidence over seeded journals.

mod support;

use std::collections::BTreeSet;
use std::sync::Arc;
use stepboard::card::{Dice, Mark};
use stepboard::record::{Certainty, Event, Help, Journal, Within, merge};
use support::any::USUAL;
use support::log::{Log, ana, families, proof};
use support::{content, inputs};

/// A competency of the ordinary profile without families about safety, and one of the safety profile.
const PLAIN: &str = "pores-filled";
const SAFE: &str = "mask-worn";

/// Answers of a person on any day, in any context, to any family of a competency.
fn random(dice: &mut Dice, families: &[String], competency: &str) -> Log {
    let mut log = ana();
    let wrong = 6 + dice.below(40);
    for nth in 0..20 + dice.below(70) {
        if dice.one_in(6) {
            log.on(log.day + dice.below(4));
        }
        if nth == 0 || dice.one_in(25) {
            log.open(&format!("attempt-{nth}"), &[competency]);
        }
        if dice.one_in(12) {
            log.within = match dice.below(3) {
                0 => Within::Practice,
                1 => Within::Walk { walk: "w".into(), guided: dice.one_in(2) },
                _ => log.within,
            };
        }
        log.help = if dice.one_in(15) { Help::Hint } else { Help::None };
        log.certainty =
            *dice.pick(&[Certainty::TestBoard, Certainty::OnTheJob, Certainty::AskFirst]).expect("one");
        let family = dice.pick(families).expect("one").clone();
        if dice.one_in(40) {
            log.taught(&family);
        }
        log.answer(&family, !dice.one_in(wrong));
    }
    log
}

fn sweep(name: &str, mut check: impl FnMut(&mut Dice)) {
    let mut dice = Dice::new(name);
    for _ in 0..inputs(USUAL / 10) {
        check(&mut dice);
    }
}

/// One wrong answer about safety in a check, and everything else right for months: never sufficient, until it is passed
/// again.
#[test]
fn a_stream_with_one_error_about_safety_never_suffices() {
    let content = content();
    let families = families(&content, SAFE);
    let mut sufficed = 0;
    sweep("one error", |dice| {
        let mut log = ana();
        log.open("one", &[SAFE]);
        let (missed, at) =
            (dice.pick(&families).expect("one").clone(), usize::try_from(dice.below(60)).expect("few"));
        let others: Vec<String> = families.iter().filter(|family| **family != missed).cloned().collect();
        for (nth, day) in [0, 3, 6, 9, 12, 40].into_iter().enumerate() {
            log.on(day);
            for card in 0..10 {
                let place = nth * 10 + card;
                if place == at {
                    log.answer(&missed, false);
                }
                log.answer(&others[place % others.len()], true);
            }
        }
        let found = proof(&content, &log.events, SAFE);
        assert!(!found.suffices() && found.sufficient_since.is_none(), "{missed} at {at}");
        assert_eq!(found.hazards.len(), 1);
        // Without that answer and with its family seen, the same stream does suffice.
        let mut clean = log.clone();
        for event in &mut clean.events {
            if let Event::Answered(entry) = event {
                let entry = Arc::make_mut(entry);
                entry.mark = Mark::Right;
            }
        }
        sufficed += u32::from(proof(&content, &clean.events, SAFE).suffices());
    });
    assert!(sufficed > 0, "the stream would never have sufficed");
}

/// The evidence is what the events are: the same after storing, in any company, and however often it is worked out.
#[test]
fn replaying_the_stored_journal_gives_the_same_evidence() {
    let content = content();
    for competency in [PLAIN, SAFE] {
        let families = families(&content, competency);
        sweep(competency, |dice| {
            let log = random(dice, &families, competency);
            let journal = Journal::new(log.events.clone());
            let text = serde_json::to_string(&journal).expect("JSON");
            let stored: Journal = serde_json::from_str(&text).expect("a journal");
            let found = proof(&content, &log.events, competency);
            assert_eq!(proof(&content, stored.events(), competency), found);
            // Somebody else's tablet changes nothing.
            let mut other = Log::new("b", "Jo");
            other.open("attempt-0", &[competency]).answers(&families, 9, &[0, 1, 2]);
            let merged = merge(&[Journal::new(other.events), stored]).expect("no clash");
            assert_eq!(proof(&content, &merged, competency), found);
        });
    }
}

/// What an added or a dropped answer may do to the evidence of an attempt that is not decided.
#[test]
fn a_right_answer_never_lowers_evidence_and_a_wrong_one_never_raises_it() {
    let content = content();
    let families = families(&content, PLAIN);
    sweep("adding", |dice| {
        let log = random(dice, &families, PLAIN);
        let before = proof(&content, &log.events, PLAIN);
        let (mut right, mut wrong) = (log.clone(), log);
        for (log, hit) in [(&mut right, true), (&mut wrong, false)] {
            log.answer(&families[0], hit);
            let after = proof(&content, &log.events, PLAIN);
            if after.attempt == before.attempt && after.earlier == before.earlier {
                let moved = after.state.evidence - before.state.evidence;
                assert!(if hit { moved >= 0.0 } else { moved <= 0.0 }, "{moved}");
            }
        }
    });
}

/// Sufficient means: told anew from the answers that count, the bound is reached, on three days a week apart, with no error
/// open.
#[test]
fn sufficient_evidence_is_sufficient_when_it_is_counted_by_hand() {
    let content = content();
    let families = families(&content, PLAIN);
    let (mut met, mut not) = (0, 0);
    sweep("by hand", |dice| {
        let mut log = ana();
        log.open("one", &[PLAIN]);
        let wrong = 10 + dice.below(60);
        let mut days: Vec<u32> = Vec::new();
        let (mut right, mut missed) = (0_u32, 0_u32);
        let mut seen = BTreeSet::new();
        for _ in 0..3 + dice.below(3) {
            log.on(log.day + 1 + dice.below(6));
            let count = 4 + dice.below(6);
            for _ in 0..count {
                let family = dice.pick(&families).expect("one").clone();
                let hit = !dice.one_in(wrong);
                (right, missed) = (right + u32::from(hit), missed + u32::from(!hit));
                seen.insert(family.clone());
                log.answer(&family, hit);
            }
            if count >= 5 {
                days.push(log.day);
            }
        }
        let found = proof(&content, &log.events, PLAIN);
        // Attempts that were decided on the way are held by the laws of the test itself.
        if found.state.answers != right + missed {
            return;
        }
        // k0 = 0.70, k1 = 0.95, four options, alpha 0.05 halved.
        let evidence =
            f64::from(right) * libm::log(0.9625 / 0.775) + f64::from(missed) * libm::log(0.05 / 0.30);
        let bound = evidence >= libm::log(40.0);
        let apart = days.last().zip(days.first()).is_some_and(|(last, first)| last - first >= 7);
        let wanted = bound && days.len() >= 3 && apart && seen.len() * 10 >= families.len() * 6;
        assert_eq!(
            found.suffices(),
            wanted,
            "{right} right, {missed} wrong, {days:?}, {} families",
            seen.len()
        );
        (met, not) = (met + u32::from(wanted), not + u32::from(!wanted));
    });
    assert!(met > 0 && not > 0, "{met} met, {not} not");
}
