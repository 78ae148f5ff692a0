//! The last grit before stain, before clear and before compound: the shop's own.

use super::grades::{Grade, on_sheet};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// What comes after a last grit.
    Before {
        /// The first coat on bare wood: stain or seal.
        Stain = "before-stain",
        /// The next coat of clear.
        Clear = "before-clear",
        /// The compound.
        Compound = "before-compound",
    }
}

/// The grade that the surface is left with.
#[must_use]
pub fn last_grade(before: Before, sheet: &Sheet) -> Ruling<&'static Grade> {
    let (rule, setting) = match before {
        Before::Stain => ("abrasive.last-grit", Setting::LastGrit),
        Before::Clear => ("abrasive.scuff-grit", Setting::ScuffGrit),
        Before::Compound => ("abrasive.compound-grit", Setting::CompoundGrit),
    };
    let grade = on_sheet(sheet, setting);
    Ruling::by(rule, grade).step("ladder-end", "", grade.measure())
}
