//! Two tubes in a tray.

use super::strip::strip;
use super::{FAR_BLURS, Pair, VEIL, any_within, milky};
use crate::light::Light;
use wide::f32x8;

/// Half of a tube's width and of its length, how far each lies from the middle, and its light.
const HALF: f32 = 13.0;
const LONG: f32 = 620.0;
const APART: f32 = 38.0;
const LIGHT: f32 = 26.0;
/// Half of the tray's width, and its light.
const TRAY_HALF: f32 = 75.0;
const TRAY_LIGHT: f32 = 1.1;
/// Tubes and tray together, blurred so wide that they are one band: its spread across, and its light over the root of a
/// whole turn, the height of a normal curve.
const BAND: f32 = 40.0;
const BAND_LIGHT: f32 = 2.0 * (2.0 * HALF * LIGHT + TRAY_HALF * TRAY_LIGHT) * 0.398_94;

/// What is seen of tubes that lie so far along themselves and across, by films that blur so much square to them and of which
/// a share is milky.
pub(crate) fn tubes(light: &Light, (along, across): Pair, blur: f32x8, veil: f32x8) -> f32x8 {
    let sharp = if any_within(across, TRAY_HALF + FAR_BLURS * blur) {
        let tubes = strip(across + APART, HALF, blur) + strip(across - APART, HALF, blur);
        lengthwise(along, blur) * (LIGHT * tubes + TRAY_LIGHT * strip(across, TRAY_HALF, blur))
    } else {
        f32x8::ZERO
    };
    if !milky(veil) {
        return sharp;
    }
    let wide = blur + VEIL;
    let wide = (wide * wide + BAND * BAND).sqrt();
    let off = across / wide;
    // A normal curve is light that comes through half of the square of a depth.
    let curve: f32x8 = (0.5 * off * off).to_array().map(|depth| light.pass(depth)).into();
    let band = BAND_LIGHT / wide * curve;
    sharp + (lengthwise(along, wide) * band - sharp) * veil
}

/// How much of their length is seen: all of it anywhere but near their ends.
fn lengthwise(along: f32x8, blur: f32x8) -> f32x8 {
    if (along.abs() + FAR_BLURS * blur).simd_gt(f32x8::splat(LONG)).any() {
        strip(along, LONG, blur)
    } else {
        f32x8::ONE
    }
}
