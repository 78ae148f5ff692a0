//! What a decision is evidence of: the card families that it exercises, and whether it was right on what was known then.
//!
//! It is told when the decision is made, so that whoever gives a walk up leaves nothing unsaid. What of it counts is decided
//! where the record is read.

use super::asks::asked;
use super::brings::{Brings, Follow, each_once};
use super::clock::day;
use super::decision::{Decision, RoomAct};
use super::families::{Asked, DELIVERY_DAY, ORDER, RAGS, THE_DAY};
use super::report::{Promise, promised, quickest};
use super::spent::earliest;
use super::story::Walk;
use super::turn::Turn;
use super::undone::undone;
use crate::content::Content;
use crate::process::defect::{Cause, Defect};
use crate::rules::verdict::RuleId;

/// What a decision says of a card family.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Evidence {
    /// The turn.
    pub turn: usize,
    /// The card family.
    pub family: &'static str,
    /// The rules of the family that it broke, each once; none where it was right on what was known then.
    pub broke: Vec<RuleId>,
}

impl Evidence {
    /// Whether it was right on what was known then.
    #[must_use]
    pub fn is_right(&self) -> bool {
        self.broke.is_empty()
    }
}

/// All that the decisions of a walk are evidence of, in their order.
#[must_use]
pub fn evidence(walk: &Walk, content: &Content) -> Vec<Evidence> {
    let mut follow = Follow::of(walk.at(0, content), content);
    let turns = walk.turns().iter();
    // What was possible once is possible again.
    turns
        .filter_map(|turn| follow.take(turn.decision.clone(), content).ok())
        .flat_map(|one| one.says)
        .collect()
}

/// What a decision says of the families that it exercises, once it is known what it brings.
pub(super) fn says(before: &Walk, after: &Walk, brings: &Brings, content: &Content) -> Vec<Evidence> {
    let nth = before.turns().len();
    let Some(turn) = after.turns().get(nth) else { return Vec::new() };
    let of = |one: &Asked| Evidence { turn: nth, family: one.family, broke: broken(brings, one) };
    let mut found: Vec<Evidence> = asked(before, turn).iter().map(of).collect();
    // The order is right when all of it is: the first step of a job is no evidence of it.
    found.retain(|one| one.family != ORDER.family || !one.is_right() || turn.decision == Decision::HandOver);
    found.extend(rags(nth, turn));
    found.extend(promise(before, after, turn, content));
    found
}

/// The rules of a family that a decision broke, each once.
fn broken(brings: &Brings, asked: &Asked) -> Vec<RuleId> {
    let bad = |cause: Cause| match cause {
        Cause::Order(error) => asked.errors.contains(&error),
        Cause::Technique(fumble) => asked.fumbles.contains(&fumble),
    };
    let made = brings.defects.iter().filter(|defect| bad(defect.cause)).map(Defect::rule);
    let left = brings.lapses.iter().filter(|lapse| asked.lapses.contains(lapse)).map(|lapse| lapse.rule());
    each_once(made.chain(left))
}

/// Rags put away in time, or left lying.
fn rags(nth: usize, turn: &Turn) -> Option<Evidence> {
    let left = turn.lapses.iter().filter(|lapse| RAGS.lapses.contains(lapse));
    let broke = each_once(left.map(|lapse| lapse.rule()));
    let away = matches!(&turn.decision, Decision::Room(duties) if duties.contains(&RoomAct::RagsAway));
    (away || !broke.is_empty()).then_some(Evidence { turn: nth, family: RAGS.family, broke })
}

/// What was said of the day: held against what could still be done when another one is offered, and against the day itself
/// when the work is handed over. What is handed over half done is delivered on no day.
fn promise(before: &Walk, after: &Walk, turn: &Turn, content: &Content) -> Option<Evidence> {
    let said = promised(before, quickest(before));
    let holds = match turn.decision {
        Decision::Offer(offer) => {
            Promise { earliest: earliest(before, content), offered: Some(offer.day), ..said }.holds()
        }
        Decision::HandOver => {
            let kept = (said.offered.is_some() || said.can_be_met())
                && day(after.clock()) <= said.offered.unwrap_or(said.asked);
            if kept && (after.lines().is_empty() || !undone(after).is_empty()) {
                return None;
            }
            kept
        }
        _ => return None,
    };
    let broke = if holds { Vec::new() } else { vec![THE_DAY] };
    Some(Evidence { turn: before.turns().len(), family: DELIVERY_DAY, broke })
}
