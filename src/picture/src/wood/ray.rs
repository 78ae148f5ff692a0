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
/// How far outward a sheet keeps its thickness, mm for a height of 1 mm; it grows with the root of the height. And where it
/// thins out to nothing.
const OUTWARD: f32 = 1.7;
const ENDS: (f32, f32) = (-0.9, 0.1);
/// Its upper and lower end sway as it runs outward: how far, in heights, and over which way, mm for a height of 1 mm, which
/// grows with the root of the height as well.
const SWAYS: f32 = 0.4;
const SWAY_LENGTH: f32 = 0.55;
/// Number of the noise of a sheet that sways it; its bodies have the ones from 0.
const SWAY_SEED: u32 = 7_400;

/// Share of a pixel of `scale` mm that is ray.
pub(crate) fn share(cut: &Cut, rays: Rays, place: &Place, scale: f32) -> f32 {
    let wave = cloud(cut.seed(71), place.along / (3.0 * rays.height), place.radius / 45.0);
    let (sheet, phase) = cell(place.round / rays.spacing + WAVE * wave);
    let seed = super::layer(cut.seed(73), sheet);
    let mut own = Chance::new(seed);
    let step = ABOVE * rays.height;
    let out = place.radius / rays.height.sqrt();
    let sway = SWAYS * rays.height * cloud(super::layer(seed, SWAY_SEED), out / SWAY_LENGTH, 0.5);
    let (body, above) = cell((place.along + sway) / step + own.even());
    let mut chance = Chance::new(super::layer(seed, body));
    let tall = 0.5 * rays.height * chance.between(0.35, 1.4) / step;
    let end = (above - chance.between(0.4, 0.6)) / tall;
    let off = (phase - chance.between(0.3, 0.7)) * rays.spacing;
    // A pixel sees this much of the ring.
    let pixel = place.pace_round.max(0.1) * scale;
    let half = 0.5 * chance.about(rays.width, SPREAD) * (1.0 - end * end).max(0.0);
    if off.abs() > half + 0.5 * pixel + rays.width * RAGGED {
        return 0.0;
    }
    let half = half * smooth(ENDS.0, ENDS.1, cloud(super::layer(seed, body), out / OUTWARD, 0.5));
    let ragged = cloud(cut.seed(72), place.along / (0.12 * rays.height), place.radius / 0.9);
    let off = off + RAGGED * rays.width * ragged;
    let (from, to) = ((off - 0.5 * pixel).max(-half), (off + 0.5 * pixel).min(half));
    ((to - from) / pixel).clamp(0.0, 1.0)
}
