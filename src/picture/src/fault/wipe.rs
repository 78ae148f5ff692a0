//! A band that was wiped with a soft damp cloth, over the place where it tells most.

use crate::map::{Grid, Map};
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, smooth};
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

/// Where a band was wiped clean, 0 to 1: along the grain, through the thickest of what lies on the whole face.
pub(super) async fn band(grid: Grid, lies: &Map, seed: u32) -> Map {
    let seed = |number: u32| layer(seed, 1_290 + number);
    let mut chance = Chance::new(seed(0));
    let begins = chance.between(BEGINS.0, BEGINS.1) * grid.width();
    let from_left = chance.even() < 0.5;
    let middle = through(lies);
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

/// How far from the far edge a band runs, mm: through the thickest of what lies on the face, and whole on the panel.
pub(crate) fn through(lies: &Map) -> f32 {
    let grid = lies.grid;
    let height = |row: usize| lies.grid.middle(0, row).1;
    let sums: Vec<f32> =
        (0..grid.rows).map(|row| (0..grid.columns).map(|column| lies.at(column, row)).sum()).collect();
    // What lies near the middle of the band counts most.
    let weight = |rows: usize| {
        let off = coordinate(rows) * grid.scale / (0.5 * HALF);
        libm::expf(-0.5 * off * off)
    };
    let weights: Vec<f32> = (0..grid.rows).map(weight).collect();
    let under = |row: usize| {
        sums.iter()
            .enumerate()
            .map(|(other, sum)| sum * weights.get(row.abs_diff(other)).unwrap_or(&0.0))
            .sum::<f32>()
    };
    let inside = |row: &usize| height(*row) > HALF && height(*row) < grid.height() - HALF;
    let thickest = (0..grid.rows).filter(inside).max_by(|a, b| under(*a).total_cmp(&under(*b)));
    thickest.map_or(0.5 * grid.height(), height)
}
