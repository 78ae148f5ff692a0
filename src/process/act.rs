//! One operation as it was done: the step of a plan, and the values of the pass where they were taken.

use super::technique::Pass;
use crate::quantity::Hours;
use crate::rules::sequence::operation::{CLEARS, Operation};
use crate::rules::sequence::plan::{COATS, Step, Told, WAIT};
use crate::rules::term::Term;
use crate::rules::verdict::CannotJudge;
use serde::{Deserialize, Serialize};

/// An operation done.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Act {
    /// What was done, on which part, when, how.
    pub step: Step,
    /// How the gun was used, as far as it was measured.
    #[serde(default)]
    pub pass: Pass,
    /// Hours that it kept the hands busy, each of its coats counted at its end. With none the clock counts it as done in
    /// no time, as schedules do that name the moment at which a step ends.
    #[serde(default = "at_once")]
    pub took: Hours,
    /// Further parts that it is done to, beside the one of its step.
    #[serde(default)]
    pub also: Vec<usize>,
}

const fn at_once() -> Hours {
    Hours::saturating(0.0)
}

impl From<Step> for Act {
    fn from(step: Step) -> Self {
        Self { step, pass: Pass::default(), took: at_once(), also: Vec::new() }
    }
}

impl Act {
    /// An operation on the whole work, done as the sheet asks.
    #[must_use]
    pub fn of(operation: Operation) -> Self {
        Step::of(operation).into()
    }

    /// Whether everything that decides was told.
    ///
    /// # Errors
    /// [`CannotJudge`] with what was not: a run cannot go on from an unknown.
    pub fn told(&self) -> Result<(), CannotJudge> {
        let step = &self.step;
        let mut missing: Vec<String> =
            step.unknown.iter().map(|manner| Term::slug(*manner).to_owned()).collect();
        let values = [
            (step.after == Told::Untold || step.between == Told::Untold, WAIT),
            (step.coats == Told::Untold, COATS),
            (step.grit == Told::Untold, "last_grit"),
            (step.climate == Told::Untold, "climate"),
            (step.mix_age == Told::Untold, "mix_age"),
        ];
        missing.extend(values.iter().filter(|(untold, _)| *untold).map(|(_, key)| (*key).to_owned()));
        if missing.is_empty() { Ok(()) } else { Err(CannotJudge::lacking(missing)) }
    }

    /// Coats that were laid; what was done as ordered is `ordered` coats of clear, else one.
    #[must_use]
    pub fn coats(&self, ordered: u32) -> u32 {
        match self.step.coats {
            Told::Is(coats) => coats,
            Told::Kept | Told::Untold if self.step.operation == Operation::Clear => ordered,
            Told::Kept | Told::Untold => 1,
        }
    }

    /// Hours between its coats where they were told.
    #[must_use]
    pub fn between(&self) -> Option<Hours> {
        match self.step.between {
            Told::Is(hours) => Some(hours),
            Told::Kept | Told::Untold => None,
        }
    }

    /// Whether it is done to a part.
    #[must_use]
    pub fn touches(&self, part: usize) -> bool {
        self.step.part.is_none_or(|on| on == part) || self.also.contains(&part)
    }

    /// Whether it lays clear.
    #[must_use]
    pub fn is_clear(&self) -> bool {
        CLEARS.contains(&self.step.operation)
    }
}
