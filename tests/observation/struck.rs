//! What was entered wrongly is struck out, with a reason, and stays to be read.

use super::support::watch::{APPRENTICE, ILSE, TOMAS, Watch};
use super::{TODAY, ask, levelled};
use std::sync::Arc;
use stepboard::content::OnFile;
use stepboard::learn::observation::{Missing, history};
use stepboard::record::Event;
use stepboard::record::Judged::NotYet;

const WHY: &str = "Typed in for the wrong apprentice";

fn with(mine: &Watch, theirs: &Watch) -> Vec<Event> {
    mine.events.iter().chain(&theirs.events).cloned().collect()
}

#[test]
fn what_is_struck_out_counts_no_longer_and_is_still_told() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    watch.saw(&competency, "o1", 30, &[]);
    let wrong = watch.saw(&competency, "o2", 31, &[]);
    assert_eq!(ask(&watch.events, &competency).count, 2);
    watch.strikes(wrong, 32, WHY);
    assert_eq!(ask(&watch.events, &competency).count, 1);
    let lines = history(&watch.events, APPRENTICE, &competency, ILSE);
    let told: Vec<_> = lines.iter().map(|line| line.struck.map(|struck| struck.reason.as_str())).collect();
    assert_eq!(told, [Some(WHY), None], "newest first");
    assert_eq!(lines.iter().map(|line| line.may_strike).collect::<Vec<_>>(), [false, true]);
}

#[test]
fn a_reason_is_needed_and_nobody_strikes_out_for_themselves() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    let name = watch.saw(&competency, "o1", 30, &[("levelled-1", NotYet)]);
    let count = |watch: &Watch| ask(&watch.events, &competency).demonstrations.len();
    for reason in ["", "  ", "two\nlines"] {
        assert_eq!(count(watch.clone().strikes(name.clone(), 31, reason)), 1, "{reason:?}");
    }
    let mut own = Watch::new("b", APPRENTICE);
    own.strikes(name.clone(), 31, WHY);
    assert_eq!(ask(&with(&watch, &own), &competency).demonstrations.len(), 1);
    assert!(!history(&watch.events, APPRENTICE, &competency, APPRENTICE)[0].may_strike);
    // It names the person as well: a number alone might be of anybody.
    let mut elsewhere = watch.clone();
    elsewhere.strikes(name, 31, WHY);
    if let Some(Event::Struck(struck)) = elsewhere.events.last_mut() {
        let struck = Arc::make_mut(struck);
        struck.subject = "18".to_owned();
    }
    assert_eq!(count(&elsewhere), 1);
}

#[test]
fn another_assessor_may_strike_out_but_not_the_other_of_the_same_demonstration() {
    let competency = levelled();
    let (mut ilse, mut tomas) = (Watch::new("a", ILSE), Watch::new("b", TOMAS));
    let alone = ilse.saw(&competency, "o1", 30, &[]);
    let dissent = ilse.saw(&competency, "o2", 31, &[("levelled-3", NotYet)]);
    tomas.saw(&competency, "o2", 31, &[]);
    tomas.strikes(alone, 32, WHY).strikes(dissent.clone(), 32, "I saw it otherwise");
    let events = with(&ilse, &tomas);
    let found = ask(&events, &competency);
    assert_eq!((found.demonstrations.len(), found.missing[0]), (1, Missing::Settling));
    let may: Vec<bool> =
        history(&ilse.events, APPRENTICE, &competency, TOMAS).iter().map(|line| line.may_strike).collect();
    assert_eq!(may, [true, true], "before he has watched it himself");
    let lines = history(&events, APPRENTICE, &competency, TOMAS);
    assert_eq!(lines.iter().map(|line| line.may_strike).collect::<Vec<_>>(), [true, false, false]);
    // Whoever wrote it down may.
    ilse.strikes(dissent, 33, WHY);
    assert_eq!(ask(&with(&ilse, &tomas), &competency).count, 1);
}

#[test]
fn a_paper_is_struck_out_like_an_observation() {
    let competency = super::support::shop::competency("mask-worn");
    let mut watch = Watch::new("a", ILSE);
    watch.filed(OnFile::MedicalClearance, 10, 800);
    let wrong = watch.filed(OnFile::FitTest, 10, 800);
    let missing = |watch: &Watch| ask(&watch.events, &competency).missing.contains(&Missing::OnFile);
    assert!(!missing(&watch));
    watch.strikes(wrong, TODAY, "Another mask was tested");
    assert!(missing(&watch));
    assert_eq!(history(&watch.events, APPRENTICE, &competency, TOMAS).len(), 2);
    assert!(history(&watch.events, APPRENTICE, &levelled(), TOMAS).is_empty());
}
