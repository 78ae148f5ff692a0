//! Tape bridge: the film had grown over the edge of the tape and tore when that was pulled: a hard ridge along one straight
//! line, chips out of the film's edge, flakes that stand over onto the binding, a smear of tape glue. No colour ran under
//! the tape, and away from the line the film holds, which it does not where it peels.

use super::{strip, uptake};
use crate::map::near;
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, smooth, whole};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Height of the ridge, micrometres, its half-width, and how its height differs along the line.
const RIDGE: [f32; 3] = [6.5, 10.5, 15.0];
const RIDGE_HALF: f32 = 0.16;
const RIDGE_NOISE: [(f32, f32); 2] = [(9.0, 0.30), (2.2, 0.22)];
/// Its mean and greatest height against the named one.
const MEAN: f32 = 0.8;
const HIGHEST: f32 = 1.3;
/// How far from the line the ridge reaches.
const REACH: f32 = 0.65;
/// Chips, for each mm of line; median size, spread, largest; how much wider than deep.
const CHIPS: [f32; 3] = [0.035, 0.075, 0.13];
const CHIP: [f32; 3] = [0.8, 1.2, 1.6];
const CHIP_SPREAD: f32 = 0.45;
const CHIP_LARGEST: f32 = 4.0;
const CHIP_WIDE: (f32, f32) = (1.1, 2.2);
/// Film is brittle: a chip is a polygon of this many sides, each so far from the middle in shares of the size.
const SIDES: usize = 7;
const SIDE: (f32, f32) = (0.55, 1.05);
/// Its corners are unevenly spread, in shares of a side; it is never larger than so many sizes.
const UNEVEN: f32 = 0.3;
const SPAN: f32 = 1.5;
/// Depth of the step at a chip, micrometres; beside it the film has let go, over so many mm: it is
/// pale, stands up by a share of the step, and counts as the fault where it has let go this far.
const STEP: f32 = 16.0;
const LIFTED: f32 = 0.45;
const LIFTED_HAZE: f32 = 0.22;
const LIFTED_RISE: f32 = 0.6;
const LIFTED_SEEN: (f32, f32) = (0.3, 0.6);
/// Flakes that hang over onto the binding: share of the chips that left one, size against the chip.
const FLAKES: f32 = 0.6;
const FLAKE: (f32, f32) = (0.35, 0.8);
const FLAKE_HEIGHT: f32 = 18.0;
/// Glue of the tape: how far it reaches on the binding and over how much it ends; its cloud, roughness, and where it is.
const GLUE: f32 = 5.0;
const GLUE_EDGE: f32 = 0.3;
/// It is smeared and crumbled: share, length and width of its patches.
const SMEAR: [(f32, f32, f32); 3] = [(0.8, 9.0, 3.0), (0.3, 2.0, 0.4), (0.3, 0.6, 0.6)];
const GLUE_HAZE: [f32; 3] = [0.0, 0.05, 0.09];
const GLUE_ROUGH: f32 = 0.005;
const GLUE_FROM: (f32, f32) = (0.35, 1.2);
/// What counts as the fault: share of the ridge's height.
const MARKED: (f32, f32) = (0.25, 0.5);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let line = strip::taped(layers, recipe).await;
    if !recipe.finish.has_film() {
        return;
    }
    ridge(layers, recipe, severity, line).await;
    let mut chance = Chance::new(layer(recipe.seed, 1_373));
    for _ in 0..whole(severity.of(CHIPS) * layers.grid().width() + 0.5) {
        let x = chance.even() * layers.grid().width();
        let size = chance.about(severity.of(CHIP), CHIP_SPREAD).min(CHIP_LARGEST);
        let wide = chance.between(CHIP_WIDE.0, CHIP_WIDE.1);
        chip(layers, &shard(&mut chance, size, wide), (x, line));
        pause().await;
        if chance.even() < FLAKES {
            let size = size * chance.between(FLAKE.0, FLAKE.1);
            flake(layers, recipe, &shard(&mut chance, size, wide), (x + 0.5 * size * chance.normal(), line));
        }
    }
}

/// The ridge along the line, and glue below it.
async fn ridge(layers: &mut Layers, recipe: &Recipe, severity: Severity, line: f32) {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_374 + number);
    for place in 0..grid.len() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let off = y - line;
        if !(-REACH..=GLUE).contains(&off) {
            continue;
        }
        let noise = |(number, (size, share)): (u32, (f32, f32))| share * cloud(seed(number), x / size, 0.5);
        let stands = (MEAN + (0..).zip(RIDGE_NOISE).map(noise).sum::<f32>()).clamp(0.0, HIGHEST);
        let across = libm::expf(-0.5 * (off / RIDGE_HALF) * (off / RIDGE_HALF));
        let share = stands * across;
        if let Some(height) = layers.film.height.values.get_mut(place) {
            *height += severity.of(RIDGE) * share;
        }
        let layer_of = |(number, (share, long, wide)): (u32, (f32, f32, f32))| {
            share * cloud(seed(3 + number), x / long, off / wide)
        };
        let smear = (0..).zip(SMEAR).map(layer_of).sum::<f32>();
        let glue = smooth(GLUE_FROM.0, GLUE_FROM.1, smear)
            * smooth(0.5 * GLUE_EDGE, GLUE_EDGE, off)
            * (1.0 - smooth(GLUE - GLUE_EDGE, GLUE, off));
        let haze = severity.of(GLUE_HAZE) * glue;
        if let Some(value) = layers.film.haze.values.get_mut(place) {
            *value = value.max(haze);
        }
        if haze > 0.0
            && let Some(value) = layers.film.rough.values.get_mut(place)
        {
            *value += GLUE_ROUGH * glue;
        }
        let seen = smooth(MARKED.0, MARKED.1, share);
        mark(layers, place, if haze > 0.0 { seen.max(glue) } else { seen });
    }
}

/// The sides of a polygon about its middle: normals and distances, mm.
type Shard = ([(f32, f32, f32); SIDES], f32);

fn shard(chance: &mut Chance, size: f32, wide: f32) -> Shard {
    let start = chance.even();
    let sides = core::array::from_fn(|n| {
        let turn =
            core::f32::consts::TAU * (coordinate(n) + start + UNEVEN * chance.normal()) / coordinate(SIDES);
        (libm::cosf(turn) / wide, libm::sinf(turn), size * chance.between(SIDE.0, SIDE.1))
    });
    (sides, size * wide)
}

/// How far a place lies inside a polygon; below 0 outside.
fn inside((sides, _): &Shard, dx: f32, dy: f32) -> f32 {
    sides.iter().map(|(u, v, far)| far - (u * dx + v * dy)).fold(f32::MAX, f32::min)
}

/// Film that is gone: the field's side of the line only.
fn chip(layers: &mut Layers, shard: &Shard, (x, line): (f32, f32)) {
    let grid = layers.grid();
    for (column, row, dx, dy) in near(grid, x, line, SPAN * shard.1 + LIFTED) {
        let deep = inside(shard, dx, dy).min(-dy);
        if deep < -LIFTED || dy > 0.5 * grid.scale {
            continue;
        }
        let place = row * grid.columns + column;
        let gone = (deep / grid.scale + 0.5).clamp(0.0, 1.0);
        let lifted = (1.0 - gone) * smooth(-LIFTED, 0.0, deep);
        let film = &mut layers.film;
        for map in [&mut film.there, &mut film.tint, &mut film.shade] {
            if let Some(value) = map.values.get_mut(place) {
                *value *= 1.0 - gone;
            }
        }
        film.height.add(column, row, STEP * (LIFTED_RISE * lifted - gone));
        if let Some(value) = film.haze.values.get_mut(place) {
            *value = (value.max(LIFTED_HAZE * lifted)) * (1.0 - gone);
        }
        mark(layers, place, gone.max(smooth(LIFTED_SEEN.0, LIFTED_SEEN.1, lifted)));
    }
}

/// Film that stands over onto the binding.
fn flake(layers: &mut Layers, recipe: &Recipe, shard: &Shard, (x, line): (f32, f32)) {
    let grid = layers.grid();
    for (column, row, dx, dy) in near(grid, x, line, SPAN * shard.1) {
        let over = (inside(shard, dx, dy).min(dy) / grid.scale + 0.5).clamp(0.0, 1.0);
        if over <= 0.0 {
            continue;
        }
        let place = row * grid.columns + column;
        layers.film.height.add(column, row, FLAKE_HEIGHT * over);
        if let Some(value) = uptake::colour(layers, recipe, uptake::Colouring::Film).values.get_mut(place) {
            *value = value.max(over);
        }
        mark(layers, place, over);
    }
}

fn mark(layers: &mut Layers, place: usize, share: f32) {
    if let Some(mask) = layers.mask.values.get_mut(place) {
        *mask = mask.max(share);
    }
}
