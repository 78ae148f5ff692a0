//! Thinning: what a ratio and a percentage mean, and the solids that are left.

use super::{percent, volume};
use crate::quantity::{Fraction, Measure, Millilitres, OutOfRange, PERCENT_A_WHOLE, Unit, within};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use serde::Serialize;

/// How far a material is thinned: volume of thinner per volume of unthinned material, 0 to [`Thinning::MAX`].
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize)]
pub struct Thinning(f64);

impl Thinning {
    /// Greatest ratio allowed: one part of material in a hundred of thinner.
    pub const MAX: f64 = 100.0;
    /// As supplied.
    pub const NONE: Self = Self(0.0);

    /// From volume of thinner per volume of material.
    ///
    /// # Errors
    /// [`OutOfRange`] outside 0 to [`Thinning::MAX`].
    pub fn of_ratio(ratio: f64) -> Result<Self, OutOfRange> {
        within("thinner for one part", "parts", 0.0, Self::MAX, ratio).map(Self)
    }

    /// From parts by volume, material to thinner: 4 and 1 for "4:1".
    ///
    /// # Errors
    /// [`OutOfRange`] when there is no material or the ratio is outside 0 to [`Thinning::MAX`].
    pub fn of_parts(material: f64, thinner: f64) -> Result<Self, OutOfRange> {
        Self::of_ratio(thinner / material)
    }

    /// From "percent thinned": percent of the unthinned volume.
    ///
    /// # Errors
    /// [`OutOfRange`] when the ratio is outside 0 to [`Thinning::MAX`].
    pub fn of_percent(percent: f64) -> Result<Self, OutOfRange> {
        Self::of_ratio(percent / PERCENT_A_WHOLE)
    }

    /// From the thinner's share of the whole mix: r = p / (1 − p).
    ///
    /// # Errors
    /// [`OutOfRange`] when the ratio is outside 0 to [`Thinning::MAX`].
    pub fn of_share(share: Fraction) -> Result<Self, OutOfRange> {
        Self::of_ratio(share.get() / (1.0 - share.get()))
    }

    /// Thinner for one part of material.
    #[must_use]
    pub const fn ratio(self) -> f64 {
        self.0
    }

    /// Percent of the unthinned volume.
    #[must_use]
    pub fn percent(self) -> f64 {
        self.0 * PERCENT_A_WHOLE
    }

    /// Share of thinner in the whole mix, 0 to 1.
    #[must_use]
    pub fn share(self) -> Fraction {
        Fraction::saturating(self.0 / (1.0 + self.0))
    }
}

/// Thinner that so much unthinned material takes.
#[must_use]
pub fn thinner_for(base: Millilitres, thinning: Thinning) -> Ruling<Millilitres> {
    let thinner = Millilitres::saturating(base.get() * thinning.ratio());
    Ruling::by("mixing.percent-of-unthinned", thinner)
        .step("percent-thinned", "", Measure::new(thinning.percent(), Unit::Percent, 0))
        .step("thinner", "base × r", volume(thinner))
        .given(&[("base", volume(base)), ("r", Measure::new(thinning.ratio(), Unit::Ratio, 2))])
}

/// Thinning by the shop sheet for its clear.
#[must_use]
pub fn clear_thinning(sheet: &Sheet) -> Thinning {
    Thinning(sheet.get(Setting::ClearThinner).clamp(0.0, PERCENT_A_WHOLE * Thinning::MAX) / PERCENT_A_WHOLE)
}

/// Volume solids after thinning: solids / (1 + r).
#[must_use]
pub fn thinned_solids(solids: Fraction, thinning: Thinning) -> Ruling<Fraction> {
    let after = Fraction::saturating(solids.get() / (1.0 + thinning.ratio()));
    Ruling::by("mixing.solids-fall", after)
        .step("solids-supplied", "", percent(solids))
        .step("thinner-per-part", "", Measure::new(thinning.ratio(), Unit::Ratio, 2))
        .step("solids-thinned", "solids / (1 + r)", percent(after))
        .given(&[("solids", percent(solids)), ("r", Measure::new(thinning.ratio(), Unit::Ratio, 2))])
}
