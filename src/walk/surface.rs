//! When a defect comes to light on the work, by what the published rows say of it.

use super::line::Line;
use crate::process::defect::{Cause, Defect};
use crate::rules::sequence::error::Shows;
use crate::rules::sequence::operation::{COATS, Operation};
use crate::rules::term::Stage;

/// When something came to light.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum When {
    /// At the work, in that turn.
    AtWork,
    /// When it was looked over at the hand-over.
    HandOver,
    /// After the work had left.
    After,
}

/// A defect that came to light.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// The defect.
    pub defect: Defect,
    /// The turn in which it did.
    pub turn: usize,
    /// When.
    pub when: When,
    /// The turn in which it was mended.
    pub mended: Option<usize>,
    /// For each part of the job, steps of its mending that were done; `None`: the fault is not on it.
    pub(super) steps: Vec<Option<usize>>,
}

/// Whether a defect is in the open after the lines written so far.
pub(super) fn is_open(defect: &Defect, lines: &[Line]) -> bool {
    let Some(met) = defect.met else { return false };
    let own = lines.get(defect.made).map(|line| line.operation);
    let after = || lines.iter().skip(defect.made + 1).filter(|line| line.touches(defect.part));
    let reached = |stage: Stage| {
        met > defect.made
            || own.is_some_and(|own| own.stage() >= stage)
            || after().any(|line| line.operation.stage() >= stage)
    };
    match defect.cause {
        Cause::Technique(fumble) if fumble.shows_in_gloss() => reached(Stage::Buff),
        Cause::Technique(_) => true,
        Cause::Order(error) => match error.known().shows {
            Shows::AtOnce => true,
            Shows::At(stage) => reached(stage),
            Shows::NextCoat => met > defect.made || after().any(|line| COATS.contains(&line.operation)),
            Shows::Later => false,
        },
    }
}

/// When what is not yet in the open shows, once the work is handed over.
pub(super) fn at_the_end(defect: &Defect, operations: &[Operation]) -> When {
    let later = defect.stage_shows(operations).is_none();
    if later { When::After } else { When::HandOver }
}
