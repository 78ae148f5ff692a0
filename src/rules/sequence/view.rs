//! The plan as one part sees it: the steps that touch it, and the clock that all parts share.

use super::job::{Job, Part};
use super::manner::Manner;
use super::operation::{COATS, Operation};
use super::plan::{Plan, Step, Told, WAIT};
use crate::quantity::{DUST, Hours};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::CannotJudge;

/// A step and its place in the plan.
#[derive(Debug, Clone, Copy)]
pub(super) struct Placed<'a> {
    pub(super) at: usize,
    pub(super) step: &'a Step,
}

impl Placed<'_> {
    /// Whether a remark holds.
    pub(super) fn is(self, manner: Manner) -> Result<bool, CannotJudge> {
        if self.step.manners.contains(&manner) {
            return Ok(true);
        }
        let unknown = self.step.unknown.contains(&manner);
        if unknown { Err(CannotJudge::without(crate::rules::term::Term::slug(manner))) } else { Ok(false) }
    }

    pub(super) fn op(self) -> Operation {
        self.step.operation
    }
}

/// Time that passed between two steps, as far as it is told.
#[derive(Debug, Clone, Copy)]
pub(super) struct Elapsed {
    told: f64,
    kept: bool,
    untold: bool,
}

impl Elapsed {
    const NONE: Self = Self { told: 0.0, kept: false, untold: false };

    fn add(&mut self, hours: Told<Hours>) {
        match hours {
            Told::Is(hours) => self.told += hours.get(),
            Told::Kept => self.kept = true,
            Told::Untold => self.untold = true,
        }
    }

    /// The hours from the first coat of a step to its last, where they are told apart.
    fn add_within(&mut self, step: &Step) {
        match (step.coats, step.between) {
            (Told::Is(coats), Told::Is(hours)) => {
                self.told += hours.get() * f64::from(coats.saturating_sub(1));
            }
            (Told::Is(coats), Told::Untold) => self.untold = self.untold || coats > 1,
            (Told::Untold, _) => self.untold = true,
            _ => {}
        }
    }

    pub(super) fn of(hours: Told<Hours>) -> Self {
        let mut elapsed = Self::NONE;
        elapsed.add(hours);
        elapsed
    }

    /// Whether it is less than a wait.
    pub(super) fn short_of(self, wait: f64) -> Result<bool, CannotJudge> {
        if self.kept || self.told >= wait - DUST {
            Ok(false)
        } else if self.untold {
            Err(CannotJudge::without(WAIT))
        } else {
            Ok(true)
        }
    }

    /// Whether it is more than a limit: a wait that is kept never makes it so, one that is untold may.
    pub(super) fn over(self, limit: f64) -> Result<bool, CannotJudge> {
        if self.told > limit + DUST {
            Ok(true)
        } else if self.untold {
            Err(CannotJudge::without(WAIT))
        } else {
            Ok(false)
        }
    }
}

/// Two coats, one over the other.
#[derive(Debug, Clone, Copy)]
pub(super) struct Gap<'a> {
    pub(super) below: Placed<'a>,
    pub(super) above: Placed<'a>,
    pub(super) time: Elapsed,
    pub(super) scuffed: bool,
}

/// A job's plan as one part sees it.
#[derive(Debug, Clone)]
pub(super) struct View<'a> {
    pub(super) job: &'a Job,
    pub(super) part: &'a Part,
    pub(super) sheet: &'a Sheet,
    plan: &'a Plan,
    steps: Vec<Placed<'a>>,
}

impl<'a> View<'a> {
    pub(super) fn new(job: &'a Job, place: usize, part: &'a Part, plan: &'a Plan, sheet: &'a Sheet) -> Self {
        let placed = plan.steps.iter().enumerate().map(|(at, step)| Placed { at, step });
        let steps = placed.filter(|one| one.step.part.is_none_or(|on| on == place)).collect();
        Self { job, part, sheet, plan, steps }
    }

    /// The step at a place of the plan, where it touches this part.
    pub(super) fn step(&self, at: usize) -> Option<Placed<'a>> {
        self.steps.iter().copied().find(|one| one.at == at)
    }

    /// The steps of those operations, in order.
    pub(super) fn all(&self, ops: &[Operation]) -> impl DoubleEndedIterator<Item = Placed<'a>> {
        self.steps.iter().copied().filter(|one| ops.contains(&one.op()))
    }

    pub(super) fn first(&self, ops: &[Operation]) -> Option<Placed<'a>> {
        self.all(ops).next()
    }

    pub(super) fn last(&self, ops: &[Operation]) -> Option<Placed<'a>> {
        self.all(ops).next_back()
    }

    pub(super) fn before(&self, at: usize, ops: &[Operation]) -> Option<Placed<'a>> {
        self.all(ops).rfind(|one| one.at < at)
    }

    pub(super) fn after(&self, at: usize, ops: &[Operation]) -> Option<Placed<'a>> {
        self.all(ops).find(|one| one.at > at)
    }

    pub(super) fn between(&self, from: usize, to: usize, ops: &[Operation]) -> Option<Placed<'a>> {
        self.after(from, ops).filter(|one| one.at < to)
    }

    /// Whether an operation was surely not done between two steps.
    pub(super) fn lacks_between(&self, from: usize, to: usize, op: Operation) -> bool {
        self.between(from, to, &[op]).is_none() && self.knows(op)
    }

    /// Whether an operation was surely not done before a step.
    pub(super) fn lacks_before(&self, at: usize, op: Operation) -> bool {
        self.before(at, &[op]).is_none() && self.knows(op)
    }

    /// Whether an operation was surely never done.
    pub(super) fn lacks(&self, op: Operation) -> bool {
        self.first(&[op]).is_none() && self.plan.tells(op)
    }

    /// Whether an operation is not listed and counts as done in its place.
    pub(super) fn taken(&self, op: Operation) -> bool {
        self.first(&[op]).is_none() && !self.plan.tells(op)
    }

    /// Whether an operation was surely never done, on any part.
    pub(super) fn nowhere(&self, op: Operation) -> bool {
        self.plan.steps.iter().all(|step| step.operation != op) && self.plan.tells(op)
    }

    fn knows(&self, op: Operation) -> bool {
        self.first(&[op]).is_some() || self.plan.tells(op)
    }

    /// Time from the end of one step to the start of another.
    pub(super) fn elapsed(&self, from: usize, to: usize) -> Elapsed {
        let mut elapsed = Elapsed::NONE;
        for (at, step) in self.plan.steps.iter().enumerate() {
            if at > from && at <= to {
                elapsed.add(step.after);
            }
            if at > from && at < to {
                elapsed.add_within(step);
            }
        }
        elapsed
    }

    /// The wait that counts: the sheet's, never less than its floor.
    pub(super) fn wait(&self, setting: Setting) -> f64 {
        self.sheet.wait(setting)
    }

    /// Every coat with the one under it; coats of one step are told by their time between.
    pub(super) fn gaps(&self) -> Result<Vec<Gap<'a>>, CannotJudge> {
        let mut gaps = Vec::new();
        let mut below: Option<Placed<'a>> = None;
        for above in self.all(COATS) {
            if let Some(below) = below {
                let scuffed = self.between(below.at, above.at, super::operation::ABRADES).is_some();
                gaps.push(Gap { below, above, time: self.elapsed(below.at, above.at), scuffed });
            }
            if above.step.coats != Told::Is(1) && above.step.between != Told::Kept {
                let scuffed = above.is(Manner::ScuffedBetween)?;
                gaps.push(Gap { below: above, above, time: Elapsed::of(above.step.between), scuffed });
            }
            below = Some(above);
        }
        Ok(gaps)
    }
}
