//! Retarder: a slow solvent against blushing, counted as percent of the whole mix.

use super::{fraction, percent, volume};
use crate::quantity::Millilitres;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Whether a dose of retarder is allowed.
    RetarderDose {
        /// Within the shop's limit.
        Within = "dose-within",
        /// Over the shop's limit.
        Over = "dose-over",
    }
}

/// The most retarder that may be in a mix of so much, the retarder counted in.
#[must_use]
pub fn retarder_most(whole: Millilitres, sheet: &Sheet) -> Ruling<Millilitres> {
    let share = fraction(sheet.get(Setting::RetarderMost));
    let most = Millilitres::saturating(whole.get() * share.get());
    Ruling::by("mixing.retarder-of-mix", most)
        .step("retarder-share", "", percent(share))
        .step("retarder", "mix × share", volume(most))
        .given(&[("mix", volume(whole)), ("share", percent(share))])
}

/// Whether so much retarder in a mix of so much, the retarder counted in, keeps within the sheet.
#[must_use]
pub fn retarder_dose(retarder: Millilitres, whole: Millilitres, sheet: &Sheet) -> Ruling<RetarderDose> {
    let most = retarder_most(whole, sheet);
    let answer = if retarder > most.answer { RetarderDose::Over } else { RetarderDose::Within };
    Ruling::by("mixing.retarder-of-mix", answer).resting_on(&most)
}
