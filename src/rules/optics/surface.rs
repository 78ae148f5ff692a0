//! The film's own surface over a colour: it mirrors light before the colour sees it and throws light back in from below.
//! That is why a matt coat looks paler, and why a clear coat wets out the colour.

use crate::quantity::Fraction;
use crate::rules::verdict::Ruling;

/// What is measured outside the surface, from what the colour reflects within (Saunderson):
/// k₁ + (1 - k₁)(1 - k₂) R / (1 - k₂ R), k₁ the light mirrored outside, k₂ that thrown back within.
///
/// Source: E. Allen, in Optical Radiation Measurements, vol. 2, 1980, as public routines give it.
#[must_use]
pub fn seen(within: Fraction, mirrored: Fraction, thrown_back: Fraction) -> Ruling<Fraction> {
    let (r, k1, k2) = (within.get(), mirrored.get(), thrown_back.get());
    let rest = 1.0 - k2 * r;
    let seen = if rest > 0.0 { k1 + (1.0 - k1) * (1.0 - k2) * r / rest } else { 1.0 };
    Ruling::by("optics.saunderson", Fraction::saturating(seen))
}
