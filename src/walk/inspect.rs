//! Inspecting somebody else's walk: the mistakes that are in it, and what was found of them.

use super::report::report;
use super::story::Walk;
use crate::content::Content;
use crate::rules::sequence::operation::Operation;
use crate::rules::sorted::sorted;
use crate::rules::verdict::RuleId;

/// A mistake in a walk.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mistake {
    /// The turn that made it.
    pub turn: usize,
    /// The operation that made it; `None`: a duty that was left undone.
    pub operation: Option<Operation>,
    /// The rule that was broken.
    pub rule: RuleId,
}

/// What was found of the mistakes.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Inspected {
    /// Mistakes that were named, turn and rule.
    pub found: Vec<Mistake>,
    /// Mistakes of which the turn was named and the rule was not.
    pub half: Vec<Mistake>,
    /// Mistakes that were not named.
    pub missed: Vec<Mistake>,
    /// Turns that were named with nothing wrong in them.
    pub wrong: Vec<usize>,
}

/// The mistakes of a walk, in the order of its turns: what the run found, and the duties left undone.
#[must_use]
pub fn mistakes(walk: &Walk, content: &Content) -> Vec<Mistake> {
    let report = report(walk, content);
    let made = report.found.iter().filter_map(|found| {
        let (operation, line) = found.made;
        let turn = walk.lines().get(line)?.turn;
        Some(Mistake { turn, operation: Some(operation), rule: found.rule })
    });
    let left = report.lapses.iter().map(|left| Mistake {
        turn: left.turn,
        operation: None,
        rule: left.lapse.rule(),
    });
    let mut all: Vec<Mistake> = sorted(made.chain(left).collect(), Ord::cmp);
    all.dedup();
    all
}

/// Grades what was named, each a turn and the id of a rule, against the run.
#[must_use]
pub fn inspect(walk: &Walk, named: &[(usize, String)], content: &Content) -> Inspected {
    let mut told = Inspected::default();
    let all = mistakes(walk, content);
    for one in &all {
        let here = || named.iter().filter(|(turn, _)| *turn == one.turn);
        let list = if here().any(|(_, rule)| *rule == one.rule.0) {
            &mut told.found
        } else if here().next().is_some() {
            &mut told.half
        } else {
            &mut told.missed
        };
        list.push(*one);
    }
    for (turn, _) in named {
        if !all.iter().any(|one| one.turn == *turn) && !told.wrong.contains(turn) {
            told.wrong.push(*turn);
        }
    }
    told
}
