//! Preconditions: what an operation asks of the work, and what goes wrong where it is not met.
//!
//! A function a kind of work; each reads the part as it lies there and knows nothing of what comes after.

mod coat;
mod colour;
mod filler;
mod finish;
pub(super) mod recoat;
mod trim;
mod wood;

pub use finish::film_to_level;

use super::act::Act;
use super::air::{AirLog, Outside};
use super::defect::earlier;
use super::hidden::What;
use super::part::PartState;
use crate::rules::drying::factors::thickness_factor;
use crate::rules::drying::waits::{buff_setting, filler_setting};
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::job::Job;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::Operation;
use crate::rules::sequence::plan::Climate;
use crate::rules::sheet::{Setting, Sheet};

/// The operation that is being done, and all that surrounds it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Now<'a> {
    pub(super) job: &'a Job,
    pub(super) sheet: &'a Sheet,
    pub(super) air: &'a AirLog,
    /// How the hours count in which no wait can be estimated.
    pub(super) outside: Outside,
    pub(super) act: &'a Act,
    /// Place in the run.
    pub(super) place: usize,
    /// Hours since the job began.
    pub(super) begun: f64,
    pub(super) ended: f64,
    /// Coats that it lays.
    pub(super) coats: u32,
    /// Hours between them where they were told.
    pub(super) between: Option<f64>,
    /// The air at it, where it is known.
    pub(super) climate: Option<Climate>,
}

/// Something wrong, and the operation that made it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Made {
    /// By place in the run.
    pub(super) place: usize,
    pub(super) what: Wrong,
}

/// What an operation found or left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Wrong {
    /// An error that shows what it did in its own time.
    Error(OrderError),
    /// A defect that stays hidden.
    Hidden(What),
}

impl Now<'_> {
    pub(super) const fn operation(&self) -> Operation {
        self.act.step.operation
    }

    /// An error made by this operation.
    pub(super) const fn error(&self, error: OrderError) -> Made {
        Made { place: self.place, what: Wrong::Error(error) }
    }

    /// A hidden defect left by this operation.
    pub(super) const fn hidden(&self, what: What) -> Made {
        Made { place: self.place, what: Wrong::Hidden(what) }
    }

    /// Whether a remark holds.
    pub(super) fn is(&self, manner: Manner) -> bool {
        self.act.step.manners.contains(&manner)
    }

    /// A wait of the sheet, never less than its floor.
    pub(super) fn wait(&self, setting: Setting) -> f64 {
        self.sheet.wait(setting)
    }

    /// The wait before levelling, buffing or packing: the floor grows with the square of the clear.
    pub(super) fn buff_wait(&self, part: &PartState) -> f64 {
        let held = self.sheet.held(buff_setting(self.job.class));
        let thick = thickness_factor(part.clear, self.sheet.micrometres(Setting::BuildReference));
        held.value.max(held.floor * thick.answer)
    }

    /// The wait of a filler before anything is laid on it.
    pub(super) fn filler_wait(&self) -> f64 {
        self.wait(filler_setting(self.job.filler))
    }

    /// Stated hours that passed between two moments.
    pub(super) fn passed(&self, from: f64, to: f64) -> f64 {
        self.air.passed(from, to, self.sheet, self.outside)
    }

    /// Whether a wait that began at a moment is not over when the operation begins.
    pub(super) fn too_soon(&self, since: f64, wait: f64) -> bool {
        earlier(self.passed(since, self.begun), wait)
    }

    /// Whether the film had the whole wait before levelling.
    pub(super) fn is_hard(&self, part: &PartState) -> bool {
        part.film().is_none_or(|film| !self.too_soon(film.ended, self.buff_wait(part)))
    }
}

/// Everything that an operation finds wrong on a part.
pub(super) fn check(part: &PartState, now: &Now<'_>) -> Vec<Made> {
    let mut made = Vec::new();
    wood::check(part, now, &mut made);
    filler::check(part, now, &mut made);
    colour::check(part, now, &mut made);
    recoat::check(part, now, &mut made);
    coat::check(part, now, &mut made);
    trim::check(part, now, &mut made);
    finish::check(part, now, &mut made);
    made
}
