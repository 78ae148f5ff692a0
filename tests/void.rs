//! What was found wrong after it had counted: what rests on it no longer counts, nothing is erased, and it counts again once
//! the voiding is taken back.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod support;

use serde_json::json;
use std::sync::Arc;
use stepboard::learn::evidence::{Outcome, Uncounted};
use stepboard::record::{CardKind, Certainty, Event, EventName, Journal, Voids, Within, Wrong, merge};
use support::log::{Log, ana, families, proof};

const COMPETENCY: &str = "mask-worn";
const WHY: &str = "The rule takes the wrong edge";

fn cards(family: &str) -> Wrong {
    Wrong::Cards(CardKind { family: family.to_owned(), version: 1 })
}

/// A check in which everything was right, over days enough.
fn passed() -> (Log, Vec<String>) {
    let content = support::content();
    let families = families(&content, COMPETENCY);
    let mut log = ana();
    log.certainty = Certainty::OnTheJob;
    log.open("one", &[COMPETENCY]);
    for day in 0..6 {
        log.on(2 * day).answers(&families, families.len(), &[]);
    }
    assert_eq!(proof(&content, &log.events, COMPETENCY).outcome(), Outcome::Suffices);
    (log, families)
}

#[test]
fn answers_to_voided_cards_no_longer_count_and_stay_in_the_journal() {
    let content = support::content();
    let (mut log, families) = passed();
    let before = log.events.clone();
    log.voids(cards(&families[0]), WHY);
    let found = proof(&content, &log.events, COMPETENCY);
    assert_eq!(found.outcome(), Outcome::GoingOn, "a family is missing now");
    let touched = before.iter().filter_map(Event::answer).filter(|one| one.family == families[0]).count();
    assert_eq!(found.uncounted.get(&Uncounted::Voided).map(|n| *n as usize), Some(touched));
    assert_eq!(log.events[..before.len()], before, "nothing is erased");
    // Another version of the family is another one: what was mended counts.
    let mended = Wrong::Cards(CardKind { family: families[0].clone(), version: 2 });
    let (mut other, _) = passed();
    other.voids(mended, WHY);
    assert_eq!(proof(&content, &other.events, COMPETENCY).outcome(), Outcome::Suffices);
}

#[test]
fn a_voided_rule_takes_all_cards_it_may_decide_and_a_voided_set_all_its_answers() {
    let content = support::content();
    let (mut log, families) = passed();
    let of = |family: &String| CardKind { family: family.clone(), version: 1 };
    let rule = "hazard.seal-needs-clean-shave".to_owned();
    log.voids(Wrong::Rule { rule, cards: families.iter().take(2).map(of).collect() }, WHY);
    assert_ne!(proof(&content, &log.events, COMPETENCY).outcome(), Outcome::Suffices);
    let (mut log, _) = passed();
    log.voids(Wrong::Set { set: "a-set".to_owned() }, WHY);
    let found = proof(&content, &log.events, COMPETENCY);
    assert_eq!((found.state.answers, found.outcome()), (0, Outcome::NotBegun));
}

#[test]
fn what_voids_a_rule_is_found_by_the_rule() {
    let mut log = ana();
    let cards = vec![CardKind { family: "mask-wants".to_owned(), version: 1 }];
    log.voids(Wrong::Rule { rule: "hazard.seal-needs-clean-shave".to_owned(), cards }, WHY);
    let voids = Voids::of(&log.events);
    assert!(voids.of_rule("hazard.seal-needs-clean-shave").is_some_and(|one| one.reason == WHY));
    assert_eq!(voids.of_rule("hazard.other"), None);
}

#[test]
fn a_rule_stands_voided_though_its_cards_were_voided_before() {
    let mut log = ana();
    let rule = "hazard.seal-needs-clean-shave";
    let kind = CardKind { family: "mask-wants".to_owned(), version: 1 };
    log.voids(cards("mask-wants"), WHY);
    let first = log.events.last().unwrap().stamp().name();
    log.voids(Wrong::Rule { rule: rule.to_owned(), cards: vec![kind] }, "The rule is wrong as well");
    let voids = Voids::of(&log.events);
    assert_eq!(voids.of_rule(rule).unwrap().reason, "The rule is wrong as well");
    assert_eq!(voids.of_cards("mask-wants", 1).unwrap().reason, WHY, "the first to void them tells why");
    // The cards' own voiding taken back, the rule still takes them; that taken back too, nothing is left.
    let second = log.events.last().unwrap().stamp().name();
    log.voids(Wrong::Void { void: first }, "They were right after all");
    let voids = Voids::of(&log.events);
    assert_eq!(voids.of_cards("mask-wants", 1), voids.of_rule(rule));
    assert!(voids.of_rule(rule).is_some());
    log.voids(Wrong::Void { void: second }, "It was right after all");
    assert!(Voids::of(&log.events).is_empty());
}

#[test]
fn an_error_about_safety_on_a_voided_card_blocks_nobody() {
    let content = support::content();
    let (mut log, families) = passed();
    let safety = content.evidence_for(COMPETENCY).find(|family| {
        family.severity == stepboard::rules::term::Severity::Safety && families.contains(&family.id)
    });
    let family = safety.unwrap().id.clone();
    log.answer(&family, false);
    assert_eq!(proof(&content, &log.events, COMPETENCY).outcome(), Outcome::Blocked);
    log.voids(cards(&family), WHY);
    assert_ne!(proof(&content, &log.events, COMPETENCY).outcome(), Outcome::Blocked);
}

#[test]
fn a_voiding_that_is_taken_back_leaves_all_as_it_was() {
    let content = support::content();
    let (mut log, families) = passed();
    let before = proof(&content, &log.events, COMPETENCY);
    log.voids(cards(&families[0]), WHY);
    let void = log.events.last().unwrap().stamp().name();
    log.voids(Wrong::Void { void: void.clone() }, "It was right after all");
    assert_eq!(proof(&content, &log.events, COMPETENCY), before);
    // What another tablet took over is the same voiding.
    let mut other = Log::new("b", "");
    other.voids(cards(&families[0]), WHY);
    let Some(Event::Voided(taken)) = other.events.last_mut() else { panic!("a voiding") };
    let taken = Arc::make_mut(taken);
    taken.from = Some(void);
    log.events.extend(other.events);
    assert_eq!(proof(&content, &log.events, COMPETENCY), before);
}

#[test]
fn the_order_of_events_and_tablets_changes_nothing() {
    let content = support::content();
    let (log, families) = passed();
    let mut other = Log::new("b", "");
    other.voids(cards(&families[0]), WHY);
    let (a, b) = (Journal::new(log.events.clone()), Journal::new(other.events));
    let one = merge(&[a.clone(), b.clone()]).unwrap();
    assert_eq!(one, merge(&[b, a]).unwrap());
    let mut last = one.clone();
    let at = last.iter().position(|event| matches!(event, Event::Voided(_))).unwrap();
    let void = last.remove(at);
    last.push(void);
    assert_eq!(proof(&content, &one, COMPETENCY), proof(&content, &last, COMPETENCY));
}

#[test]
fn a_voiding_without_a_reason_voids_nothing() {
    let (mut log, families) = passed();
    for reason in ["", "  ", "a\u{202e}b", &"x".repeat(500)] {
        log.voids(cards(&families[0]), reason);
    }
    assert!(Voids::of(&log.events).is_empty());
}

#[test]
fn it_is_stored_and_read_as_it_was_written() {
    let mut log = Log::new("t", "");
    log.voids(cards("wants-filler"), WHY).voids(Wrong::Set { set: "a-set".to_owned() }, WHY);
    let void = EventName { device: "t".to_owned(), sequence: 1 };
    log.voids(Wrong::Void { void }, "It was right after all");
    let journal = Journal::new(log.events);
    let text = serde_json::to_string(&journal).unwrap();
    assert_eq!(serde_json::from_str::<Journal>(&text).unwrap(), journal);
    let stored = serde_json::to_value(&journal).unwrap();
    assert_eq!(stored[0]["event"], "voided");
    assert_eq!(stored[0]["wrong"], json!({ "cards": { "family": "wants-filler", "version": 1 } }));
    assert_eq!(stored[1]["wrong"], json!({ "set": { "set": "a-set" } }));
    assert_eq!(stored[2]["wrong"], json!({ "void": { "void": { "device": "t", "sequence": 1 } } }));
    let voids = Voids::of(journal.events());
    assert!(voids.of_set("a-set").is_some() && voids.of_cards("wants-filler", 1).is_none());
    let mut one = ana();
    one.within = Within::Practice;
    one.answer("wants-filler", true);
    assert_eq!(voids.touches(one.events[0].answer().unwrap()), None, "practice is of no set");
}
