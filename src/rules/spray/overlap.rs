//! Overlapping passes: how even the film of an endless set of equal passes lies.

use super::fan::{EdgeMeant, Section, seen_overlap};
use crate::quantity::{Measure, Overlap, PERCENT_A_WHOLE, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// How a set of passes lies.
    Lay {
        /// As even as the sheet asks.
        Even = "lay-even",
        /// Stripes.
        Stripes = "lay-stripes",
    }
}

/// How even a film is, over its mean.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Evenness {
    /// Coefficient of variation: standard deviation over mean, 0 for a flat film.
    pub cv: f64,
    /// Thinnest place over the mean, 0 to 1.
    pub min_over_mean: f64,
    /// Thickest place over the mean, 1 and more.
    pub max_over_mean: f64,
    /// Mean over the greatest film of a single pass.
    pub mean_over_peak: f64,
}

impl Evenness {
    /// Thickest over thinnest place; infinite where a place stays bare.
    #[must_use]
    pub fn max_over_min(&self) -> f64 {
        self.max_over_mean / self.min_over_mean
    }
}

/// Places looked at between the middle of a pass and the middle between two.
const PLACES: u32 = 256;
/// Width of the fan in half widths, in which sections count.
const FULL: f64 = 2.0;

/// A share as shown, in per cent.
pub(super) fn shown(share: f64) -> Measure {
    Measure::new(share * PERCENT_A_WHOLE, Unit::Percent, 1)
}

/// Film of all passes at a place, over the greatest film of one; passes lie `pitch` apart, all in half widths.
fn film_at(section: Section, pitch: f64, place: f64) -> f64 {
    let mut film = 0.0;
    let mut pass = libm::ceil((place - 1.0) / pitch);
    while pass * pitch < place + 1.0 {
        film += section.height(place - pass * pitch);
        pass += 1.0;
    }
    film
}

/// How even an endless set of equal passes lies: the section of one pass summed at its pitch.
///
/// The mean is exact (volume balance); the spread is a sum over half a pitch, which mirrors into the other half; the
/// edges of the passes, where the film may bend sharply, are looked at too.
#[must_use]
pub fn evenness(section: Section, overlap: Overlap) -> Ruling<Evenness> {
    let pitch = FULL * (1.0 - overlap.get());
    let half = pitch / FULL;
    let mean = section.mean() / (1.0 - overlap.get());
    let edge = 1.0 - pitch * libm::floor(1.0 / pitch);
    let (mut least, mut most) = (f64::INFINITY, 0.0_f64);
    for place in [0.0, half, edge.min(pitch - edge)] {
        let film = film_at(section, pitch, place);
        (least, most) = (least.min(film), most.max(film));
    }
    let mut spread = 0.0;
    for nth in 0..PLACES {
        let place = half * (f64::from(nth) + 1.0 / FULL) / f64::from(PLACES);
        let film = film_at(section, pitch, place);
        (least, most) = (least.min(film), most.max(film));
        spread += (film - mean) * (film - mean);
    }
    let found = Evenness {
        cv: (spread / f64::from(PLACES)).sqrt() / mean,
        min_over_mean: least / mean,
        max_over_mean: most / mean,
        mean_over_peak: mean,
    };
    Ruling::by("spray.overlap-evenness", found)
        .and("spray.full-width")
        .step("pitch-share", "1 − o", shown(1.0 - overlap.get()))
        .given(&[("o", shown(overlap.get()))])
        .step("unevenness", "s / m", shown(found.cv))
        .step("thinnest", "min / m", shown(found.min_over_mean))
}

/// The least overlap at which passes lie most even before they lie worse again: narrower optima come further up, at the
/// price of more passes.
#[must_use]
pub fn even_overlap(section: Section) -> Ruling<Overlap> {
    /// Steps of the search, coarse and then fine, as shares of the width.
    const STEPS: [f64; 2] = [0.02, 0.0025];
    /// Least overlap that is looked at: under it no section lies even.
    const FROM: f64 = 0.02;
    let cv = |overlap: f64| evenness(section, Overlap::saturating(overlap)).answer.cv;
    let mut best = FROM;
    for step in STEPS {
        let mut next = best + step;
        while next < Overlap::MAX && cv(next) < cv(best) {
            best = next;
            next += step;
        }
        best -= step;
    }
    let [_, fine] = STEPS;
    best += fine;
    Ruling::by("spray.overlap-evenness", Overlap::saturating(best)).step("even-overlap", "", shown(best))
}

/// Ripple of an endless set of Gaussian passes, for a pitch in standard deviations of the section: its first harmonic,
/// cv = √2 exp(-2π² σ² / s²) (closed form; a Gaussian has no edge and so no overlap).
#[must_use]
pub fn gaussian_cv(pitch_in_sigma: f64) -> f64 {
    let turn = core::f64::consts::PI / pitch_in_sigma;
    core::f64::consts::SQRT_2 * libm::exp(-FULL * turn * turn)
}

/// Whether a set of passes lies as even as the sheet asks.
#[must_use]
pub fn lay(section: Section, overlap: Overlap, sheet: &Sheet) -> Ruling<Lay> {
    let found = evenness(section, overlap);
    let most = sheet.get(Setting::StripesMost) / PERCENT_A_WHOLE;
    let lay = if found.answer.cv <= most { Lay::Even } else { Lay::Stripes };
    Ruling::by("spray.stripes-by-sheet", lay).resting_on(&found).step("stripes-most", "", shown(most))
}

/// The same for an overlap that was judged by one of two edges.
///
/// # Errors
/// [`CannotJudge`] when the edge is not told and decides.
pub fn lay_as_meant(
    section: Section,
    judged: Overlap,
    meant: Option<EdgeMeant>,
    sheet: &Sheet,
) -> Judged<Lay> {
    let by_full = lay(section, judged, sheet);
    let by_seen = || {
        let full = seen_overlap(section, judged);
        lay(section, full.answer, sheet).resting_on(&full)
    };
    match meant {
        Some(EdgeMeant::Full) => Ok(by_full),
        Some(EdgeMeant::Seen) => Ok(by_seen()),
        None if by_full.answer == by_seen().answer => Ok(by_full),
        None => Err(CannotJudge::without("edge_meant")),
    }
}
