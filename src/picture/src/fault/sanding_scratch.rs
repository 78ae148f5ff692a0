//! Sanding scratches: thin straight lines at one angle across the grain, and small curls of a round sander. Stain gathers in
//! them. They keep their place when the lamp moves, which swirl marks do not, and they are thin and scattered where chatter
//! is broad and even. Under opaque colour, or in a buffed clear over plain wood, they lie in the film and look pale.

use super::uptake;
use crate::map::Map;
use crate::noise::Chance;
use crate::number::{coordinate, whole};
use crate::panel::{Finish, Layers, Probe, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Lines on a square centimetre, and curls on a panel of 108 of them.
const LINES: [f32; 3] = [0.34, 0.75, 1.5];
const CURLS: [f32; 3] = [0.019, 0.028, 0.056];
/// Angle to the grain, degrees, and how far single lines stray from it, radians.
const ANGLE: (f32, f32) = (58.0, 78.0);
const STRAY: f32 = 0.03;
/// Median length of a line and its spread; width.
const LENGTH: f32 = 6.0;
const LENGTH_SPREAD: f32 = 0.55;
const WIDTH: (f32, f32) = (0.06, 0.13);
/// Share that lies in bundles, as grains of grit lie in a sheet; how many bundles and how wide they are.
const BUNDLED: f32 = 0.6;
const BUNDLES: usize = 4;
const BUNDLE: f32 = 7.0;
/// A line is deepest in its middle: shares of its length at the ends, and their depth.
const ENDS: f32 = 0.25;
const END_DEPTH: f32 = 0.5;
/// A curl: radius, turns, and how far it moves on in a turn; steps that it is drawn in.
const CURL_RADIUS: (f32, f32) = (0.7, 1.5);
const CURL_TURNS: f32 = 1.6;
const CURL_ON: f32 = 1.3;
const CURL_STEPS: usize = 36;
const CURL_WIDTH: f32 = 0.09;
/// What a scratch that fills a pixel does: stain taken in, light swallowed.
const TAKES: f32 = 4.2;
const DARKENS: f32 = 0.26;
/// The same on bare wood without stain: spirits show what is hardly seen dry (T23).
const DARKENS_DRY: f32 = 0.2;
const DARKENS_WET: f32 = 0.8;
/// The same in a film: light sent back over dark wood, gain over pale wood, depth of the groove in micrometres.
const PALE: f32 = 0.32;
const BRIGHT: f32 = 0.5;
const GROOVE: f32 = 2.0;
/// Share of a pixel from which it counts as the fault.
const MARKED: f32 = 4.0;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut scratch = Map::of(grid, 0.0);
    lines(&mut scratch, &mut Chance::new(layer(recipe.seed, 1_301)), severity).await;
    curls(&mut scratch, &mut Chance::new(layer(recipe.seed, 1_302)), severity).await;
    for share in &mut scratch.values {
        *share = share.min(1.0);
    }
    for (mask, share) in layers.mask.values.iter_mut().zip(&scratch.values) {
        *mask = mask.max((MARKED * share).min(1.0));
    }
    if lies_in_film(recipe) {
        let film = &mut layers.film;
        let below = film.body.values.iter_mut().zip(&mut film.height.values);
        for ((haze, (body, height)), share) in film.haze.values.iter_mut().zip(below).zip(&scratch.values) {
            *haze = haze.max(PALE * share);
            *body *= 1.0 + BRIGHT * share;
            *height -= GROOVE * share;
        }
        return;
    }
    let darkens = match (recipe.finish, recipe.probe) {
        (Finish::Bare, _) if recipe.stain > 0.0 => DARKENS,
        (Finish::Bare, Probe::Wetted) => DARKENS_WET,
        (Finish::Bare, _) => DARKENS_DRY,
        _ => DARKENS,
    };
    for (body, share) in layers.film.body.values.iter_mut().zip(&scratch.values) {
        *body *= 1.0 - darkens * share;
    }
    for share in &mut scratch.values {
        *share = 1.0 + TAKES * *share;
    }
    uptake::gain(layers, recipe, &scratch).await;
}

/// Whether the scratches of a panel are in its film, from levelling, and not in its wood.
pub(super) fn lies_in_film(recipe: &Recipe) -> bool {
    let plain = recipe.stain <= 0.0 && matches!(recipe.finish, Finish::Rubbed | Finish::Buffed);
    recipe.opaque.is_some() || plain
}

async fn lines(scratch: &mut Map, chance: &mut Chance, severity: Severity) {
    let grid = scratch.grid;
    let lean = chance.between(ANGLE.0, ANGLE.1).to_radians();
    let lean = if chance.even() < 0.5 { lean } else { core::f32::consts::PI - lean };
    let anywhere = |chance: &mut Chance| (chance.even() * grid.width(), chance.even() * grid.height());
    let bundles: [(f32, f32); BUNDLES] = core::array::from_fn(|_| anywhere(chance));
    for _ in 0..whole(severity.of(LINES) * grid.square_centimetres() + 0.5) {
        let (x, y) = if chance.even() < BUNDLED {
            let pick = whole(chance.even() * coordinate(BUNDLES)).min(BUNDLES - 1);
            let (x, y) = bundles.get(pick).copied().unwrap_or_default();
            (x + BUNDLE * chance.normal(), y + 2.0 * BUNDLE * chance.normal())
        } else {
            anywhere(chance)
        };
        pause().await;
        let turn = lean + STRAY * chance.normal();
        let length = chance.about(LENGTH, LENGTH_SPREAD);
        let width = chance.between(WIDTH.0, WIDTH.1);
        let at = |share: f32| {
            let off = length * (share - 0.5);
            (x + off * libm::cosf(turn), y + off * libm::sinf(turn))
        };
        scratch.stroke(at(0.0), at(ENDS), width, END_DEPTH);
        scratch.stroke(at(ENDS), at(1.0 - ENDS), width, 1.0);
        scratch.stroke(at(1.0 - ENDS), at(1.0), width, END_DEPTH);
    }
}

async fn curls(scratch: &mut Map, chance: &mut Chance, severity: Severity) {
    let grid = scratch.grid;
    for _ in 0..whole(severity.of(CURLS) * grid.square_centimetres() + 0.5) {
        let (x, y) = (chance.even() * grid.width(), chance.even() * grid.height());
        let radius = chance.between(CURL_RADIUS.0, CURL_RADIUS.1);
        let (start, way) = (chance.even() * core::f32::consts::TAU, chance.even() * core::f32::consts::TAU);
        let at = |step: usize| {
            let turns = CURL_TURNS * coordinate(step) / coordinate(CURL_STEPS);
            let angle = start + turns * core::f32::consts::TAU;
            let on = CURL_ON * radius * turns;
            (
                x + radius * libm::cosf(angle) + on * libm::cosf(way),
                y + radius * libm::sinf(angle) + on * libm::sinf(way),
            )
        };
        pause().await;
        for step in 0..CURL_STEPS {
            scratch.stroke(at(step), at(step + 1), CURL_WIDTH, 1.0);
        }
    }
}
