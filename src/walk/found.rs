//! The faults that came to light in a walk, each with what made it, what it costs and what mends it.

use super::mend;
use super::story::Walk;
use super::surface::{Shown, When};
use crate::content::Content;
use crate::judge::cost::Cost;
use crate::rules::fault::Rework;
use crate::rules::sequence::operation::Operation;
use crate::rules::sorted::sorted;
use crate::rules::term::{Severity, Stage};
use crate::rules::verdict::RuleId;

/// A fault that came to light, and what made it.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// Its place among all that showed.
    pub shown: usize,
    /// The rule that was broken.
    pub rule: RuleId,
    /// Slugs of the faults that it makes, the likeliest first.
    pub faults: &'static [&'static str],
    /// What it endangers.
    pub severity: Severity,
    /// The operation that made it, and its line of the ticket.
    pub made: (Operation, usize),
    /// The parts that it is on.
    pub parts: Vec<usize>,
    /// Band in which it was made.
    pub made_in: Stage,
    /// Band in which it first shows; `None`: after the work has left.
    pub shows_in: Option<Stage>,
    /// The turn in which it showed.
    pub turn: usize,
    /// When.
    pub when: When,
    /// The smallest rework that cures it.
    pub rework: Option<Rework>,
    /// What it costs.
    pub cost: Cost,
    /// What has still to be done to mend it, in order; `None` stands for stripping.
    pub left: Vec<Option<Operation>>,
    /// The turn in which it was mended.
    pub mended: Option<usize>,
}

/// The faults that came to light, those of one rule together.
#[must_use]
pub fn found(walk: &Walk, content: &Content) -> Vec<Found> {
    let operations = walk.run().operations();
    let one = |(place, shown): (usize, &Shown)| {
        let defect = shown.defect;
        let line = walk.lines().get(defect.made)?;
        let (made_in, shows_in) = (defect.stage_made(&operations), defect.stage_shows(&operations));
        let faults = defect.faults();
        let start = walk.start();
        let steps = mend::operations(shown, walk.lines(), start, content);
        Some(Found {
            shown: place,
            rule: defect.rule(),
            faults,
            severity: defect.severity(),
            made: (line.operation, defect.made),
            parts: line.parts.clone(),
            made_in,
            shows_in,
            turn: shown.turn,
            when: shown.when,
            rework: faults.iter().find_map(|id| content.fault(id)).map(|fault| fault.severity),
            cost: Cost::of(&steps, shows_in, &start.job, &start.sheet),
            left: mend::left(shown, walk.lines(), start, content),
            mended: shown.mended,
        })
    };
    let all: Vec<Found> = walk.shown().iter().enumerate().filter_map(one).collect();
    let first = |rule: RuleId| all.iter().filter(|one| one.rule == rule).map(|one| one.made.1).min();
    let order = |one: &Found| (first(one.rule), one.rule.0, one.made.1);
    sorted(all.clone(), |a, b| order(a).cmp(&order(b)))
}
