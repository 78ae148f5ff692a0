//! Two-part materials: the hardener's dose.

use super::{by_parts, fraction, volume};
use crate::quantity::{Measure, Millilitres, PERCENT_A_WHOLE, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Whether hardener was measured as the data sheet has it.
    HardenerDose {
        /// Within the shop's measure.
        Right = "dose-right",
        /// Too much: base makes it right, before any thinner.
        Over = "dose-add-base",
        /// Too little: the missing hardener makes it right.
        Under = "dose-add-hardener",
    }
}

/// Hardener for so much base at parts by volume.
///
/// # Errors
/// [`CannotJudge`] when there is no part of base or the volume leaves its range.
pub fn hardener_for(base: Millilitres, parts_base: f64, parts_hardener: f64) -> Judged<Millilitres> {
    let parts = by_parts(base, &[parts_base, parts_hardener]);
    let hardener = parts.ok().and_then(|parts| parts.get(1).copied());
    let hardener = hardener.ok_or_else(|| CannotJudge::without("parts_base"))?;
    Ok(Ruling::by("mixing.parts-by-volume", hardener)
        .step("hardener", "base × part / part of base", volume(hardener))
        .given(&[
            ("base", volume(base)),
            ("part", Measure::new(parts_hardener, Unit::Ratio, 1)),
            ("part of base", Measure::new(parts_base, Unit::Ratio, 1)),
        ]))
}

/// Whether so much hardener in so much base keeps the parts of the data sheet, within the shop's measure.
///
/// # Errors
/// As [`hardener_for`].
pub fn hardener_dose(
    base: Millilitres,
    hardener: Millilitres,
    (parts_base, parts_hardener): (f64, f64),
    sheet: &Sheet,
) -> Judged<HardenerDose> {
    let right = hardener_for(base, parts_base, parts_hardener)?;
    let slack = fraction(sheet.get(Setting::MeasureSlack)).get();
    let wanted = right.answer.get();
    let answer = if hardener.get() > wanted * (1.0 + slack) {
        HardenerDose::Over
    } else if hardener.get() < wanted * (1.0 - slack) {
        HardenerDose::Under
    } else {
        HardenerDose::Right
    };
    Ok(Ruling::by("mixing.hardener-by-the-sheet", answer)
        .step("measure-slack", "", Measure::new(slack * PERCENT_A_WHOLE, Unit::Percent, 1))
        .resting_on(&right))
}
