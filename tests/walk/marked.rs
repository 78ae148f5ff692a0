//! Faults on the work: each lies on the part that it is on, and is told with the rule of its kind.

use crate::steps::{begin, rest};
use crate::support::content;
use std::collections::BTreeSet;
use stepboard::rules::term::Term;
use stepboard::walk::inspect::mistakes;
use stepboard::walk::kinds::MistakeKind;
use stepboard::walk::look::{part_of, views};
use stepboard::walk::marks::{marks, near};
use stepboard::walk::planted::planted;

/// Numbers that are tried for each walk.
const SEEDS: u32 = 3;

#[test]
fn each_fault_that_is_not_mended_lies_on_each_part_that_it_is_on() {
    let content = content();
    let mut drawn = 0;
    for info in &content.walks {
        let walk = planted(&begin(&content, &info.slug), 2, &content).expect("a walk");
        let views = views(walk.start());
        let all = marks(&walk, &views);
        for (nth, shown) in walk.shown().iter().enumerate() {
            let parts = &walk.lines().get(shown.defect.made).expect("its line").parts;
            let on: BTreeSet<usize> =
                all.iter().filter(|mark| mark.shown == nth).map(|mark| mark.part).collect();
            let wanted: BTreeSet<usize> =
                if shown.mended.is_some() { BTreeSet::new() } else { parts.iter().copied().collect() };
            assert_eq!(on, wanted, "{}: {shown:?}", info.slug);
        }
        for mark in &all {
            let view = views.get(mark.view).expect("a view");
            let of = view.parts.iter().find(|part| part.kind == mark.kind).expect("a part of the outline");
            assert_eq!(part_of(walk.start(), of.kind), Some(mark.part));
            assert!(of.contains(mark.at), "{}: {mark:?}", info.slug);
            assert!((0.0..=1.0).contains(&mark.share.0) && (0.0..=1.0).contains(&mark.share.1), "{mark:?}");
            let close = near(&walk, mark, &content);
            assert_eq!(close.as_ref().and_then(|recipe| recipe.fault).map(|(fault, _)| fault), mark.fault);
            drawn += usize::from(close.is_some());
        }
    }
    assert!(drawn > content.walks.len(), "few are drawn: {drawn}");
}

/// Middles of two rings that lie nearer than this cover each other's numbers, mm: our own choice.
const COVERED_MM: f32 = 15.0;

#[test]
fn marks_of_one_view_do_not_cover_each_other() {
    let content = content();
    let mut pairs = 0;
    for info in &content.walks {
        let walk = planted(&begin(&content, &info.slug), 2, &content).expect("a walk");
        let all = marks(&walk, &views(walk.start()));
        for (nth, one) in all.iter().enumerate() {
            for other in all.iter().skip(nth + 1).filter(|other| other.view == one.view) {
                let apart = (one.at.0 - other.at.0).hypot(one.at.1 - other.at.1);
                assert!(apart >= COVERED_MM, "{}: {one:?} and {other:?}", info.slug);
                pairs += 1;
            }
        }
    }
    assert!(pairs > content.walks.len(), "few share a view: {pairs}");
}

#[test]
fn a_work_done_right_has_no_marks() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let on = rest(&walk, &content);
    crate::steps::go(&mut walk, on, &content);
    assert!(marks(&walk, &views(walk.start())).is_empty());
}

#[test]
fn every_mistake_that_can_be_planted_is_among_the_rules_of_a_kind_and_in_no_other() {
    let content = content();
    for info in &content.walks {
        for seed in 0..SEEDS {
            let walk = planted(&begin(&content, &info.slug), seed, &content).expect("a walk");
            for mistake in mistakes(&walk, &content) {
                let kinds =
                    MistakeKind::ALL.iter().filter(|kind| kind.rules().contains(&mistake.rule)).count();
                assert_eq!(kinds, 1, "{}: {mistake:?}", info.slug);
            }
        }
    }
}
