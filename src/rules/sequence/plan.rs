//! The steps done or planned, with what is told of each.

use super::manner::Manner;
use super::operation::Operation;
use crate::quantity::{Celsius, Hours, RelativeHumidity};
use serde::{Deserialize, Serialize};

/// Key of a wait, where it is not told.
pub const WAIT: &str = "wait";
/// Key of the coats of a step, where they are not told.
pub const COATS: &str = "clear_coats";

/// A value of which something is told, nothing is told, or which was kept as the sheet asks.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Told<T> {
    /// As the shop sheet asks; nothing to object to.
    #[default]
    Kept,
    /// This value.
    Is(T),
    /// Not told: what depends on it cannot be judged.
    Untold,
}

/// The air at a coat.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Climate {
    /// Air temperature.
    pub air: Celsius,
    /// Surface of the work.
    pub work: Celsius,
    /// Humidity.
    pub humidity: RelativeHumidity,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Step {
    /// What is done.
    pub operation: Operation,
    /// The part it is done to, by place in the job; `None`: the whole work.
    pub part: Option<usize>,
    /// Hours since the end of the step before it.
    pub after: Told<Hours>,
    /// Coats in this step.
    pub coats: Told<u32>,
    /// Hours between its coats.
    pub between: Told<Hours>,
    /// Last grit used, P grade.
    pub grit: Told<u32>,
    /// Air at the coat.
    pub climate: Told<Climate>,
    /// Age of a mix with a pot life.
    pub mix_age: Told<Hours>,
    /// Remarks that hold.
    pub manners: Vec<Manner>,
    /// Remarks of which it is not known whether they hold.
    pub unknown: Vec<Manner>,
}

impl Step {
    /// An operation on the whole work, done as the sheet asks.
    #[must_use]
    pub const fn of(operation: Operation) -> Self {
        Self {
            operation,
            part: None,
            after: Told::Kept,
            coats: Told::Kept,
            between: Told::Kept,
            grit: Told::Kept,
            climate: Told::Kept,
            mix_age: Told::Kept,
            manners: Vec::new(),
            unknown: Vec::new(),
        }
    }

    /// On one part only.
    #[must_use]
    pub const fn on(mut self, part: usize) -> Self {
        self.part = Some(part);
        self
    }

    /// So many hours after the step before.
    #[must_use]
    pub const fn after(mut self, hours: Hours) -> Self {
        self.after = Told::Is(hours);
        self
    }

    /// So many coats.
    #[must_use]
    pub const fn coats(mut self, coats: u32) -> Self {
        self.coats = Told::Is(coats);
        self
    }

    /// So many hours between its coats.
    #[must_use]
    pub const fn between(mut self, hours: Hours) -> Self {
        self.between = Told::Is(hours);
        self
    }

    /// Ending with that grit.
    #[must_use]
    pub const fn grit(mut self, grit: u32) -> Self {
        self.grit = Told::Is(grit);
        self
    }

    /// With a remark.
    #[must_use]
    pub fn how(mut self, manner: Manner) -> Self {
        self.manners.push(manner);
        self
    }

    /// With a remark of which it is not known whether it holds.
    #[must_use]
    pub fn unknown(mut self, manner: Manner) -> Self {
        self.unknown.push(manner);
        self
    }
}

/// How much a plan tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Detail {
    /// Every step is listed: what is absent was not done.
    #[default]
    Every,
    /// The main steps are listed, as schedules print them; small ones may have been done unlisted.
    Main,
    /// Some steps are listed: only their order is judged, what is absent counts as done in its place.
    Some,
}

/// Steps in the order of the work.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Plan {
    /// The steps.
    pub steps: Vec<Step>,
    /// How much they tell.
    pub detail: Detail,
}

impl Plan {
    /// Operations in order, each done as the sheet asks; only their order is judged.
    #[must_use]
    pub fn order(operations: &[Operation]) -> Self {
        let steps = operations.iter().map(|operation| Step::of(*operation)).collect();
        Self { steps, detail: Detail::Some }
    }

    /// Whether an operation that is not listed was not done.
    #[must_use]
    pub const fn tells(&self, operation: Operation) -> bool {
        match self.detail {
            Detail::Every => true,
            Detail::Main => operation.is_main(),
            Detail::Some => false,
        }
    }
}
