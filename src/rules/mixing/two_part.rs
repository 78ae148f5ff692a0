//! Two-part materials: the hardener's dose, and what stands ready before one with isocyanate is worked.

use super::{by_parts, fraction, volume};
use crate::quantity::{Measure, Millilitres, Unit};
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
    /// What the hardener is, by its safety data sheet.
    Hardener {
        /// It holds isocyanate.
        Isocyanate = "isocyanate",
        /// It holds none, by its safety data sheet.
        NoIsocyanate = "no-isocyanate",
    }
    /// What somebody wants to have before a two-part material with isocyanate is worked.
    HardenerGuard {
        /// The safety data sheets of both parts, read.
        SheetsRead = "guard-sheets-read",
        /// Supplied air under the employer's respirator programme.
        SuppliedAir = "guard-supplied-air",
        /// The employer's medical programme that covers the hardener.
        Medical = "guard-medical",
        /// Everybody without such protection out of the area.
        BystandersOut = "guard-bystanders-out",
        /// Skin covered: gloves and suit that the sheet names.
        SkinCovered = "guard-skin-covered",
        /// A fresh cartridge instead of supplied air.
        FreshCartridge = "guard-fresh-cartridge",
        /// A strong draw instead of breathing protection.
        StrongDraw = "guard-strong-draw",
        /// Going by the smell.
        NoSmell = "guard-no-smell",
        /// Being done quickly.
        ShortJob = "guard-short-job",
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
    Ok(Ruling::by("mixing.parts-by-volume", hardener).step(
        "hardener",
        "base × part / part of base",
        volume(hardener),
    ))
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
        .step("measure-slack", "", Measure::new(slack * super::HUNDRED, Unit::Percent, 1))
        .resting_on(&right))
}

/// Whether that must stand ready before a two-part material with this hardener is mixed, sprayed, or sanded or heated
/// part-cured. With no isocyanate in it the data sheets come first and say what is worn. The data sheet, local code and
/// the employer's programme decide beyond it.
///
/// # Errors
/// [`CannotJudge`] when it is not known what the hardener is.
pub fn guards(hardener: Option<Hardener>, guard: HardenerGuard) -> Judged<bool> {
    let isocyanate = hardener.ok_or_else(|| CannotJudge::without("hardener"))? == Hardener::Isocyanate;
    let (rule, needed) = match guard {
        HardenerGuard::SheetsRead => ("mixing.hardener-sheet-first", true),
        HardenerGuard::SkinCovered if !isocyanate => ("mixing.hardener-sheet-first", true),
        HardenerGuard::SuppliedAir | HardenerGuard::BystandersOut => {
            ("mixing.isocyanate-supplied-air", isocyanate)
        }
        HardenerGuard::Medical | HardenerGuard::SkinCovered => ("mixing.isocyanate-sensitises", isocyanate),
        HardenerGuard::FreshCartridge | HardenerGuard::NoSmell | HardenerGuard::ShortJob => {
            ("mixing.isocyanate-supplied-air", false)
        }
        HardenerGuard::StrongDraw => ("hazard.draw-is-no-respirator", false),
    };
    Ok(Ruling::by(rule, needed))
}
