//! What decisions are evidence of: families that there are, right on a right way and wrong where the work is.

use crate::steps::{begin, does, go, ready_for_the_gun, rest, up_to_work};
use crate::support::content;
use std::collections::BTreeSet;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::verdict::RuleId;
use stepboard::walk::decision::{Decision, Offer, Wait};
use stepboard::walk::evidence::{Evidence, evidence};
use stepboard::walk::inspect::mistakes;
use stepboard::walk::planted::planted;
use stepboard::walk::{Follow, RoomAct, Walk};

fn wrong(walk: &Walk) -> Vec<&'static str> {
    let content = content();
    evidence(walk, &content).into_iter().filter(|one| !one.is_right()).map(|one| one.family).collect()
}

/// The topics that the design asks for, each by the family of cards that exercises it.
#[test]
fn a_right_way_is_right_in_every_family_that_it_exercises() {
    let content = content();
    let mut met: BTreeSet<&str> = BTreeSet::new();
    for info in &content.walks {
        let mut walk = begin(&content, &info.slug);
        if info.slug == "rush-box" {
            go(&mut walk, [Decision::Offer(Offer { day: 40 })], &content);
        }
        let on = rest(&walk, &content);
        go(&mut walk, on, &content);
        let found = evidence(&walk, &content);
        let bad: Vec<&Evidence> = found.iter().filter(|one| !one.is_right()).collect();
        assert!(bad.is_empty(), "{}: {bad:?}", info.slug);
        for one in found {
            assert!(content.family(one.family).is_some(), "no family `{}`", one.family);
            met.insert(one.family);
        }
    }
    for family in [
        "filler-wait",
        "recoat-now",
        "ready-yet",
        "order-ticket",
        "spray-decision",
        "mask-kind",
        "draw-and-mask",
        "before-gun",
        "at-the-door",
        "residue-place",
        "when-to-scrape",
        "level-when",
        "coats-for-build",
        "delivery-day",
    ] {
        assert!(met.contains(family), "`{family}` was never exercised");
    }
}

/// se-09; OSHA STD 01-05-010; 29 CFR 1910.107(g)(3).
#[test]
fn a_wrong_decision_is_wrong_in_its_own_family_and_in_no_other() {
    let content = content();
    let mut wet = begin(&content, "shaded-lute");
    let wipe = up_to_work(&mut wet, &content, Op::WipeFiller);
    go(&mut wet, [Decision::Work(wipe), Decision::Room(vec![RoomAct::RagsAway])], &content);
    let mut left = wet.at(wet.turns().len() - 1, &content);
    go(&mut wet, ready_for_the_gun(), &content);
    let mut bare = wet.clone();
    does(&mut wet, &content, Op::Seal);
    assert_eq!(wrong(&wet), ["filler-wait"]);
    go(
        &mut bare,
        [Decision::Wear(stepboard::walk::decision::Worn::NOTHING), Decision::Wait(Wait::Morning)],
        &content,
    );
    go(&mut bare, [ready_for_the_gun()[1].clone()], &content);
    does(&mut bare, &content, Op::Seal);
    assert_eq!(wrong(&bare), ["filler-wait", "mask-kind", "draw-and-mask", "before-gun", "at-the-door"]);
    go(&mut left, [Decision::Wait(Wait::Morning)], &content);
    assert_eq!(wrong(&left), ["residue-place"]);
}

/// se-09: the filler under the sealer was not dry. It is told with the decision, so that a walk given up just after it says
/// as much as one that is gone on with.
#[test]
fn what_is_wrong_is_told_with_the_decision_and_giving_up_takes_nothing_back() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    let wipe = up_to_work(&mut walk, &content, Op::WipeFiller);
    go(&mut walk, [Decision::Work(wipe), Decision::Room(vec![RoomAct::RagsAway])], &content);
    go(&mut walk, ready_for_the_gun(), &content);
    does(&mut walk, &content, Op::Seal);
    let given_up = evidence(&walk, &content);
    assert!(given_up.iter().any(|one| one.family == "filler-wait" && !one.is_right()));
    let on = rest(&walk, &content);
    go(&mut walk, on, &content);
    let whole = evidence(&walk, &content);
    assert_eq!(whole[..given_up.len()], given_up);
}

/// The order of a job (design): what was ordered and is left out for good is told at the decision that leaves it out.
#[test]
fn handing_over_what_is_not_rubbed_is_wrong_in_the_order() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    up_to_work(&mut walk, &content, Op::Level);
    assert_eq!(wrong(&walk), Vec::<&str>::new());
    go(&mut walk, [Decision::HandOver], &content);
    assert!(wrong(&walk).contains(&"order-ticket"));
}

/// The first step of a job proves nothing of the order: it is told at the hand-over, or where it is wrong.
#[test]
fn the_order_is_told_at_its_first_mistake_or_at_the_hand_over() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    let on = rest(&walk, &content);
    let (over, steps) = on.split_last().expect("a way");
    let order = |walk: &Walk| {
        let all = evidence(walk, &content).into_iter();
        all.filter(|one| one.family == "order-ticket").map(|one| one.is_right()).collect::<Vec<bool>>()
    };
    go(&mut walk, steps.iter().cloned(), &content);
    assert_eq!(order(&walk), [] as [bool; 0]);
    go(&mut walk, [over.clone()], &content);
    assert_eq!(order(&walk), [true]);
}

/// A day is promised by what is left of the work (drying.longest-path): days that went by are gone.
#[test]
fn a_promise_is_held_against_what_can_still_be_done() {
    let content = content();
    let begun = begin(&content, "plain-plate");
    let asked = begun.start().info.ticket.days;
    let day = |walk: &Walk| {
        let all = evidence(walk, &content).into_iter();
        all.filter(|one| one.family == "delivery-day").map(|one| one.is_right()).collect::<Vec<bool>>()
    };
    let offers = |walk: &Walk, day: u32| {
        let mut walk = walk.clone();
        go(&mut walk, [Decision::Offer(Offer { day })], &content);
        walk
    };
    let after = asked + 30;
    assert_eq!(day(&offers(&begun, after)), [false], "it can be done when it is asked for");
    let mut late = begun.clone();
    go(&mut late, (0..asked).map(|_| Decision::Wait(Wait::Morning)), &content);
    assert_eq!(day(&offers(&late, asked + 1)), [false], "nothing was begun by then");
    assert_eq!(day(&offers(&late, after)), [true]);
    // Late without a word, in time, and half done.
    let finished = |walk: &Walk| {
        let mut walk = walk.clone();
        let on = rest(&walk, &content);
        go(&mut walk, on, &content);
        walk
    };
    assert_eq!(day(&finished(&late)), [false]);
    assert_eq!(day(&finished(&begun)), [true]);
    let mut half = begun.clone();
    up_to_work(&mut half, &content, Op::Clear);
    go(&mut half, [Decision::HandOver], &content);
    assert_eq!(day(&half), [] as [bool; 0]);
}

/// Whatever the whole walk comes to was told with one of its decisions: nobody gets around it by giving up.
#[test]
fn each_mistake_of_a_walk_is_told_with_a_decision() {
    let content = content();
    let mut mistakes_told = 0;
    for (seed, slug) in (1..).zip(["plain-plate", "shaded-lute", "cold-plate", "ash-lyre"]) {
        let whole = planted(&begin(&content, slug), seed, &content).expect("mistakes that come to something");
        let mut follow = Follow::of(begin(&content, slug), &content);
        let mut told: BTreeSet<(usize, RuleId)> = BTreeSet::new();
        for (nth, turn) in whole.turns().iter().enumerate() {
            let one = follow.take(turn.decision.clone(), &content).expect("it was done once");
            // At the hand-over it would be too late.
            if turn.decision != Decision::HandOver {
                told.extend(one.broke.into_iter().map(|rule| (nth, rule)));
            }
        }
        for one in mistakes(&whole, &content) {
            assert!(
                told.iter().any(|(turn, rule)| *turn >= one.turn && *rule == one.rule),
                "{slug}: {one:?}"
            );
            mistakes_told += 1;
        }
    }
    assert!(mistakes_told >= 4, "{mistakes_told} mistakes");
}
