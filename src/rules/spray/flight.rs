//! Droplets on their way: which share of them lands, and which share of that lands dry.
//!
//! Both go by the way that the droplets fly: the distance from the gun to where it aims, which lies along the slant.

use crate::quantity::{Fraction, Millimetres};

/// From here on each inch more costs a share of what would land: 8 in (from memory, weak: a teaching value, no check).
const LOSS_FROM_MM: f64 = 203.0;
/// The share that an inch of 25.4 mm costs: 5 % (from memory, weak: a teaching value, no check).
const LOSS_A_MM: f64 = 0.05 / 25.4;
/// At so many times the farthest distance of the pass everything lands dry; in between the share rises evenly (an
/// assumption, no source: that far lands dry is published, the share is not).
const ALL_DRY_AT: f64 = 2.0;

/// Share of the material that lands, from the share at the near distances of the gun: less from farther away. A tilt costs
/// no more of it: the same lies on a face that is longer by the cosine (spray.tilt).
#[must_use]
pub fn landing(near: Fraction, flown: Millimetres) -> Fraction {
    let lost = LOSS_A_MM * (flown.get() - LOSS_FROM_MM).max(0.0);
    Fraction::saturating(near.get() * (1.0 - lost))
}

/// Share of what lands that is dry already: none within the farthest distance of the pass, all of it at twice that.
#[must_use]
pub fn dry(farthest: Millimetres, flown: Millimetres) -> Fraction {
    let over = flown.get() - farthest.get();
    Fraction::saturating(over / (farthest.get() * (ALL_DRY_AT - 1.0)).max(f64::MIN_POSITIVE))
}
