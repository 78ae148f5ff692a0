//! Walks of somebody else with mistakes planted in them, and what is found of those.

use crate::steps::begin;
use crate::support::content;
use std::collections::BTreeSet;
use stepboard::walk::inspect::{inspect, mistakes};
use stepboard::walk::planted::{FEWEST, MOST, planted};
use stepboard::walk::report::report;
use stepboard::walk::saved::Mode;

/// Numbers that are tried for each walk.
const SEEDS: u32 = 6;

#[test]
fn each_number_gives_the_same_walk_with_mistakes_that_the_run_shows() {
    let content = content();
    let mut rules = BTreeSet::new();
    for info in &content.walks {
        let start = begin(&content, &info.slug);
        for seed in 0..SEEDS {
            let walk = planted(&start, seed, &content).expect("a walk");
            let all = mistakes(&walk, &content);
            assert!((FEWEST..=MOST).contains(&all.len()), "{} {seed}: {all:?}", info.slug);
            let own: BTreeSet<&str> = all.iter().map(|one| one.rule.0).collect();
            assert_eq!(own.len(), all.len(), "each breaks another rule: {all:?}");
            assert!(walk.is_over() && walk.mode() == Mode::Inspect && walk.seed() == seed);
            let told = report(&walk, &content);
            assert!(told.found.len() + told.lapses.len() >= all.len(), "{all:?}");
            assert_eq!(planted(&start, seed, &content).expect("a walk"), walk, "the same each time");
            assert_eq!(walk.saved().replay(&content).expect("it was walked"), walk);
            rules.extend(all.into_iter().map(|one| one.rule));
        }
    }
    assert!(rules.len() > 8, "few kinds of mistakes: {rules:?}");
}

#[test]
fn what_is_named_is_graded_against_the_run() {
    let content = content();
    let walk = planted(&begin(&content, "shaded-lute"), 3, &content).expect("a walk");
    let all = mistakes(&walk, &content);
    let named: Vec<(usize, String)> = all.iter().map(|one| (one.turn, one.rule.0.to_owned())).collect();
    let told = inspect(&walk, &named, &content);
    assert_eq!((told.found, told.missed.len(), told.half.len(), told.wrong.len()), (all.clone(), 0, 0, 0));
    assert_eq!(inspect(&walk, &[], &content).missed, all);
    let quiet = (0..walk.turns().len()).find(|turn| all.iter().all(|one| one.turn != *turn)).expect("a turn");
    let first = all.first().expect("a mistake");
    let guess = [(first.turn, "no.rule".to_owned()), (quiet, first.rule.0.to_owned())];
    let told = inspect(&walk, &guess, &content);
    assert!(told.found.is_empty() && told.wrong == [quiet] && told.half.contains(first), "{told:?}");
}
