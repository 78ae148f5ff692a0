//! Scuffing between coats: whether the sheet in hand is the right one.

use super::grades::Grade;
use super::last_grit::{Before, last_grade};
use crate::rules::sheet::Sheet;
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Which grading a number is printed in.
    Grading {
        /// The P series.
        P = "grading-p",
        /// The US grading.
        Us = "grading-us",
    }
    /// What a sheet is for scuffing.
    ScuffSheet {
        /// The shop's own.
        Right = "scuff-right",
        /// Its scratches show through the next coat.
        TooCoarse = "scuff-too-coarse",
        /// It burnishes and clogs.
        TooFine = "scuff-too-fine",
    }
}

/// Whether a P grade is the shop's for scuffing between coats.
#[must_use]
pub fn scuff_sheet(paper: &Grade, sheet: &Sheet) -> Ruling<ScuffSheet> {
    let wanted = last_grade(Before::Clear, sheet);
    let answer = if paper.number < wanted.answer.number {
        ScuffSheet::TooCoarse
    } else if paper.number > wanted.answer.number {
        ScuffSheet::TooFine
    } else {
        ScuffSheet::Right
    };
    wanted.map(|_| answer)
}
