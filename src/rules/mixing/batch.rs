//! Batches: volumes of a mix that is to come to so much in all, or that is given in parts.

use super::{Thinning, volume};
use crate::quantity::{Measure, Millilitres, OutOfRange, Unit};
use crate::rules::verdict::Ruling;

/// Material and thinner of a batch that is to come to so much in all.
#[must_use]
pub fn batch(whole: Millilitres, thinning: Thinning) -> Ruling<(Millilitres, Millilitres)> {
    let base = Millilitres::saturating(whole.get() / (1.0 + thinning.ratio()));
    let thinner = Millilitres::saturating(whole.get() - base.get());
    Ruling::by("mixing.batch", (base, thinner))
        .and("mixing.percent-of-unthinned")
        .step("percent-thinned", "", Measure::new(thinning.percent(), Unit::Percent, 0))
        .step("material", "batch / (1 + r)", volume(base))
        .given(&[("batch", volume(whole)), ("r", Measure::new(thinning.ratio(), Unit::Ratio, 2))])
        .step("thinner", "batch − material", volume(thinner))
        .given(&[("batch", volume(whole)), ("material", volume(base))])
}

/// Volumes of a mix given in parts by volume, with the rule behind it.
///
/// # Errors
/// As [`by_parts`].
pub fn mix_by_parts(base: Millilitres, parts: &[f64]) -> Result<Ruling<Vec<Millilitres>>, OutOfRange> {
    by_parts(base, parts)
        .map(|volumes| Ruling::by("mixing.parts-by-volume", volumes).step("material", "", volume(base)))
}

/// Volumes of a mix given in parts, with so much of the first part: 4:1:1 and the base.
///
/// # Errors
/// [`OutOfRange`] when the first part is not above 0 or a volume leaves its range.
pub fn by_parts(base: Millilitres, parts: &[f64]) -> Result<Vec<Millilitres>, OutOfRange> {
    let first = parts.first().copied().unwrap_or(0.0);
    parts.iter().map(|part| Millilitres::new(base.get() * part / first)).collect()
}
