//! How far assessors agree, from what they wrote down. `tests/reference_agreement.rs` holds the figures against worked ones.

use super::levelled;
use super::support::watch::{ILSE, TOMAS, Watch};
use stepboard::learn::agreement::Agreement;
use stepboard::learn::observation::{FIRST_OF_NEW, SECOND_EVERY, Seconded, agreement, seconded};
use stepboard::record::Event;
use stepboard::record::Judged::{NotSeen, NotYet};

fn rows(found: Option<Agreement>) -> Vec<Vec<u32>> {
    found.expect("pairs").table.rows().to_vec()
}

fn with(mine: &Watch, theirs: &Watch) -> Vec<Event> {
    mine.events.iter().chain(&theirs.events).cloned().collect()
}

#[test]
fn the_first_judgements_of_two_assessors_are_compared() {
    let (competency, other) = (levelled(), super::support::shop::competency("buffed"));
    let (mut ilse, mut tomas) = (Watch::new("a", ILSE), Watch::new("b", TOMAS));
    ilse.saw(&competency, "o1", 30, &[("levelled-1", NotYet), ("levelled-2", NotSeen)]);
    assert_eq!(agreement(&ilse.events, None), None, "one alone agrees with nobody");
    tomas.saw(&competency, "o1", 30, &[("levelled-3", NotYet), ("levelled-4", NotYet)]);
    // Rows are of a-2: the first criterion met by him and not by her, the third and the fourth the other way round.
    let expected = vec![vec![2, 1], vec![2, 0]];
    assert_eq!(rows(agreement(&with(&ilse, &tomas), Some("levelled"))), expected);
    assert_eq!(rows(agreement(&with(&tomas, &ilse), None)), expected, "whoever wrote first");
    // What is said after it was talked over, and what another demonstration showed, are no evidence of agreement.
    tomas.saw(&competency, "o1", 31, &[]);
    tomas.saw(&competency, "o2", 31, &[]);
    assert_eq!(rows(agreement(&with(&ilse, &tomas), None)), expected);
    ilse.saw(&other, "o3", 32, &[]);
    tomas.saw(&other, "o3", 32, &[]);
    assert_eq!(rows(agreement(&with(&ilse, &tomas), Some("levelled"))), expected);
    let met = u32::try_from(other.criteria.len()).expect("few");
    assert_eq!(rows(agreement(&with(&ilse, &tomas), None)), [vec![2 + met, 1], vec![2, 0]]);
    assert_eq!(agreement(&with(&ilse, &tomas), Some("masked-off")), None);
    // What is struck out is no judgement.
    let Some(Event::Observed(wrong)) = ilse.events.last().cloned() else { panic!("an observation") };
    ilse.strikes(wrong.stamp.name(), 33, "The wrong work");
    assert_eq!(rows(agreement(&with(&ilse, &tomas), None)), expected);
}

/// In at least 1 of 10 and in the first 5 of a new assessor: practical rule of the reference, common practice.
#[test]
fn a_second_assessor_is_due_at_first_and_then_one_time_in_ten() {
    assert_eq!((SECOND_EVERY, FIRST_OF_NEW), (10, 5));
    let competency = levelled();
    let mut ilse = Watch::new("a", ILSE);
    let mut tomas = Watch::new("b", TOMAS);
    assert!(seconded(&[], ILSE).wants_another());
    for nth in 0..4 {
        ilse.saw(&competency, &format!("o{nth}"), 30 + nth, &[]);
    }
    tomas.saw(&competency, "o0", 30, &[]);
    let told = seconded(&with(&ilse, &tomas), ILSE);
    assert_eq!(told, Seconded { watched: 4, with_another: 1 });
    assert!(told.wants_another());
    for (watched, with_another, due) in
        [(5, 1, false), (9, 1, false), (10, 1, true), (19, 2, false), (20, 2, true), (5, 0, true)]
    {
        assert_eq!(Seconded { watched, with_another }.wants_another(), due, "{with_another} of {watched}");
    }
}
