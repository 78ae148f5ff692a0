//! A defect: what made it, where, and when it first shows.

use crate::quantity::{DUST, Hours};
use crate::rules::sequence::error::{OrderError, Shows};
use crate::rules::sequence::operation::{COATS, Operation};
use crate::rules::term::{Severity, Stage, Term};
use crate::rules::verdict::RuleId;
use serde::{Deserialize, Serialize};

/// What made a defect.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Cause {
    /// An error of order or timing.
    Order(OrderError),
    /// The way a coat was laid.
    Technique(super::technique::Fumble),
}

/// A defect on the work.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Defect {
    /// What made it.
    pub cause: Cause,
    /// The operation that made it, by place in the run.
    pub made: usize,
    /// The part, by place in the job.
    pub part: usize,
    /// The operation at which the run brought it to light; `None`: when the work was handed over.
    pub met: Option<usize>,
    /// When it was made, in hours since the job began.
    pub at: Hours,
}

impl Defect {
    /// The rule that was broken.
    #[must_use]
    pub fn rule(&self) -> RuleId {
        match self.cause {
            Cause::Order(error) => RuleId(error.slug()),
            Cause::Technique(fumble) => fumble.rule(),
        }
    }

    /// Slugs of the faults it makes, the likeliest first.
    #[must_use]
    pub fn faults(&self) -> &'static [&'static str] {
        match self.cause {
            Cause::Order(error) => error.known().faults,
            Cause::Technique(fumble) => fumble.faults(),
        }
    }

    /// What it endangers.
    #[must_use]
    pub fn severity(&self) -> Severity {
        match self.cause {
            Cause::Order(error) => error.known().severity,
            Cause::Technique(_) => Severity::Work,
        }
    }

    /// The band where it was made.
    #[must_use]
    pub fn stage_made(&self, operations: &[Operation]) -> Stage {
        let own = operations.get(self.made).map_or(Stage::Room, |operation| operation.stage());
        match self.cause {
            Cause::Order(error) => error.known().made.unwrap_or(own),
            Cause::Technique(_) => own,
        }
    }

    /// The band where it first shows; `None`: after the work has left the finish room.
    #[must_use]
    pub fn stage_shows(&self, operations: &[Operation]) -> Option<Stage> {
        let own = self.stage_made(operations);
        let next = || operations.iter().skip(self.made + 1).find(|operation| COATS.contains(operation));
        match self.cause {
            Cause::Order(error) => match error.known().shows {
                Shows::At(stage) => Some(stage),
                Shows::AtOnce => Some(own),
                Shows::NextCoat => Some(next().map_or(own, |operation| operation.stage())),
                Shows::Later => None,
            },
            Cause::Technique(fumble) => Some(if fumble.shows_in_gloss() { Stage::Buff } else { own }),
        }
    }
}

/// Whether one moment lies before another by more than the dust of arithmetic.
pub(super) fn earlier(moment: f64, than: f64) -> bool {
    moment < than - DUST
}
