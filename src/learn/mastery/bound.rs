//! A lower bound of the share of right answers, for showing beside the test; it decides nothing.

use super::beta::beta_quantile;
use crate::quantity::Fraction;

/// Confidence of the bounds that are shown. Common practice, no source.
pub const CONFIDENCE: Fraction = Fraction::saturating(0.95);

/// One-sided lower bound of the true share of right answers (C. J. Clopper and E. S. Pearson, Biometrika 26, 1934): never
/// over-optimistic when it is computed once, at the end. 0 where no answer is right. `right` above `answers` counts as all.
#[must_use]
pub fn lower_bound(right: u32, answers: u32, confidence: Fraction) -> Fraction {
    let right = right.min(answers);
    if right == 0 {
        return Fraction::saturating(0.0);
    }
    let (hits, misses) = (f64::from(right), f64::from(answers - right));
    Fraction::saturating(beta_quantile(1.0 - confidence.get(), hits, misses + 1.0))
}
