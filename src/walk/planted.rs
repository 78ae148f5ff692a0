//! Somebody else's walk with mistakes planted in it: out of a right way, one decision after another, some of them wrong.
//!
//! A mistake is planted only where running it shows that it comes to something: a defect that its operation made, or a duty
//! left undone. What is in the walk in the end is read off the run, never noted while planting.

use super::at_hand::asked;
use super::decision::{Decision, RoomAct, Wait, Work};
use super::guided::{Warning, warnings};
use super::inspect::mistakes;
use super::right;
use super::saved::Mode;
use super::story::Walk;
use crate::card::Dice;
use crate::content::Content;

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
        let count = mistakes(&walk, content).len();
        (FEWEST..=MOST).contains(&count).then_some(walk)
    })
}

fn plant(begin: &Walk, seed: u32, dice: &mut Dice, content: &Content) -> Option<Walk> {
    let mut walk = Walk::begin(begin.start().clone(), Mode::Inspect, seed);
    let length = right::rest(&walk, content)?.len();
    let wanted = FEWEST + dice.index(MOST - FEWEST + 1);
    let mut places: Vec<usize> = (0..wanted).map(|_| dice.index(length)).collect();
    places.sort_unstable();
    places.dedup();
    let mut places = places.into_iter().peekable();
    while !walk.is_over() {
        let turn = walk.turns().len();
        if turn >= DECISIONS_MOST {
            return None;
        }
        let right = right::next(&walk, content)?;
        let wrong =
            places.peek().is_some_and(|place| *place <= turn).then(|| wrong(&walk, &right, dice, content));
        let decision = wrong.flatten().inspect(|_| {
            places.next();
        });
        walk.decide(decision.unwrap_or(right), content).ok()?;
    }
    Some(walk)
}

/// A wrong decision in the place of a right one, which comes to something.
fn wrong(walk: &Walk, right: &Decision, dice: &mut Dice, content: &Content) -> Option<Decision> {
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
    let tells = |one: &Decision| {
        let warned = warnings(walk, one, content).unwrap_or_default();
        warned.iter().any(|warning| !matches!(warning, Warning::Uncovers(_)))
    };
    all.into_iter().find(tells)
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
