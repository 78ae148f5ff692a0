//! A bare bulb.

use super::strip::inside;
use super::{FAR_BLURS, Pair, any_within, veiled};
use wide::f32x8;

/// Radius of the bulb, and its light.
const RADIUS: f32 = 22.0;
const LIGHT: f32 = 80.0;

/// What is seen of a bulb that lies so far along the grain and across it, by films that blur so much and of which a share is
/// milky.
pub(crate) fn bulb(off: Pair, blur: Pair, veil: f32x8) -> f32x8 {
    veiled(blur, veil, |blur| seen(off, blur))
}

fn seen((u, v): Pair, (along, across): Pair) -> f32x8 {
    // Most of a picture lies beside the bulb.
    if !any_within(u, RADIUS + FAR_BLURS * along) || !any_within(v, RADIUS + FAR_BLURS * across) {
        return f32x8::ZERO;
    }
    let v = v * (along + RADIUS) / (across + RADIUS);
    let spread = along * across * (1.0 / (RADIUS * RADIUS));
    let distance = (u * u + v * v).sqrt();
    LIGHT * inside(distance - RADIUS, along) / (1.0 + 2.0 * spread)
}
