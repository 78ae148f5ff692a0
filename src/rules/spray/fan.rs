//! The fan: how the film of one pass falls from its middle to its edge, and which width is meant.

use crate::quantity::{Fraction, Measure, Overlap, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Cross-sections of a pass, as coating papers model them.
    Fan {
        /// Falls evenly from the middle.
        Triangle = "triangle",
        /// A raised cosine: soft at the edge and at the middle.
        RaisedCosine = "raised-cosine",
        /// A beta section with exponent 1/2: what an evenly filled round spot sweeps.
        BetaOneAndHalf = "beta-1.5",
        /// A parabola: full, with a hard edge.
        Parabola = "parabola",
        /// A beta section with exponent 3/2: what a spot filled as a paraboloid sweeps.
        BetaTwoAndHalf = "beta-2.5",
        /// A beta section with exponent 2: tapered.
        BetaThree = "beta-3",
        /// A beta section with exponent 3: strongly tapered.
        BetaFour = "beta-4",
    }
    /// By which edge an overlap was judged.
    EdgeMeant {
        /// By the full fan, out to where the film reaches nothing.
        Full = "edge-full-fan",
        /// By the stripe that is seen on the work.
        Seen = "edge-seen-stripe",
    }
}

/// Half of the width: from the middle to the edge, where lengths count from -1 to 1.
const HALF: f64 = 0.5;
/// Share of the greatest film that still reads as covered: at a tenth of it the eye puts the edge of the stripe
/// (a convention of this model, common practice, no source).
pub const SEEN_SHARE: f64 = 0.1;

/// A cross-section: the film over its greatest value, from the middle of the fan (0) to its edge (1).
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Section {
    /// 1 - x.
    Triangle,
    /// (1 + cos πx) / 2.
    RaisedCosine,
    /// (1 - x²)^(β - 1), with its β.
    Beta(f64),
}

impl From<Fan> for Section {
    fn from(fan: Fan) -> Self {
        /// β of each section, as its name says.
        const BETAS: [f64; 5] = [1.5, 2.0, 2.5, 3.0, 4.0];
        let [half, two, two_and_half, three, four] = BETAS;
        match fan {
            Fan::Triangle => Self::Triangle,
            Fan::RaisedCosine => Self::RaisedCosine,
            Fan::BetaOneAndHalf => Self::Beta(half),
            Fan::Parabola => Self::Beta(two),
            Fan::BetaTwoAndHalf => Self::Beta(two_and_half),
            Fan::BetaThree => Self::Beta(three),
            Fan::BetaFour => Self::Beta(four),
        }
    }
}

impl Section {
    /// The shop's fan: a beta section with the taper of the sheet. A tapered one is taken because only then does the
    /// half overlap that every shop teaches lie even.
    #[must_use]
    pub fn of_sheet(sheet: &Sheet) -> Self {
        Self::Beta(sheet.get(Setting::FanTaper))
    }

    /// Film over its greatest value at a place across the fan: 0 in the middle, 1 at the edge, either side alike; nothing
    /// outside.
    #[must_use]
    pub fn height(self, place: f64) -> f64 {
        let place = place.abs();
        if place >= 1.0 {
            return 0.0;
        }
        match self {
            Self::Triangle => 1.0 - place,
            Self::RaisedCosine => HALF * (1.0 + libm::cos(core::f64::consts::PI * place)),
            Self::Beta(beta) => power(1.0 - place * place, beta - 1.0),
        }
    }

    /// Mean over the fan's width of the film over its greatest value. Beta: half of B(1/2, β).
    #[must_use]
    pub fn mean(self) -> f64 {
        match self {
            Self::Triangle | Self::RaisedCosine => HALF,
            Self::Beta(beta) => HALF * sweep_factor(beta),
        }
    }

    /// The place, 0 to 1 from the middle, where the film has fallen to a share of its greatest value.
    #[must_use]
    pub fn falls_to(self, share: Fraction) -> f64 {
        let share = share.get();
        match self {
            Self::Triangle => 1.0 - share,
            Self::RaisedCosine => libm::acos(2.0 * share - 1.0) / core::f64::consts::PI,
            Self::Beta(beta) => (1.0 - libm::pow(share, 1.0 / (beta - 1.0))).sqrt(),
        }
    }
}

/// A power of a number from 0 to 1: whole and half exponents, which sections have, by multiplying and one root.
fn power(base: f64, exponent: f64) -> f64 {
    let whole = libm::floor(exponent);
    let rest = exponent - whole;
    if rest != 0.0 && rest != HALF {
        return libm::pow(base, exponent);
    }
    let mut product = if rest == 0.0 { 1.0 } else { base.sqrt() };
    let mut left = whole;
    while left > 0.0 {
        product *= base;
        left -= 1.0;
    }
    product
}

/// What a spot gathers as it sweeps by: B(1/2, β) = √π Γ(β) / Γ(β + 1/2), for the β of the spot along the travel
/// (integral of the elliptical double beta spot; textbook integral).
#[must_use]
pub fn sweep_factor(beta: f64) -> f64 {
    core::f64::consts::PI.sqrt() * libm::tgamma(beta) / libm::tgamma(beta + HALF)
}

/// The section that an elliptical double beta spot sweeps: its β across the travel, raised by a half.
#[must_use]
pub fn swept(spot_beta: f64) -> Section {
    Section::Beta(spot_beta + HALF)
}

/// Width of the stripe that the eye sees, over the full width of the fan: see [`SEEN_SHARE`].
#[must_use]
pub fn seen_width(section: Section) -> f64 {
    section.falls_to(Fraction::saturating(SEEN_SHARE))
}

/// Overlap on the full width, from the overlap judged by the edge that the eye sees: the pitch stays, the width grows.
#[must_use]
pub fn seen_overlap(section: Section, seen: Overlap) -> Ruling<Overlap> {
    let width = seen_width(section);
    let full = Overlap::saturating(1.0 - (1.0 - seen.get()) * width);
    Ruling::by("spray.full-width", full)
        .step("seen-width", "", Measure::new(width, Unit::Ratio, 2))
        .step("full-overlap", "1 − (1 − o) w₁ / w", super::overlap::shown(full.get()))
        .given(&[("o", super::overlap::shown(seen.get())), ("w₁ / w", Measure::new(width, Unit::Ratio, 2))])
}
