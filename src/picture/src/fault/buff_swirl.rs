//! Buffing swirl: a mass of fine arcs in the top of the film, left by a coarse compound or a dirty wheel. Each shows only where
//! it is square to the lamp, so that together they circle its image and go with it; a sanding scratch keeps its place, bloom
//! has no lines, a witness line is one closed outline. Under tubes there is hardly more than a veil beside them.

use crate::noise::Chance;
use crate::number::whole;
use crate::panel::{Arc, Layers, Recipe, Severity};
use crate::pause::{MANY, pause};
use crate::wood::layer;

/// Arcs on a square centimetre.
const ARCS: [f32; 3] = [11.0, 18.0, 28.0];
/// Radius of an arc, and its length: a wheel or a pad goes round, and lifts.
const RADIUS: (f32, f32) = (14.0, 74.0);
const LENGTH: (f32, f32) = (5.0, 27.0);
/// Width of a groove: most are fine, some are not.
const WIDTH: [f32; 3] = [0.0070, 0.0076, 0.0082];
const COARSER: f32 = 4.0;
/// Pieces that an arc is drawn in, pixels: longer ones leave gaps.
const PIECE: f32 = 1.1;
/// Where they end beyond the panel.
const BEYOND: f32 = 12.0;
/// All of them together dull a lamp's edge, radians.
const DULLS: [f32; 3] = [0.0005, 0.0009, 0.0014];

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let piece = PIECE * grid.scale;
    let mut chance = Chance::new(layer(recipe.seed, 1_210));
    let face = (grid.width() + 2.0 * BEYOND, grid.height() + 2.0 * BEYOND);
    let spread = face.0 * face.1 / (grid.width() * grid.height());
    for number in 0..whole(severity.of(ARCS) * grid.square_centimetres() * spread) {
        if number.is_multiple_of(MANY) {
            pause().await;
        }
        let (mut x, mut y) = (face.0 * chance.even() - BEYOND, face.1 * chance.even() - BEYOND);
        let start = core::f32::consts::TAU * chance.even();
        let radius = chance.between(RADIUS.0, RADIUS.1);
        let length = chance.between(LENGTH.0, LENGTH.1);
        let coarse = chance.even();
        let width = severity.of(WIDTH) * (1.0 + COARSER * coarse * coarse * coarse);
        let weight = width * piece / (grid.scale * grid.scale);
        let turn = piece / radius;
        let (sine, cosine) = (libm::sinf(turn), libm::cosf(turn));
        let mut along = (libm::cosf(start), libm::sinf(start));
        let mut done = 0.0;
        while done < length {
            let (column, row) = grid.inside(x, y);
            if column >= 0.0 && row >= 0.0 && whole(column) < grid.columns && whole(row) < grid.rows {
                layers.film.arcs.push(Arc { x, y, along, weight });
            }
            (x, y) = (x + piece * along.0, y + piece * along.1);
            along = (along.0 * cosine - along.1 * sine, along.0 * sine + along.1 * cosine);
            done += piece;
        }
    }
    for rough in &mut layers.film.rough.values {
        *rough += severity.of(DULLS);
    }
    layers.mask.values.fill(1.0);
}
