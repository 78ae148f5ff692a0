//! Soft film: it has not hardened, and what pressed on it is printed into it: the weave of a cloth in the patches where it lay,
//! and the crescents of thumbnails. The print dulls the gloss as a haze does, but no cloth wipes it off; grain sink follows the
//! pores, a weave lies as the cloth lay.

use super::field::{coarse, join, spread};
use super::nail::Nail;
use crate::map::{Grid, Map};
use crate::noise::{Chance, soft};
use crate::number::{cell, mix, smooth};
use crate::panel::{Layers, Probe, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// From thread to thread, mm, and how far the cloth is pulled out of shape: size, and share of a thread.
const THREAD: f32 = 1.3;
const PULLED: (f32, f32) = (18.0, 0.45);
/// A thread's crown: powers across it and along it.
const CROWN: (f32, f32) = (1.6, 0.6);
/// Mean of the crowns over the cloth: the film as a whole stays as high as it was.
const MEAN: f32 = 0.35;
/// Depth of the print, micrometres.
const PRINT: [f32; 3] = [0.9, 1.5, 2.3];
/// Where it pressed: size of the patches, and how far below the worst place they end, against noise of deviation 0.85.
const PATCH: f32 = 34.0;
const BELOW: [f32; 3] = [1.3, 1.9, 2.7];
const SOFT_EDGE: f32 = 0.7;
/// A cloth that tries the film: where its middle lies, shares of the panel; half of the folded pad, mm, and how softly it ends.
const TRIED_AT: (f32, f32) = (0.36, 0.62);
const PAD: f32 = 13.0;
const PAD_EDGE: f32 = 2.0;
/// Gloss under it: roughness, radians, and share scattered wide.
const ROUGH: [f32; 3] = [0.0008, 0.0012, 0.0016];
const VEIL: [f32; 3] = [0.12, 0.17, 0.22];
/// The valleys between threads stay nearly as they were: the least that is scattered, share of the crowns'.
const VEIL_LEAST: f32 = 0.35;
/// Light of the room that the dulled crowns send back: where no lamp is mirrored the patch is a little pale, thread by thread.
const DULL: [f32; 3] = [0.07, 0.09, 0.12];
/// Thumbnails that tried it: how many, radius of the crescent, half of its angle, width, depth over all of it.
const NAILS: [usize; 3] = [1, 2, 4];
const NAIL: (f32, f32) = (5.5, 8.0);
const NAIL_HALF: (f32, f32) = (0.5, 0.75);
const NAIL_DEEP: [f32; 3] = [14.0, 18.0, 22.0];
const NAIL_ROUND: f32 = 0.3;
/// They lie so far from the rim at least.
const RIM: f32 = 20.0;
/// Share of the full pressure, and depth of a dent, micrometres, from which a place is marked.
const MARKED: (f32, f32) = (0.08, 0.2);
const MARKED_NAIL: (f32, f32) = (0.5, 1.5);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_061 + number);
    let mut chance = Chance::new(seed(0));
    let turn = core::f32::consts::PI * chance.even();
    let (sine, cosine) = (libm::sinf(turn), libm::cosf(turn));
    let slow = coarse(grid, |x, y| soft(seed(1), PATCH, x, y)).await;
    let from = slow.values.iter().copied().fold(f32::MIN, f32::max) - severity.of(BELOW);
    let pressed = spread(&slow, grid).await;
    let pulled_u = coarse(grid, |x, y| PULLED.1 * soft(seed(2), PULLED.0, x, y)).await;
    let pulled_v = coarse(grid, |x, y| PULLED.1 * soft(seed(3), PULLED.0, x, y)).await;
    let nails = nails(layers, recipe, &mut chance, severity).await;
    let pad = tried_at(grid);
    let tried = |place: usize| {
        if recipe.probe != Probe::Cloth {
            return 0.0;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let off = (x - pad.0).abs().max((y - pad.1).abs());
        1.0 - smooth(PAD - PAD_EDGE, PAD, off)
    };
    let film = &mut layers.film;
    let maps = film.height.values.iter_mut().zip(&mut film.rough.values).zip(&mut film.veil.values);
    let maps = maps
        .zip(&mut film.haze.values)
        .zip(&mut layers.mask.values)
        .zip(pressed.values.iter().zip(&nails.values));
    for (place, (((((height, rough), veil), haze), mask), (pressed, nail))) in maps.enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        let pressed = smooth(from, from + SOFT_EDGE, *pressed).max(tried(place));
        *mask =
            mask.max(smooth(MARKED.0, MARKED.1, pressed)).max(smooth(MARKED_NAIL.0, MARKED_NAIL.1, *nail));
        *height -= nail;
        if pressed > 0.0 {
            let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
            let u = (x * cosine + y * sine) / THREAD + pulled_u.near(x, y);
            let v = (y * cosine - x * sine) / THREAD + pulled_v.near(x, y);
            let crown = crown(u, v);
            *height -= severity.of(PRINT) * pressed * (crown - MEAN);
            *rough += severity.of(ROUGH) * pressed;
            join(haze, severity.of(DULL) * pressed * crown);
            *veil += severity.of(VEIL) * pressed * mix(VEIL_LEAST, 1.0, crown);
        }
    }
}

/// How far a thread stands out of a plain weave, 0 to 1: of each two that cross the other one lies above the next time.
fn crown(u: f32, v: f32) -> f32 {
    let ((warp, along), (weft, across)) = (cell(u), cell(v));
    let arch = |share: f32| libm::sinf(core::f32::consts::PI * share).max(0.0);
    let (thin, long) = if warp.wrapping_add(weft) & 1 == 0 { (along, across) } else { (across, along) };
    libm::powf(arch(thin), CROWN.0) * libm::powf(arch(long), CROWN.1)
}

/// The middle of a cloth that tries the film, mm.
pub(super) fn tried_at(grid: Grid) -> (f32, f32) {
    (TRIED_AT.0 * grid.width(), TRIED_AT.1 * grid.height())
}

/// Depth of what thumbnails pressed in, micrometres.
async fn nails(layers: &Layers, recipe: &Recipe, chance: &mut Chance, severity: Severity) -> Map {
    let grid = layers.grid();
    let mut dents = Map::of(grid, 0.0);
    for _ in 0..severity.of(NAILS) {
        let at = (chance.between(RIM, grid.width() - RIM), chance.between(RIM, grid.height() - RIM));
        let (radius, half) = (chance.between(NAIL.0, NAIL.1), chance.between(NAIL_HALF.0, NAIL_HALF.1));
        let nail = Nail { at, radius, half, facing: core::f32::consts::TAU * chance.even() };
        nail.press(&mut dents, severity.of(NAIL_DEEP));
    }
    if recipe.probe == Probe::Pressed {
        Nail::beside_the_middle(grid).press(&mut dents, severity.of(NAIL_DEEP));
    }
    dents.blurred(NAIL_ROUND).await
}
