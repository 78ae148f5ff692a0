//! A band that was wiped with a soft damp cloth, over the place where it tells most.

use crate::map::Map;
use crate::noise::{Chance, cloud};
use crate::number::smooth;
use crate::panel::Layers;
use crate::wood::layer;

/// Half of the band's width, and how softly it ends.
const HALF: f32 = 13.0;
const EDGE: f32 = 1.6;
/// Where it begins, shares of the panel's width from the side that it does not reach, and how softly.
const BEGINS: (f32, f32) = (0.18, 0.32);
const START: f32 = 5.0;
/// The cloth's folds leave streaks: their length, width, and how far they move the edge.
const STREAK: (f32, f32) = (30.0, 2.2);
const RAGGED: f32 = 0.8;
/// The hand swings: by so much, over so many mm.
const SWING: f32 = 2.0;
const SWING_LENGTH: f32 = 60.0;

/// Where a band was wiped clean, 0 to 1: along the grain, through the thickest of what lies on the whole face. It is noted as
/// the mark of the test.
pub(super) async fn band(layers: &mut Layers, lies: &Map, seed: u32) -> Map {
    let grid = layers.grid();
    let seed = |number: u32| layer(seed, 1_290 + number);
    let mut chance = Chance::new(seed(0));
    let begins = chance.between(BEGINS.0, BEGINS.1) * grid.width();
    let from_left = chance.even() < 0.5;
    let soft = lies.blurred(0.5 * HALF).await;
    let row_sum = |row: usize| (0..lies.grid.columns).map(|column| soft.at(column, row)).sum::<f32>();
    let height = |row: usize| lies.grid.middle(0, row).1;
    let inside = |row: &usize| height(*row) > HALF && height(*row) < grid.height() - HALF;
    let thickest = (0..lies.grid.rows).filter(inside).max_by(|a, b| row_sum(*a).total_cmp(&row_sum(*b)));
    let middle = thickest.map_or(0.5 * grid.height(), height);
    layers.mark = Some((0.5 * grid.width(), middle));
    let mut wiped = Map::of(grid, 0.0);
    wiped
        .fill(|x, y, _| {
            let off = y - middle;
            if off.abs() > HALF + SWING + RAGGED + EDGE {
                return 0.0;
            }
            let swing = SWING * cloud(seed(1), x / SWING_LENGTH, 0.0);
            let ragged = RAGGED * cloud(seed(2), x / STREAK.0, y / STREAK.1);
            let along = if from_left { x } else { grid.width() - x };
            let side = smooth(-EDGE, EDGE, HALF - (off - swing).abs() + ragged);
            side * smooth(-START, START, along - begins + START * ragged)
        })
        .await;
    wiped
}
