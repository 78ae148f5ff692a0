//! Bands and lines of another colour that follow the growth loosely: each has its own place among the years, its own width,
//! and comes and goes along the log. Their outer edge is the sharper one.

use super::{Bands, Cut, Place};
use crate::noise::{Chance, cloud};
use crate::number::{cell, mix, smooth};

/// How far bands leave the years, in places.
const WARP: f32 = 0.55;
/// The outer edge is sharper than the inner one by this factor.
const OUTER: f32 = 0.35;
/// How far single streaks of fibre carry the edge of a band, in places.
const STREAKED: f32 = 0.10;
/// How far bands come and go along the log, mm.
const COMES: f32 = 90.0;

/// Share of a kind of band at a place, over a pixel of `scale` mm.
pub(crate) fn share(cut: &Cut, number: u32, bands: Bands, place: &Place, streak: f32, scale: f32) -> f32 {
    let seed = cut.seed(80 + number);
    let warp = WARP * cloud(seed, place.along / 120.0, bands.count * place.years * 0.3)
        + 0.3 * WARP * cloud(seed ^ 1, place.along / 35.0, bands.count * place.years * 0.5);
    let at = bands.count * place.years + warp + STREAKED * streak * place.crossing;
    let pixel = bands.count * place.pace * scale;
    let (middle, phase) = cell(at);
    let mut most = 0.0_f32;
    for (step, from) in [(u32::MAX, 1.0), (0, 0.0), (1, -1.0)] {
        let own = middle.wrapping_add(step);
        let mut chance = Chance::new(super::layer(seed, own));
        if chance.even() >= bands.share {
            continue;
        }
        let half = 0.5 * bands.width * chance.between(0.4, 1.6);
        let off = phase + from - chance.between(0.3, 0.7);
        let edge = (half * bands.soft * if off > 0.0 { OUTER } else { 1.0 }).max(0.5 * pixel);
        // A line thinner than a pixel is fainter.
        let thin = (2.0 * half / pixel.max(1.0e-6)).min(1.0);
        let inside = 1.0 - smooth(half - edge, half + edge, off.abs());
        if inside > 0.0 {
            let comes = cloud(super::layer(seed, own ^ 0x00A5_0000), place.along / COMES, at * 0.35);
            // Where nearly every place has its band, the bands hardly stop.
            let comes = mix(smooth(-0.9, 0.3, comes), 1.0, bands.share * bands.share);
            let strength = chance.between(0.6, 1.0) * comes;
            most = most.max(inside * thin * strength);
        }
    }
    bands.cover * most
}
