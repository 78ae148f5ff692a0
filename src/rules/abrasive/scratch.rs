//! Scratches: how deep a grade cuts, and what a ladder takes off to clear them.

use super::grades::Grade;
use crate::quantity::{Measure, Micrometres, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;

/// Depth of the scratches that a grade leaves: a share of its median grain. That coarser grain cuts deeper is published;
/// the share is an assumption of the shop sheet, for allowances and for ranking.
#[must_use]
pub fn scratch_depth(grade: &Grade, sheet: &Sheet) -> Ruling<Micrometres> {
    let depth = Micrometres::saturating(grade.median.get() * sheet.get(Setting::ScratchShare));
    Ruling::by("abrasive.scratch-by-grain", depth)
        .step("grain-now", "", grade.size())
        .step("scratch-depth", "k × grain", Measure::new(depth.get(), Unit::Micrometre, 1))
        .given(&[
            ("k", Measure::new(sheet.get(Setting::ScratchShare), Unit::Ratio, 2)),
            ("grain", grade.size()),
        ])
}

/// What a ladder takes off for its scratches: each grade cuts down to the bottom of its own.
#[must_use]
pub fn scratch_allowance(grades: &[&Grade], sheet: &Sheet) -> Ruling<Micrometres> {
    let depths = grades.iter().map(|grade| scratch_depth(grade, sheet).answer.get());
    let depths: Vec<f64> = depths.collect();
    let taken = Micrometres::saturating(depths.iter().sum());
    let shown = |depth: f64| Measure::new(depth, Unit::Micrometre, 1);
    let put_in: Vec<_> = depths.iter().map(|depth| ("k × grain", shown(*depth))).collect();
    Ruling::by("abrasive.scratch-by-grain", taken)
        .step("scratches", "sum of k × grain", shown(taken.get()))
        .given(&put_in)
}
