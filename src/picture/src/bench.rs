//! The bench: where a camera that stands before it looks in the mirror of a panel, and how much is mirrored there. Places are
//! in mm, as the scene has them.

use crate::map::{Grid, Map};

/// Camera: before the near edge, and up.
const CAMERA_BEFORE: f32 = 200.0;
const CAMERA_UP: f32 = 400.0;
/// Height of the ceiling.
const CEILING: f32 = 1_300.0;
/// Index of refraction of a lacquer film.
const INDEX: f32 = 1.5;

/// Slope of the surface at a pixel, from its neighbours: micrometres over millimetres.
pub(crate) fn slopes(height: &Map, column: usize, row: usize) -> (f32, f32) {
    const MICRO: f32 = 1.0e-3;
    let scale = height.grid.scale;
    let (left, up) = (column.saturating_sub(1), row.saturating_sub(1));
    let right = (column + 1).min(height.grid.columns.saturating_sub(1));
    let down = (row + 1).min(height.grid.rows.saturating_sub(1));
    let run = |from: usize, to: usize| crate::number::coordinate((to - from).max(1)) * scale;
    let dx = (height.at(right, row) - height.at(left, row)) / run(left, right);
    let dy = (height.at(column, down) - height.at(column, up)) / run(up, down);
    (dx * MICRO, dy * MICRO)
}

/// Where a place of the panel with a slope looks on the ceiling.
pub(crate) fn ceiling(grid: Grid, x: f32, y: f32, (slope_x, slope_y): (f32, f32)) -> (f32, f32) {
    let (vx, vy) = (0.5 * grid.width() - x, grid.height() + CAMERA_BEFORE - y);
    let far = (vx * vx + vy * vy + CAMERA_UP * CAMERA_UP).sqrt();
    let (vx, vy, vz) = (vx / far, vy / far, CAMERA_UP / far);
    let long = (slope_x * slope_x + slope_y * slope_y + 1.0).sqrt();
    let (nx, ny, nz) = (-slope_x / long, -slope_y / long, 1.0 / long);
    let twice = 2.0 * (nx * vx + ny * vy + nz * vz);
    let (mx, my, mz) = (twice * nx - vx, twice * ny - vy, (twice * nz - vz).max(0.05));
    (x + mx * CEILING / mz, y + my * CEILING / mz)
}

/// Share of unpolarised light that a film mirrors at a place, by Fresnel's equations.
pub(crate) fn fresnel(grid: Grid, x: f32, y: f32) -> f32 {
    let (vx, vy) = (0.5 * grid.width() - x, grid.height() + CAMERA_BEFORE - y);
    let cosine = CAMERA_UP / (vx * vx + vy * vy + CAMERA_UP * CAMERA_UP).sqrt();
    mirrored_share(cosine)
}

/// Fresnel's share for light that falls on a film at an angle of that cosine.
fn mirrored_share(cosine: f32) -> f32 {
    let inner = (1.0 - (1.0 - cosine * cosine) / (INDEX * INDEX)).sqrt();
    let across = (cosine - INDEX * inner) / (cosine + INDEX * inner);
    let along = (INDEX * cosine - inner) / (INDEX * cosine + inner);
    0.5 * (across * across + along * along)
}
