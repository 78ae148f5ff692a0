//! Glue: where it was squeezed out of a joint, wiped about or pressed on by a finger the stain did not go in. The patch is
//! pale with a hard edge, at a joint or as a print, and the wood in it is whole: no scratches round it and no lost gloss, as
//! a cut-through has; blotch has no edge. Wetting bare work shows it before any colour is on.

use super::{glue_print, strip, uptake};
use crate::map::{Map, near};
use crate::noise::{Chance, cloud};
use crate::number::{smooth, whole};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Beads that came out of the joint, for each mm of it; half-width and height of one.
const BEADS: [f32; 3] = [0.04, 0.07, 0.11];
const BEAD_WIDTH: (f32, f32) = (2.0, 9.0);
const BEAD_HEIGHT: [(f32, f32); 3] = [(0.6, 2.6), (1.0, 4.8), (1.4, 7.0)];
/// Beads are wider than high by at least so much.
const FLAT: f32 = 1.3;
/// Outline: how far it wavers, and over which length.
const WAVERS: f32 = 0.16;
const WAVER_LENGTH: f32 = 1.8;
/// Half of the width of the edge: glue ends as a film does.
const EDGE: f32 = 0.1;
/// Drops away from the joint, by at least so many mm, and their radius.
const DROPS: [usize; 3] = [1, 2, 4];
const AWAY: f32 = 4.0;
const LONG: f32 = 1.5;
const DROP: (f32, f32) = (0.8, 1.8);
/// Prints, and where their middles lie: shares of the panel.
const PRINTS: [usize; 3] = [0, 1, 3];
const WITHIN: (f32, f32) = (0.13, 0.85);
/// Strokes of a cloth that dragged wet glue along: for each bead; length, width, strength.
const DRAGGED: f32 = 0.5;
const DRAG: (f32, f32) = (6.0, 22.0);
const DRAG_HALF: (f32, f32) = (0.6, 1.8);
/// Height in the bead at which it starts; how wet it is there against its streaks, and how softly these end.
const DRAG_FROM: f32 = 0.6;
const DRAG_WET: f32 = 0.8;
const DRAG_SOFT: f32 = 0.25;
const DRAG_KEEPS: f32 = 0.5;
const DRAG_STREAK: (f32, f32) = (14.0, 0.3);
/// Share of stain that glue keeps out.
const KEEPS_OUT: f32 = 0.9;
/// Glued wood does not wet out under a film: gain of its body.
const PALE: f32 = 0.42;
/// Share from which a place counts as the fault.
const MARKED: (f32, f32) = (0.05, 0.35);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let line = strip::joint(layers, recipe).await;
    let grid = layers.grid();
    let mut glue = Map::of(grid, 0.0);
    squeeze(&mut glue, recipe.seed, severity, line).await;
    let mut chance = Chance::new(layer(recipe.seed, 1_362));
    for _ in 0..severity.of(DROPS) {
        let (x, y) = (chance.even() * grid.width(), line - chance.between(AWAY, 0.5 * line));
        let radius = chance.between(DROP.0, DROP.1);
        patch(&mut glue, layer(recipe.seed, 1_363), (x, y), (radius * chance.between(1.0, LONG), radius));
        pause().await;
    }
    let mut chance = Chance::new(layer(recipe.seed, 1_364));
    for number in 0..severity.of(PRINTS) {
        let place =
            (chance.between(WITHIN.0, WITHIN.1) * grid.width(), chance.between(WITHIN.0, WITHIN.1) * line);
        let seed = layer(recipe.seed, 1_365 + u32::try_from(number).unwrap_or(0));
        glue_print::press(&mut glue, &mut chance, seed, place).await;
    }
    for (place, share) in glue.values.iter_mut().enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (_, y) = grid.middle(place % grid.columns, place / grid.columns);
        *share *= ((line - y) / grid.scale + 0.5).clamp(0.0, 1.0);
        if let Some(mask) = layers.mask.values.get_mut(place) {
            *mask = mask.max(smooth(MARKED.0, MARKED.1, *share));
        }
        let (film, is_bare) = (&mut layers.film, !recipe.finish.has_film());
        if let (Some(wet), Some(body)) = (film.there.values.get_mut(place), film.body.values.get_mut(place)) {
            if is_bare {
                *wet *= 1.0 - KEEPS_OUT * *share;
            } else {
                *body *= 1.0 + PALE * *share;
            }
        }
        *share = 1.0 - KEEPS_OUT * *share;
    }
    uptake::gain(layers, recipe, &glue).await;
}

/// What came out of the joint, and what a cloth made of it.
async fn squeeze(glue: &mut Map, seed: u32, severity: Severity, line: f32) {
    let grid = glue.grid;
    let mut chance = Chance::new(layer(seed, 1_360));
    let (lowest, highest) = severity.of(BEAD_HEIGHT);
    for _ in 0..whole(severity.of(BEADS) * grid.width() + 0.5) {
        let x = chance.even() * grid.width();
        let high = lowest + (highest - lowest) * chance.even() * chance.even();
        let wide = chance.between(BEAD_WIDTH.0, BEAD_WIDTH.1).max(FLAT * high);
        patch(glue, layer(seed, 1_361), (x, line), (wide, high));
        pause().await;
        if chance.even() < DRAGGED {
            let way = if chance.even() < 0.5 { -1.0 } else { 1.0 };
            let length = chance.between(DRAG.0, DRAG.1);
            let half = chance.between(DRAG_HALF.0, DRAG_HALF.1);
            let start = (x, line - DRAG_FROM * high);
            drag(glue, layer(seed, 1_368), start, way * length, half);
        }
    }
}

/// An oval patch with a hard edge, of these half-axes.
fn patch(glue: &mut Map, seed: u32, (x, y): (f32, f32), (wide, high): (f32, f32)) {
    let edge = EDGE.max(0.5 * glue.grid.scale);
    let grid = glue.grid;
    for (column, row, dx, dy) in near(grid, x, y, wide + 1.0) {
        if dy.abs() > high + 1.0 {
            continue;
        }
        let far = libm::hypotf(dx / wide, dy / high).max(0.001);
        // The way to the outline along the slope of the oval's own field.
        let slope = libm::hypotf(dx / (wide * wide), dy / (high * high)) / far;
        let inside = (1.0 - far) / slope.max(1.0 / wide)
            + WAVERS * cloud(seed, (x + dx) / WAVER_LENGTH, (y + dy) / WAVER_LENGTH);
        raise(glue, column, row, smooth(-edge, edge, inside));
    }
}

/// A stroke of a cloth: streaked, thinner toward its end, with hard sides.
fn drag(glue: &mut Map, seed: u32, (x, y): (f32, f32), length: f32, half: f32) {
    let edge = EDGE.max(0.5 * glue.grid.scale);
    let grid = glue.grid;
    let middle = x + 0.5 * length;
    for (column, row, dx, dy) in near(grid, middle, y, 0.5 * length.abs() + half) {
        if dy.abs() > half + edge {
            continue;
        }
        let gone = ((middle + dx - x) / length).clamp(0.0, 1.0);
        let streak = cloud(seed, (middle + dx) / DRAG_STREAK.0, (y + dy) / DRAG_STREAK.1);
        let sides = smooth(-edge, edge, half * (1.0 - gone * gone) - dy.abs());
        let left = smooth(-DRAG_SOFT, DRAG_SOFT, streak + DRAG_WET * (1.0 - 2.0 * gone));
        raise(glue, column, row, DRAG_KEEPS * sides * left);
    }
}

fn raise(map: &mut Map, column: usize, row: usize, share: f32) {
    let place = row * map.grid.columns + column;
    if column < map.grid.columns
        && let Some(value) = map.values.get_mut(place)
    {
        *value = value.max(share);
    }
}
