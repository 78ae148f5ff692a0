//! Somebody else's walk gone through: what was wrong is told by turn and rule, as the published row and the duty have it.

use crate::case::other_way;
use crate::steps::{begin, go, rest, up_to_work};
use crate::support::content;
use stepboard::content::Content;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::{Decision, RoomAct};
use stepboard::walk::inspect::{Inspected, inspect, mistakes};
use stepboard::walk::{Walk, right};

/// Sanded across the grain (`sequence-errors.csv`, se-01), and sealed with the air not read; with the turns of both.
fn wronged(content: &Content) -> (Walk, [usize; 2]) {
    let mut walk = begin(content, "plain-plate");
    other_way(&mut walk, content, Op::Sand, &[], &[("strokes", "across-the-grain")]);
    let sanded = walk.turns().len() - 1;
    let seal = up_to_work(&mut walk, content, Op::Seal);
    let mut unread = begin(content, "plain-plate");
    for turn in walk.turns() {
        let mut decision = turn.decision.clone();
        if let Decision::Room(duties) = &mut decision {
            duties.retain(|duty| *duty != RoomAct::AirRead);
        }
        go(&mut unread, [decision], content);
    }
    go(&mut unread, [Decision::Work(seal)], content);
    let sealed = unread.turns().len() - 1;
    let on = rest(&unread, content);
    go(&mut unread, on, content);
    (unread, [sanded, sealed])
}

#[test]
fn each_mistake_stands_at_its_turn_with_its_rule() {
    let content = content();
    let (walk, [sanded, sealed]) = wronged(&content);
    let all: Vec<(usize, Option<Op>, &str)> =
        mistakes(&walk, &content).into_iter().map(|one| (one.turn, one.operation, one.rule.0)).collect();
    assert_eq!(all, [(sanded, Some(Op::Sand), "se-01"), (sealed, None, "air.read-before-spraying")]);
    let clean = begin(&content, "plain-plate");
    assert!(mistakes(&clean, &content).is_empty());
    assert!(right::next(&clean, &content).is_some());
}

#[test]
fn what_is_named_is_found_half_found_missed_or_wrong() {
    let content = content();
    let (walk, [sanded, sealed]) = wronged(&content);
    let all = mistakes(&walk, &content);
    let named = |named: &[(usize, &str)]| {
        let named: Vec<(usize, String)> =
            named.iter().map(|(turn, rule)| (*turn, (*rule).to_owned())).collect();
        inspect(&walk, &named, &content)
    };
    let told = named(&[(sanded, "se-01"), (sealed, "se-01"), (0, "se-02"), (0, "se-03")]);
    let wanted = Inspected { found: vec![all[0]], half: vec![all[1]], missed: vec![], wrong: vec![0] };
    assert_eq!(told, wanted);
    assert_eq!(
        named(&[(sanded, "se-02"), (sanded, "se-01")]).found,
        [all[0]],
        "one of several names is right"
    );
    assert_eq!(named(&[]), Inspected { missed: all, ..Inspected::default() });
}
