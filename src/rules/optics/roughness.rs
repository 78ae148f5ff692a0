//! Loss of gloss by fine roughness. For ranking only: a glossmeter gathers some light beside the mirror direction, so
//! that gloss falls more slowly; orange peel, with waves far longer, blurs the image and leaves gloss high.

use super::gloss::GlossAngle;
use crate::quantity::{Fraction, Measure, Micrometres, Unit};
use crate::rules::verdict::Ruling;

/// Wavelength that the loss is reckoned at: the middle of what the eye sees, green.
const WAVELENGTH_UM: f64 = 0.55;
/// 4 π: the way there and back, in turns of the wave.
const FOUR_PI: f64 = 4.0 * core::f64::consts::PI;

/// Share of the mirrored light that a rough face keeps: exp(-(4π σ cos θ / λ)²), σ its root mean square height.
///
/// Source: Bennett and Porteus (1961) at square incidence, with the cosine of Beckmann.
#[must_use]
pub fn kept(height: Micrometres, angle: GlossAngle) -> Ruling<Fraction> {
    let turns = FOUR_PI * height.get() * libm::cos(angle.degrees().to_radians()) / WAVELENGTH_UM;
    let kept = Fraction::saturating(libm::exp(-turns * turns));
    Ruling::by("optics.roughness", kept)
        .step("gloss-kept", "exp(−(4π σ cos θ / λ)²)", Measure::new(kept.get(), Unit::Ratio, 2))
        .given(&[
            ("σ", Measure::new(height.get(), Unit::Micrometre, 2)),
            ("θ", Measure::new(angle.degrees(), Unit::Degree, 0)),
            ("λ", Measure::new(WAVELENGTH_UM, Unit::Micrometre, 2)),
        ])
}

/// The roughness that keeps a share of the mirrored light. Nothing kept gives the roughest that a thickness may be.
#[must_use]
pub fn height_for(share: Fraction, angle: GlossAngle) -> Micrometres {
    let turns = (-libm::log(share.get())).sqrt();
    Micrometres::saturating(turns * WAVELENGTH_UM / (FOUR_PI * libm::cos(angle.degrees().to_radians())))
}
