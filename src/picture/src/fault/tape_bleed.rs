//! Bleed under tape: where the edge of the tape did not lie down, colour was drawn under it onto the binding: thin fingers
//! from one straight line, blunt at first and feathered at the tip, and hairs along the grain of the strip. The film itself
//! is whole at the line, which it is not after a bridge; dye that bleeds spreads softly and minds no line.

use super::{strip, uptake};
use crate::map::Map;
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, smooth, whole};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Fingers on a panel 120 mm long, for each mm of line; share of them that lies where the tape was loose, and how many such
/// places there are, and how wide.
const FINGERS: [f32; 3] = [0.2, 0.4, 0.65];
const LOOSE: f32 = 0.65;
const PLACES: [usize; 3] = [2, 3, 4];
const PLACES_MOST: usize = 4;
const PLACE: f32 = 7.0;
/// Median length of a finger, its spread and the longest; width at its root and its share at the tip.
const LENGTH: [f32; 3] = [1.1, 1.8, 2.6];
const LENGTH_SPREAD: f32 = 0.55;
const LONGEST: f32 = 7.5;
const WIDTH: (f32, f32) = (0.5, 1.5);
const TIP: f32 = 0.15;
/// Build at its root, and the share of it that is lost toward the tip.
const DENSE: f32 = 1.7;
const THINS: f32 = 0.75;
/// Steps that a finger is drawn in, and how far it strays in each, in shares of a step.
const STEPS: usize = 8;
const STRAYS: f32 = 0.16;
/// Hairs that leave it along the grain: chance at each step, median length, width, strength.
const HAIRS: f32 = 0.7;
const HAIR: f32 = 0.9;
const HAIR_WIDTH: f32 = 0.13;
const HAIR_BUILD: f32 = 0.55;
/// Colour creeps a little along the whole line: mean reach, and how it differs along it.
const CREEP: [f32; 3] = [0.08, 0.16, 0.28];
const CREEP_NOISE: [(f32, f32); 2] = [(2.1, 0.6), (0.5, 0.4)];
/// Nothing creeps farther than so many means.
const FAR: f32 = 8.0;
/// The whole is as soft as this.
const SOFT: f32 = 0.11;
/// Most build under the tape against the field's.
const MOST: f32 = 1.9;
/// Build from which a place counts as the fault.
const MARKED: (f32, f32) = (0.05, 0.25);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let line = strip::taped(layers, recipe).await;
    let grid = layers.grid();
    let mut leak = Map::of(grid, 0.0);
    let mut chance = Chance::new(layer(recipe.seed, 1_350));
    let places: [f32; PLACES_MOST] = core::array::from_fn(|_| chance.even() * grid.width());
    for _ in 0..whole(severity.of(FINGERS) * grid.width() + 0.5) {
        let pick = whole(chance.even() * coordinate(severity.of(PLACES))).min(PLACES_MOST - 1);
        let x = if chance.even() < LOOSE {
            places.get(pick).copied().unwrap_or(0.0) + PLACE * chance.normal()
        } else {
            chance.even() * grid.width()
        };
        let length = chance.about(severity.of(LENGTH), LENGTH_SPREAD).min(LONGEST);
        finger(&mut leak, &mut chance, (x, line), length);
        pause().await;
    }
    creep(&mut leak, recipe, line, severity.of(CREEP)).await;
    let leak = leak.blurred(SOFT).await;
    for (place, leak) in leak.values.iter().enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (_, y) = grid.middle(place % grid.columns, place / grid.columns);
        let under = ((y - line) / grid.scale + 0.5).clamp(0.0, 1.0);
        let build = MOST * under * (1.0 - libm::expf(-leak));
        if let Some(value) = uptake::colour(layers, recipe, uptake::Colouring::Film).values.get_mut(place) {
            *value += build;
        }
        if let Some(mask) = layers.mask.values.get_mut(place) {
            *mask = mask.max(smooth(MARKED.0, MARKED.1, build));
        }
    }
}

/// One finger, down from the line, thinner and paler to its tip.
fn finger(leak: &mut Map, chance: &mut Chance, (x, line): (f32, f32), length: f32) {
    let step = length / coordinate(STEPS);
    let root = chance.between(WIDTH.0, WIDTH.1);
    let (mut x, mut y) = (x, line);
    for n in 0..STEPS {
        let gone = coordinate(n) / coordinate(STEPS);
        let (from, strays) = ((x, y), STRAYS * step * chance.normal());
        (x, y) = (x + strays, y + step);
        let width = root * (1.0 - (1.0 - TIP) * libm::sqrtf(gone));
        leak.stroke(from, (x, y), width, DENSE * (1.0 - THINS * gone));
        if chance.even() < HAIRS {
            let way = if chance.even() < 0.5 { -1.0 } else { 1.0 };
            let reach = way * chance.about(HAIR, 0.5) * (1.0 - 0.5 * gone);
            let from = (x + 0.5 * width * way, y);
            leak.stroke(from, (from.0 + 0.5 * reach, y), HAIR_WIDTH, HAIR_BUILD);
            leak.stroke(from, (from.0 + reach, y), HAIR_WIDTH, 0.5 * HAIR_BUILD);
        }
    }
}

/// What creeps along the whole line.
async fn creep(leak: &mut Map, recipe: &Recipe, line: f32, mean: f32) {
    let grid = leak.grid;
    leak.fill(|x, y, value| {
        let off = y - line;
        if off < -grid.scale || off > FAR * mean {
            return value;
        }
        let noise = |(number, (size, share)): (u32, (f32, f32))| {
            share * cloud(layer(recipe.seed, 1_351 + number), x / size, 0.5)
        };
        let reach = mean * libm::expf((0..).zip(CREEP_NOISE).map(noise).sum());
        let cover = ((reach - off) / grid.scale + 0.5).clamp(0.0, 1.0);
        value + cover * DENSE
    })
    .await;
}
