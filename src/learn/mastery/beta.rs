//! The beta distribution: its share below a value, and the value that a share lies below.

/// Terms of the continued fraction at most; some dozens do for counts of an attempt.
const TERMS: u32 = 500;
/// A factor this near to 1 changes no bit that matters.
const SETTLED: f64 = 1e-15;
/// Stands for a denominator of nothing.
const TINY: f64 = 1e-300;
/// Halvings of the range from 0 to 1: beyond the last bit of a number near 1.
const HALVINGS: u32 = 60;

/// Share of a beta distribution that lies below `x` (0 to 1): the regularised incomplete beta function `I_x(a, b)`, for
/// `a` and `b` above 0. Abramowitz and Stegun, Handbook of Mathematical Functions, 26.5.2 (symmetry) and 26.5.8
/// (continued fraction), evaluated by the modified method of Lentz.
#[must_use]
pub fn beta_below(x: f64, a: f64, b: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    if x >= 1.0 {
        return 1.0;
    }
    let scale = libm::lgamma(a + b) - libm::lgamma(a) - libm::lgamma(b);
    let front = libm::exp(scale + a * libm::log(x) + b * libm::log1p(-x));
    // The fraction converges fast below the mean.
    if x < (a + 1.0) / (a + b + 2.0) {
        front * fraction(x, a, b) / a
    } else {
        1.0 - front * fraction(1.0 - x, b, a) / b
    }
}

/// The continued fraction of 26.5.8.
fn fraction(x: f64, a: f64, b: f64) -> f64 {
    let kept = |value: f64| if value.abs() < TINY { TINY } else { value };
    let mut c = 1.0;
    let mut d = 1.0 / kept(1.0 - (a + b) * x / (a + 1.0));
    let mut product = d;
    for term in 1..=TERMS {
        let m = f64::from(term);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        d = 1.0 / kept(1.0 + even * d);
        c = kept(1.0 + even / c);
        product *= c * d;
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        d = 1.0 / kept(1.0 + odd * d);
        c = kept(1.0 + odd / c);
        product *= c * d;
        if (c * d - 1.0).abs() < SETTLED {
            break;
        }
    }
    product
}

/// The value that a share (0 to 1) of a beta distribution lies below, by bisection.
#[must_use]
pub fn beta_quantile(share: f64, a: f64, b: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if beta_below(middle, a, b) < share {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}
