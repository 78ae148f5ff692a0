//! What a finding costs in hours: those of the rework of its fault, step by step.

use crate::content::Content;
use crate::rules::fault::{Lies, hours, steps};
use crate::rules::sequence::job::Job;
use crate::rules::sequence::operation::Operation;
use crate::rules::sheet::Sheet;
use crate::rules::term::Stage;

/// Hours that a finding costs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Cost {
    /// Hours of work, each step of the rework as long as on the shop sheet.
    pub rework_h: f64,
    /// Hours of waiting that begin again by the shop sheet.
    pub wait_h: f64,
}

impl Cost {
    /// All of it.
    #[must_use]
    pub fn hours(self) -> f64 {
        self.rework_h + self.wait_h
    }

    /// What the steps of a rework cost for a fault that shows in a band (`None`: after the work has left).
    #[must_use]
    pub fn of(steps: &[Option<Operation>], shows: Option<Stage>, job: &Job, sheet: &Sheet) -> Self {
        let (work, wait) = hours(steps, shows, job, sheet);
        Self { rework_h: work.get(), wait_h: wait.get() }
    }
}

/// What the likeliest of some faults costs.
#[must_use]
pub fn of(
    faults: &[&str],
    lies: Lies,
    shows: Option<Stage>,
    job: &Job,
    sheet: &Sheet,
    content: &Content,
) -> Cost {
    let fault = faults.iter().find_map(|id| content.fault(id));
    let steps = fault.map(|fault| steps(&fault.rework, lies, job, sheet)).unwrap_or_default();
    Cost::of(&steps, shows, job, sheet)
}
