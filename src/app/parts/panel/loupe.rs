//! A loupe over the picture: a circle that is moved over the panel, and what lies under it three times as large.

use super::place::{HEIGHT, Place, WIDTH};
use crate::picture::Grid;

/// How much larger things are under the loupe.
pub(super) const ENLARGED: f32 = 3.0;
/// The canvas that the loupe is drawn on, laid over the whole panel, and the loupe's side on it, pixels.
pub(super) const CANVAS: (u32, u32) = (720, 540);
const SIDE: u16 = 300;
/// Pixels of that canvas for each mm of the panel.
const PIXELS_A_MM: f32 = 6.0;
/// Round the panel there is the bench.
const BENCH: [u8; 4] = [42, 44, 45, u8::MAX];

/// The loupe's own view of the panel, cut as finely as it enlarges.
pub(super) fn window(face: Grid, eye: Place) -> Grid {
    face.window((eye.x, eye.y), usize::from(SIDE), 1.0 / (ENLARGED * PIXELS_A_MM))
}

/// Pixels in a row of the loupe.
pub(super) const fn side() -> u32 {
    SIDE as u32
}

/// Where its upper left corner lies on the canvas.
pub(super) fn corner(eye: Place) -> (f64, f64) {
    let at = |mm: f32| f64::from(mm * PIXELS_A_MM - 0.5 * f32::from(SIDE)).round();
    (at(eye.x), at(eye.y))
}

/// The loupe out of a picture of the whole panel, enlarged: what is seen while nothing finer is drawn.
pub(super) fn enlarge(grid: Grid, picture: &[u8], eye: Place, out: &mut Vec<u8>) {
    out.clear();
    let at = |column: usize, row: usize| {
        let place = row.min(grid.rows - 1) * grid.columns + column.min(grid.columns - 1);
        picture.get(4 * place..4 * place + 4).unwrap_or(&BENCH)
    };
    for row in 0..SIDE {
        let (y, fy) = along(row, eye.y, grid.scale);
        for column in 0..SIDE {
            let (x, fx) = along(column, eye.x, grid.scale);
            let corners = [at(x, y), at(x + 1, y), at(x, y + 1), at(x + 1, y + 1)];
            for part in 0..4 {
                let [a, b, c, d] = corners.map(|pixel| pixel.get(part).copied().map_or(0.0, f32::from));
                let (upper, lower) = (a + (b - a) * fx, c + (d - c) * fx);
                out.push(byte(upper + (lower - upper) * fy));
            }
        }
    }
}

/// The pixel of the picture at or before a pixel of the loupe, and the way to the next.
fn along(n: u16, eye: f32, scale: f32) -> (usize, f32) {
    let place = (millimetres(n, eye) / scale - 0.5).max(0.0);
    (whole(place), place.fract())
}

/// Where a pixel of the loupe lies on the panel.
fn millimetres(n: u16, eye: f32) -> f32 {
    eye + (f32::from(n) + 0.5 - 0.5 * f32::from(SIDE)) / (ENLARGED * PIXELS_A_MM)
}

/// Cuts the circle out of the square, and shows the bench where the panel ends.
pub(super) fn cut_round(eye: Place, pixels: &mut [u8]) {
    let radius = 0.5 * f32::from(SIDE);
    let mut pixels = pixels.chunks_exact_mut(4);
    for row in 0..SIDE {
        let y = f32::from(row) + 0.5 - radius;
        let beyond_y = !(0.0..=HEIGHT).contains(&millimetres(row, eye.y));
        for column in 0..SIDE {
            let Some(pixel) = pixels.next() else { return };
            let x = f32::from(column) + 0.5 - radius;
            if beyond_y || !(0.0..=WIDTH).contains(&millimetres(column, eye.x)) {
                pixel.copy_from_slice(&BENCH);
            }
            if let Some(alpha) = pixel.last_mut() {
                *alpha = byte(255.0 * (radius - (x * x + y * y).sqrt()).clamp(0.0, 1.0));
            }
        }
    }
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held within the picture")]
fn whole(value: f32) -> usize {
    value as usize
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a mean of bytes")]
fn byte(value: f32) -> u8 {
    value as u8
}

/// Where a place is seen while the loupe lies over it; `None` where the ring hides it.
pub(super) fn seen_at(place: Place, eye: Option<Place>) -> Option<Place> {
    let Some(eye) = eye else { return Some(place) };
    let radius = 0.5 * f32::from(SIDE) / PIXELS_A_MM;
    let (x, y) = (place.x - eye.x, place.y - eye.y);
    let far = (x * x + y * y).sqrt();
    match far {
        far if far * ENLARGED < radius => Some(Place { x: eye.x + ENLARGED * x, y: eye.y + ENLARGED * y }),
        far if far < radius => None,
        _ => Some(place),
    }
}
