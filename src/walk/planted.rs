//! Somebody else's walk with mistakes planted in it: out of a right way, one decision after another, some of them wrong.
//!
//! A mistake is planted only where running it shows that it comes to something: a defect that its operation made, or a duty
//! left undone; and each breaks a rule of its own. What is in the walk in the end is read off the run, never noted while
//! planting.

use super::at_hand::asked;
use super::decision::{Decision, RoomAct, Wait, Work};
use super::guided::{Warning, warnings};
use super::inspect::mistakes;
use super::right;
use super::saved::Mode;
use super::story::Walk;
use crate::card::Dice;
use crate::content::Content;
use crate::rules::sorted::sorted;
use crate::rules::verdict::RuleId;
use std::collections::BTreeSet;

/// Fewest and most mistakes in a walk.
pub const FEWEST: usize = 2;
/// Most of them.
pub const MOST: usize = 4;
/// Walks that are tried for one number until one has as many mistakes as there may be.
const TRIES: u32 = 20;
/// More decisions than the longest walk takes.
const DECISIONS_MOST: usize = 400;

/// A walk for a number, handed over, with [`FEWEST`] to [`MOST`] mistakes in it; `None` where the room is never fit.
#[must_use]
pub fn planted(begin: &Walk, seed: u32, content: &Content) -> Option<Walk> {
    (0..TRIES).find_map(|nth| {
        let name = format!("walk/{}/{seed}/{nth}", begin.start().info.slug);
        let walk = plant(begin, seed, &mut Dice::new(&name), content)?;
        let all = mistakes(&walk, content);
        let rules: BTreeSet<RuleId> = all.iter().map(|one| one.rule).collect();
        ((FEWEST..=MOST).contains(&all.len()) && rules.len() == all.len()).then_some(walk)
    })
}

fn plant(begin: &Walk, seed: u32, dice: &mut Dice, content: &Content) -> Option<Walk> {
    let mut walk = Walk::begin(begin.start().clone(), Mode::Inspect, seed);
    let length = right::rest(&walk, content)?.len();
    let wanted = FEWEST + dice.index(MOST - FEWEST + 1);
    let mut places = sorted((0..wanted).map(|_| dice.index(length)).collect(), usize::cmp);
    places.dedup();
    let mut places = places.into_iter().peekable();
    let mut broken = BTreeSet::new();
    while !walk.is_over() {
        let turn = walk.turns().len();
        if turn >= DECISIONS_MOST {
            return None;
        }
        let right = right::next(&walk, content)?;
        let planting = places.peek().is_some_and(|place| *place <= turn);
        let wrong = if planting { wrong(&walk, &right, &broken, dice, content) } else { None };
        let decision = wrong.map(|(decision, rules)| {
            places.next();
            broken.extend(rules);
            decision
        });
        walk.decide(decision.unwrap_or(right), content).ok()?;
    }
    Some(walk)
}

/// A wrong decision in the place of a right one that breaks rules which are not broken yet, with those rules.
fn wrong(
    walk: &Walk,
    right: &Decision,
    broken: &BTreeSet<RuleId>,
    dice: &mut Dice,
    content: &Content,
) -> Option<(Decision, Vec<RuleId>)> {
    let mut all = match right {
        Decision::Work(work) => other_values(walk, work, content),
        Decision::Wait(_) | Decision::Wear(_) => going_ahead(walk, content),
        Decision::Room(duties) if duties.contains(&RoomAct::RagsAway) => vec![Decision::Wait(Wait::Morning)],
        Decision::Room(duties) if duties.contains(&RoomAct::GunCleaned) => {
            vec![Decision::Wait(Wait::Morning)]
        }
        Decision::Room(_) => going_ahead(walk, content),
        _ => Vec::new(),
    };
    dice.shuffle(&mut all);
    all.into_iter().find_map(|one| {
        let rules = breaks(walk, &one, content);
        let new = !rules.is_empty() && rules.iter().all(|rule| !broken.contains(rule));
        new.then_some((one, rules))
    })
}

/// The rules that a decision would break.
fn breaks(walk: &Walk, decision: &Decision, content: &Content) -> Vec<RuleId> {
    let warned = warnings(walk, decision, content).unwrap_or_default();
    let rule = |warning: Warning| match warning {
        Warning::Makes(defect) => Some(defect.rule()),
        Warning::Leaves(lapse) => Some(lapse.rule()),
        Warning::Uncovers(_) => None,
    };
    warned.into_iter().filter_map(rule).collect()
}

/// The work that comes next, begun at once whatever has still to be waited for or seen to.
fn going_ahead(walk: &Walk, content: &Content) -> Vec<Decision> {
    right::next_work(walk, content).map(Decision::Work).into_iter().collect()
}

/// The same operation with one of its values another.
fn other_values(walk: &Walk, work: &Work, content: &Content) -> Vec<Decision> {
    let at_hand = asked(content, &walk.start().sheet, work.operation);
    let mut all = Vec::new();
    for number in &at_hand.numbers {
        let ends = [number.from, number.to];
        for value in number.among.iter().chain(&ends).filter(|value| number.allows(**value)) {
            let mut other = work.clone();
            other.numbers.insert(number.ask, *value);
            all.push(other);
        }
    }
    for choice in &at_hand.choices {
        for pick in &choice.options {
            let mut other = work.clone();
            other.picks.insert(choice.key.clone(), pick.slug.clone());
            all.push(other);
        }
    }
    all.into_iter().filter(|other| other != work).map(Decision::Work).collect()
}
