//! The edge of a lamp in a mirror that blurs.

use wide::f32x8;

/// How much of a strip of half-width `half` a point at distance `off` from its middle sees, when the mirror blurs by
/// `blur`: a box convolved with a normal curve.
pub(crate) fn strip(off: f32x8, half: f32, blur: f32x8) -> f32x8 {
    let scale = core::f32::consts::FRAC_1_SQRT_2 / blur;
    0.5 * (erf((off + half) * scale) - erf((off - half) * scale))
}

/// The same at one point.
pub(crate) fn strip_at(off: f32, half: f32, blur: f32) -> f32 {
    let [seen, ..] = strip(f32x8::splat(off), half, f32x8::splat(blur)).to_array();
    seen
}

/// How much of a large lamp a point sees that lies `beyond` its edge, when the mirror blurs by `blur`.
pub(crate) fn inside(beyond: f32x8, blur: f32x8) -> f32x8 {
    0.5 * (1.0 - erf(beyond * core::f32::consts::FRAC_1_SQRT_2 / blur))
}

/// The error function within 0.0005 (Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.27).
fn erf(value: f32x8) -> f32x8 {
    const TERMS: [f32; 4] = [0.278_393, 0.230_389, 0.000_972, 0.078_108];
    /// From here on it is one for the eye, and powers stay within range.
    const END: f32 = 8.0;
    let x = value.abs().fast_min(f32x8::splat(END));
    let [a, b, c, d] = TERMS;
    let sum = 1.0 + x * (a + x * (b + x * (c + x * d)));
    let square = sum * sum;
    (1.0 - 1.0 / (square * square)).copysign(value)
}
