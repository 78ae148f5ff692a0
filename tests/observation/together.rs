//! Two assessors at one demonstration. A disagreement on a critical step is talked over before either signs (common practice
//! of assessment, no source).

use super::demonstrations::worths;
use super::support::watch::{ILSE, TOMAS, Watch};
use super::{ask, levelled};
use stepboard::learn::observation::{Missing, Worth};
use stepboard::record::Judged::{Met, NotSeen, NotYet};
use stepboard::record::{Event, Journal, merge};

/// The journals of both tablets as one.
fn both(a: &Watch, b: &Watch) -> Vec<Event> {
    merge(&[Journal::new(a.events.clone()), Journal::new(b.events.clone())]).expect("two tablets")
}

#[test]
fn what_two_watched_is_one_demonstration() {
    let competency = levelled();
    let (mut ilse, mut tomas) = (Watch::new("a", ILSE), Watch::new("b", TOMAS));
    ilse.saw(&competency, "o1", 30, &[("levelled-1", NotSeen), ("levelled-6", NotSeen)]);
    tomas.saw(&competency, "o1", 30, &[("levelled-2", NotYet), ("levelled-6", NotSeen)]);
    let events = both(&ilse, &tomas);
    let found = ask(&events, &competency);
    assert_eq!((worths(&found), found.count, found.days), (vec![Worth::Counts], 1, 1));
    let (one, _) = &found.demonstrations[0];
    assert_eq!(one.said.len(), 2);
    // Seen by one is seen; where one says not yet of what is not critical, it is to be seen met at another.
    assert_eq!([1, 2, 6].map(|nth| one.judged(&format!("levelled-{nth}"))), [Met, NotYet, NotSeen]);
    // Another occasion is another demonstration, on the same day as well.
    tomas.saw(&competency, "o2", 30, &[]);
    assert_eq!(ask(&both(&ilse, &tomas), &competency).count, 2);
}

#[test]
fn a_disagreement_on_a_critical_step_counts_for_nothing_until_it_is_talked_over() {
    let competency = levelled();
    let (mut ilse, mut tomas) = (Watch::new("a", ILSE), Watch::new("b", TOMAS));
    for (nth, day) in (26..30).enumerate() {
        ilse.saw(&competency, &format!("before-{nth}"), day, &[]);
    }
    ilse.saw(&competency, "o1", 30, &[]);
    tomas.saw(&competency, "o1", 30, &[("levelled-3", NotYet)]);
    let events = both(&ilse, &tomas);
    let found = ask(&events, &competency);
    assert_eq!((found.count, found.unsettled().count()), (4, 1));
    assert_eq!(found.missing, [Missing::Settling], "enough else is shown, and nobody signs before");
    let disputed = found.unsettled().next().expect("one").disputed(&competency);
    assert_eq!(disputed.iter().map(|one| one.id.as_str()).collect::<Vec<_>>(), ["levelled-3"]);
    // Tomás changes his mind: it counts. Ilse changes hers: it failed.
    let mut changed = tomas.clone();
    changed.saw(&competency, "o1", 31, &[]);
    let events = both(&ilse, &changed);
    let found = ask(&events, &competency);
    assert_eq!((found.count, found.missing.len()), (5, 0));
    assert_eq!(found.demonstrations.len(), 5, "written down again, and the same demonstration");
    let mut changed = ilse.clone();
    changed.saw(&competency, "o1", 31, &[("levelled-3", NotYet)]);
    let events = both(&changed, &tomas);
    let found = ask(&events, &competency);
    assert_eq!((found.count, worths(&found).last()), (4, Some(&Worth::Failed)));
    // Where they agree on another one that failed, there is nothing to talk over.
    let mut again = tomas.clone();
    again.saw(&competency, "o1", 31, &[("levelled-3", NotYet), ("levelled-4", NotYet)]);
    let mut changed = ilse.clone();
    changed.saw(&competency, "o1", 31, &[("levelled-4", NotYet)]);
    let events = both(&changed, &again);
    assert_eq!(worths(&ask(&events, &competency)).last(), Some(&Worth::Failed));
}

/// Whatever is written down on two tablets, and in whichever order their journals come together.
#[test]
fn the_same_comes_out_after_storing_and_merging() {
    let competency = levelled();
    let mut dice = stepboard::card::Dice::new("observation");
    for _ in 0..super::support::inputs(200) {
        let mut tablets = [Watch::new("a", ILSE), Watch::new("b", TOMAS)];
        let mut names = Vec::new();
        for day in 20..28 + dice.below(20) {
            for tablet in &mut tablets {
                let criterion = format!("levelled-{}", 1 + dice.below(6));
                let judged = *dice.pick(&[Met, NotYet, NotSeen]).expect("one");
                let occasion = format!("o{}", dice.below(8));
                match dice.below(4) {
                    0 => {
                        let struck = dice.pick(&names).cloned();
                        struck.map(|name| tablet.strikes(name, day, "typed into the wrong line"));
                    }
                    _ => names.push(tablet.saw(&competency, &occasion, day, &[(&criterion, judged)])),
                }
            }
        }
        let [a, b] = tablets;
        let (one, other) = (both(&a, &b), both(&b, &a));
        let found = ask(&one, &competency);
        assert_eq!(found, ask(&other, &competency));
        let text = serde_json::to_string(&one).expect("json");
        let again: Vec<Event> = serde_json::from_str(&text).expect("read again");
        assert_eq!(ask(&again, &competency), found);
        assert!(found.days <= found.count && found.demonstrations.len() <= 8);
        assert_eq!(found.missing.contains(&Missing::Criteria), !found.to_see.is_empty());
    }
}
