//! What a decision brings, told when it is made: the defects that it makes or spoils the work with, whether they show at once
//! or as the work goes on in a right way, and the duties that it leaves undone.

use super::decision::Decision;
use super::evidence::{Evidence, says};
use super::impossible::Impossible;
use super::lapse::Lapse;
use super::right;
use super::story::Walk;
use crate::content::Content;
use crate::process::defect::Defect;
use crate::rules::verdict::RuleId;

/// What a decision brings.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Brings {
    pub(super) defects: Vec<Defect>,
    pub(super) lapses: Vec<Lapse>,
}

/// A decision that was followed.
#[derive(Debug, Clone, PartialEq)]
pub struct Followed {
    /// What it says of the families that it exercises.
    pub says: Vec<Evidence>,
    /// The rules that it broke, each once, whether a family asks for them or not.
    pub broke: Vec<RuleId>,
}

/// Follows a walk, decision by decision.
#[derive(Debug, Clone, PartialEq)]
pub struct Follow {
    walk: Walk,
    /// The defects that a right way on from here comes to.
    to_come: Vec<Defect>,
}

impl Follow {
    /// Begins where a walk stands.
    #[must_use]
    pub fn of(walk: Walk, content: &Content) -> Self {
        let to_come = if walk.lines().is_empty() { Vec::new() } else { to_come(&walk, content) };
        Self { walk, to_come }
    }

    /// The walk as far as it was followed.
    #[must_use]
    pub const fn walk(&self) -> &Walk {
        &self.walk
    }

    /// Follows the next decision.
    ///
    /// # Errors
    /// [`Impossible`], and nothing is changed.
    pub fn take(&mut self, decision: Decision, content: &Content) -> Result<Followed, Box<Impossible>> {
        let before = self.walk.clone();
        let turn = self.walk.decide(decision, content)?.clone();
        let mut brings = Brings { lapses: turn.lapses.clone(), ..Brings::default() };
        // Nothing but work on it brings something over the work: a wait alone spoils what is done after it.
        if matches!(turn.decision, Decision::Work(_) | Decision::Strip(_) | Decision::HandOver) {
            let after = to_come(&self.walk, content);
            let (from, to) = turn.lines;
            let was_to_come =
                |one: &Defect| self.to_come.iter().any(|old| old.cause == one.cause && old.made == one.made);
            // What is made in work that is still to be done is told when that is done.
            let new = |one: &&Defect| one.made < to && (one.made >= from || !was_to_come(one));
            brings.defects = after.iter().filter(new).copied().collect();
            self.to_come = after;
        }
        let made = brings.defects.iter().map(Defect::rule);
        let broke = each_once(made.chain(brings.lapses.iter().map(|lapse| lapse.rule())));
        Ok(Followed { says: says(&before, &self.walk, &brings, content), broke })
    }
}

/// All defects of a walk that goes on in a right way until it is handed over; those so far where there is no such way.
fn to_come(walk: &Walk, content: &Content) -> Vec<Defect> {
    right::gone_on(walk, content).run().defects().to_vec()
}

/// Rules in their order, each once.
pub(super) fn each_once(rules: impl Iterator<Item = RuleId>) -> Vec<RuleId> {
    let mut found: Vec<RuleId> = Vec::new();
    for rule in rules {
        if !found.contains(&rule) {
            found.push(rule);
        }
    }
    found
}
