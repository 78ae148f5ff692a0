//! Slow fields over a face: worked out at places some way apart, and between them by their neighbours.

use crate::map::{Grid, Map};

/// Distance of the places that are worked out: a field must not change within a few of them.
const APART: f32 = 1.0;

/// A field whose features are several millimetres wide, over the whole face, whatever window is drawn.
pub(super) async fn coarse(grid: Grid, mut value: impl FnMut(f32, f32) -> f32) -> Map {
    let mut field = Map::of(Grid::covering(grid.width() + APART, grid.height() + APART, APART), 0.0);
    field.fill(|x, y, _| value(x, y)).await;
    field
}

/// The same as fine as the window is drawn.
pub(super) async fn spread(coarse: &Map, grid: Grid) -> Map {
    let mut field = Map::of(grid, 0.0);
    field.fill(|x, y, _| coarse.near(x, y)).await;
    field
}

/// Distance of a place from the nearest edge, mm.
pub(super) fn edge(grid: Grid, x: f32, y: f32) -> f32 {
    x.min(y).min(grid.width() - x).min(grid.height() - y)
}

/// Adds to a share that cannot pass one.
pub(super) fn join(share: &mut f32, more: f32) {
    *share += (1.0 - *share) * more;
}
