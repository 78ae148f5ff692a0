//! Wrinkling: the new coat swells the one below, and the skin shrivels into soft folds that stand up and wind about, many
//! times higher than orange peel; no lamp keeps its shape in them. They are rounded and closed: a cold check is a sharp
//! break in hard film.

use super::field::{coarse, spread};
use super::nail::Nail;
use crate::map::Map;
use crate::noise::{Chance, soft};
use crate::number::smooth;
use crate::panel::{Layers, Probe, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// From fold to fold, and how far single waves differ from it.
const LENGTH: [f32; 3] = [2.7, 3.3, 3.9];
const LENGTH_SHARE: (f32, f32) = (0.86, 1.16);
/// Waves that are added; each runs its own way.
const WAVES: usize = 24;
/// Height of a fold over its foot, micrometres.
const HIGH: [f32; 3] = [22.0, 34.0, 48.0];
/// Folds are rounded off over this.
const ROUNDED: f32 = 0.26;
/// How narrow a fold is against its valley, and how much of the face stands up.
const NARROW: f32 = 1.5;
const STANDS: f32 = 0.4;
/// Patches: their size, and how far below the worst place they end (against noise of standard deviation 0.85): the worst
/// place always wrinkles.
const PATCH: f32 = 34.0;
const BELOW: [f32; 3] = [0.95, 1.9, 6.0];
const SOFT_EDGE: f32 = 0.55;
/// Colour gathers in folds and leaves the valleys: share by which it differs.
const GATHERS: f32 = 0.7;
/// Shade in the valleys.
const SHADE: f32 = 0.2;
/// The skin is dull.
const VEIL: f32 = 0.10;
const ROUGH: f32 = 0.006;
/// A thumbnail sinks into it so far, micrometres (by eye: its underside is soft).
const NAIL_DEEP: f32 = 22.0;
const NAIL_ROUND: f32 = 0.3;
/// Share of the full strength from which a fold is marked.
const MARKED: (f32, f32) = (0.05, 0.2);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let slow = coarse(grid, |x, y| soft(layer(recipe.seed, 1_131), PATCH, x, y)).await;
    let from = slow.values.iter().copied().fold(f32::MIN, f32::max) - severity.of(BELOW);
    let mut patches = spread(&slow, grid).await;
    for patch in &mut patches.values {
        *patch = smooth(from, from + SOFT_EDGE, *patch);
    }
    pause().await;
    let mut folds = waves(layers, recipe, severity.of(LENGTH)).await;
    for (place, (fold, patch)) in folds.values.iter_mut().zip(&patches.values).enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        *fold = patch * libm::tanhf(NARROW * *fold + STANDS);
    }
    let folds = folds.blurred(ROUNDED).await;
    let film = &mut layers.film;
    let maps = film.height.values.iter_mut().zip(&mut film.tint.values).zip(&mut film.veil.values);
    let maps = maps.zip(&mut film.rough.values).zip(&mut film.body.values).zip(&mut layers.mask.values);
    for ((((((height, tint), veil), rough), body), mask), (fold, patch)) in
        maps.zip(folds.values.iter().zip(&patches.values))
    {
        *height += 0.5 * severity.of(HIGH) * fold;
        *tint *= 1.0 + GATHERS * fold;
        *veil += VEIL * patch;
        *rough += ROUGH * patch;
        *body *= 1.0 - SHADE * 0.5 * (patch - fold);
        *mask = mask.max(smooth(MARKED.0, MARKED.1, *patch));
    }
    if recipe.probe == Probe::Pressed {
        let mut dent = Map::of(grid, 0.0);
        Nail::beside_the_middle(grid).press(&mut dent, NAIL_DEEP);
        let dent = dent.blurred(NAIL_ROUND).await;
        let dents = film.height.values.iter_mut().zip(&dent.values);
        dents.for_each(|(height, dent)| *height -= dent);
    }
}

/// Waves of about one length that run every way: mean 0, standard deviation 1.
async fn waves(layers: &Layers, recipe: &Recipe, length: f32) -> Map {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_132));
    let mut sum = Map::of(grid, 0.0);
    let gain = libm::sqrtf(2.0 / crate::number::coordinate(WAVES));
    for wave in 0..WAVES {
        let turn = core::f32::consts::PI * (crate::number::coordinate(wave) + chance.even())
            / crate::number::coordinate(WAVES);
        let number = core::f32::consts::TAU / (length * chance.between(LENGTH_SHARE.0, LENGTH_SHARE.1));
        let (along, across) = (number * libm::cosf(turn), number * libm::sinf(turn));
        let phase = core::f32::consts::TAU * chance.even();
        // Each pixel turns the wave a little further: a multiplication for each instead of a sine.
        let (step_sine, step_cosine) = (libm::sinf(along * grid.scale), libm::cosf(along * grid.scale));
        pause().await;
        for (row, values) in sum.values.chunks_exact_mut(grid.columns).enumerate() {
            let (x, y) = grid.middle(0, row);
            let start = phase + along * x + across * y;
            let (mut sine, mut cosine) = (gain * libm::sinf(start), gain * libm::cosf(start));
            for value in values {
                *value += sine;
                (sine, cosine) =
                    (sine * step_cosine + cosine * step_sine, cosine * step_cosine - sine * step_sine);
            }
        }
    }
    sum
}
