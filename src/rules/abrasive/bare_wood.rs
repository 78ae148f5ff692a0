//! Bare wood: whether it is sanded far enough for its first coat.

use super::grades::{Grade, on_sheet};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Which way the last strokes ran on the wood.
    Strokes {
        /// Along the grain.
        Along = "along-grain",
        /// Across the grain.
        Across = "across-grain",
    }
    /// Whether sanded wood may be stained.
    WoodReady {
        /// It may.
        Ready = "ready",
        /// Finer grades are still to come.
        GoFiner = "go-finer",
        /// Scratches across the grain are still to be taken out with the same grade.
        SandAlong = "sand-along",
        /// Both: finer grades, along the grain.
        FinerAlong = "finer-along",
        /// Finer than the shop's last grit: the wood takes stain paler.
        TooFine = "too-fine",
    }
}

/// Whether sanded wood may be stained: the shop's last grit is reached, and no scratch runs across the grain.
#[must_use]
pub fn ready_for_stain(sanded: &Grade, strokes: Strokes, sheet: &Sheet) -> Ruling<WoodReady> {
    let last = on_sheet(sheet, Setting::LastGrit);
    let (rule, answer) = match strokes {
        _ if sanded.number > last.number => ("abrasive.last-grit", WoodReady::TooFine),
        Strokes::Along if sanded.number == last.number => ("abrasive.last-grit", WoodReady::Ready),
        Strokes::Along => ("abrasive.last-grit", WoodReady::GoFiner),
        Strokes::Across if sanded.number == last.number => ("abrasive.along-grain", WoodReady::SandAlong),
        Strokes::Across => ("abrasive.along-grain", WoodReady::FinerAlong),
    };
    Ruling::by(rule, answer).and("abrasive.last-grit").step("ladder-end", "", last.measure())
}
