//! Means, spreads and correlations.

/// A count as a number to reckon with.
#[allow(clippy::cast_precision_loss, reason = "counts of people and cards are far under 2^53")]
pub(super) const fn real(count: usize) -> f64 {
    count as f64
}

/// The mean; `None` of nothing.
pub(super) fn mean(values: &[f64]) -> Option<f64> {
    (!values.is_empty()).then(|| values.iter().sum::<f64>() / real(values.len()))
}

/// The variance with divisor N; `None` of nothing.
pub(super) fn variance(values: &[f64]) -> Option<f64> {
    let mean = mean(values)?;
    Some(values.iter().map(|value| (value - mean) * (value - mean)).sum::<f64>() / real(values.len()))
}

/// Spread below which two values are the same but for rounding.
const NO_SPREAD: f64 = 1e-12;

/// Whether a variance is one.
pub(super) fn spreads(variance: f64) -> bool {
    variance > NO_SPREAD
}

/// The correlation of Pearson; `None` where one of the two does not spread.
pub(super) fn correlation(a: &[f64], b: &[f64]) -> Option<f64> {
    let (mean_a, mean_b) = (mean(a)?, mean(b)?);
    let (var_a, var_b) = (variance(a)?, variance(b)?);
    if !spreads(var_a) || !spreads(var_b) {
        return None;
    }
    let both = a.iter().zip(b).map(|(a, b)| (a - mean_a) * (b - mean_b)).sum::<f64>() / real(a.len());
    Some(both / libm::sqrt(var_a * var_b))
}
