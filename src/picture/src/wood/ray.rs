//! Rays: thin sheets that stand on the rings and run out from the middle of the log, each as high along the grain as it has
//! grown. One geometry for every face: spindles on a flat one, ribbons and flakes on a quartered one, lines on an end.

use super::{Cut, Place, Rays};
use crate::noise::{Chance, cloud};
use crate::number::{cell, smooth};

/// How far a sheet is from flat, against the distance of the sheets, and its ragged edge, in thicknesses.
const WAVE: f32 = 0.42;
const RAGGED: f32 = 0.10;
/// Spread of the thickness of the sheets.
const SPREAD: f32 = 0.45;
/// From one sheet to the next above it, in heights.
const ABOVE: f32 = 1.7;

/// Share of a pixel of `scale` mm that is ray.
pub(crate) fn share(cut: &Cut, rays: Rays, place: &Place, scale: f32) -> f32 {
    let fine = rays.height;
    let wave = WAVE * rays.spacing * cloud(cut.seed(71), place.along / (3.0 * fine), place.radius / 45.0)
        + RAGGED * rays.width * cloud(cut.seed(72), place.along / (0.12 * fine), place.radius / 0.9);
    let (sheet, phase) = cell((place.round + wave) / rays.spacing);
    let mut own = Chance::new(super::layer(cut.seed(70), sheet));
    let step = ABOVE * rays.height;
    let (body, above) = cell(place.along / step + own.even());
    let mut chance = Chance::new(super::layer(own_seed(cut, sheet), body));
    let tall = 0.5 * rays.height * chance.between(0.35, 1.4) / step;
    let end = (above - chance.between(0.4, 0.6)) / tall;
    let out = place.radius / rays.spacing * 0.12;
    let there = smooth(-0.9, 0.1, cloud(own_seed(cut, sheet ^ body), out, 0.5));
    let half = 0.5 * chance.about(rays.width, SPREAD) * (1.0 - end * end).max(0.0) * there;
    let off = (phase - chance.between(0.3, 0.7)) * rays.spacing;
    // A pixel sees this much of the ring.
    let pixel = (place.pace_round.max(0.1) * scale).max(1.0e-3);
    let (from, to) = ((off - 0.5 * pixel).max(-half), (off + 0.5 * pixel).min(half));
    ((to - from) / pixel).clamp(0.0, 1.0)
}

fn own_seed(cut: &Cut, sheet: u32) -> u32 {
    super::layer(cut.seed(73), sheet)
}
