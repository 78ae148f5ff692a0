//! Jobs and plans for the cases: a whole plan of the job, then edits.

pub(crate) use crate::support::job::job;
use stepboard::quantity::Hours;
use stepboard::rules::sequence::check::{Checked, Finding, check};
use stepboard::rules::sequence::job::Job;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::sequence::plan::{Plan, Step};
use stepboard::rules::sequence::route;
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::{ColourPlan, Term};

pub(crate) fn h(hours: f64) -> Hours {
    Hours::new(hours).expect("hours in range")
}

/// The base sheet.
pub(crate) fn nitro() -> Sheet {
    crate::support::base()
}

/// The water-borne sheet: coats do not melt together and the window closes.
pub(crate) fn water() -> Sheet {
    crate::support::content().sheet("water-borne").expect("ships").clone()
}

pub(crate) fn coloured(woods: &[&str], colour: ColourPlan) -> Job {
    Job { colour, ..job(woods) }
}

/// A job, its plan, and the sheet it is done on.
#[derive(Debug, Clone)]
pub(crate) struct Work {
    pub(crate) job: Job,
    pub(crate) plan: Plan,
    pub(crate) sheet: Sheet,
}

impl Work {
    /// The whole plan of a job on the base sheet.
    pub(crate) fn of(job: Job) -> Self {
        Self::on(job, nitro())
    }

    pub(crate) fn on(mut job: Job, sheet: Sheet) -> Self {
        job.coating = sheet.coating();
        job.melts = Job::melting(sheet.coating());
        let plan = route::plan(&job, &sheet);
        Self { job, plan, sheet }
    }

    fn place(&self, op: Operation) -> usize {
        let place = self.plan.steps.iter().position(|step| step.operation == op);
        place.unwrap_or_else(|| panic!("{} is not in the plan", op.slug()))
    }

    /// Puts a step before the first of an operation.
    pub(crate) fn before(mut self, op: Operation, step: Step) -> Self {
        let place = self.place(op);
        self.plan.steps.insert(place, step);
        self
    }

    /// Puts a step right after the first of an operation.
    pub(crate) fn then(mut self, op: Operation, step: Step) -> Self {
        let place = self.place(op) + 1;
        self.plan.steps.insert(place, step);
        self
    }

    pub(crate) fn at_end(mut self, step: Step) -> Self {
        self.plan.steps.push(step);
        self
    }

    pub(crate) fn without(mut self, ops: &[Operation]) -> Self {
        self.plan.steps.retain(|step| !ops.contains(&step.operation));
        self
    }

    /// Changes the first step of an operation.
    pub(crate) fn with(mut self, op: Operation, change: impl FnOnce(Step) -> Step) -> Self {
        let place = self.place(op);
        let step = self.plan.steps.remove(place);
        self.plan.steps.insert(place, change(step));
        self
    }

    pub(crate) fn setting(mut self, setting: Setting, value: f64) -> Self {
        self.sheet = self.sheet.with(setting, value).expect("in range");
        self
    }

    pub(crate) fn with_job(mut self, change: impl FnOnce(&mut Job)) -> Self {
        change(&mut self.job);
        self
    }

    pub(crate) fn check(&self) -> Checked {
        check(&self.job, &self.plan, &self.sheet)
    }
}

/// Slugs of the errors found.
pub(crate) fn found(checked: &Checked) -> Vec<&'static str> {
    let mut slugs: Vec<&str> =
        checked.findings.iter().map(|finding: &Finding| finding.error.slug()).collect();
    slugs.dedup();
    slugs
}
