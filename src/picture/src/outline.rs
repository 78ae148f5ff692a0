//! A line round a fault: it goes round what is marked at a distance, never through it, takes in together what lies close
//! together, and is pale outside and dark inside, so that it stands out on every wood.
//!
//! Round a fault that takes most of the face such a line would read inside out, as if the islands in it were the fault: what
//! is free of it is hatched then.

use crate::map::{Grid, Map};
use crate::number::coordinate;
use crate::panel::Panel;

/// Width of each of the two lines, and room left between them and the fault, mm: by eye.
const LINE: f32 = 0.45;
const ROOM: f32 = 0.9;
/// Parts of a fault that lie no farther than twice this apart are taken in by one line, mm: by eye.
const TOGETHER: f32 = 3.0;
/// A fault whose lines take in more of the face than this is shown by what it leaves free.
const MOST: f32 = 0.5;
/// From one stroke of the hatching to the next, and the width of a stroke and of the dark one beside it, mm: by eye.
const HATCH: f32 = 4.0;
const STROKE: f32 = 0.4;
/// Screen colours of the lines.
const PALE: [u8; 3] = [251, 250, 247];
const DARK: [u8; 3] = [27, 29, 31];

/// The lines round a fault, as pixels of the picture that it was taken from.
#[derive(Debug, Clone, Default)]
pub struct Outline {
    pale: Vec<usize>,
    dark: Vec<usize>,
    hatched: bool,
}

impl Outline {
    /// The lines round what a map marks.
    pub(crate) fn of(mask: &Map) -> Self {
        let grid = mask.grid;
        let mut outline = Self::default();
        // What is near the fault, and of that what is not near the rest of the panel: gaps and small islands close up.
        let near =
            distances(grid, |place| mask.values.get(place).is_some_and(|share| *share > Panel::TOUCHED));
        let rest = |place: usize| near.get(place).is_some_and(|far| *far > TOGETHER);
        let inside: Vec<f32> =
            distances(grid, rest).into_iter().map(|far| far - (TOGETHER - ROOM - 2.0 * LINE)).collect();
        let taken = inside.iter().filter(|inside| **inside >= 0.0).count();
        outline.hatched = coordinate(taken) > MOST * coordinate(grid.len());
        for (place, inside) in inside.into_iter().enumerate() {
            let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
            if inside < 0.0 {
                // The strokes keep off the line, so that it stays one.
                let stroke = (x + y) * core::f32::consts::FRAC_1_SQRT_2 % HATCH;
                if outline.hatched && inside < -ROOM {
                    outline.add(place, stroke, STROKE);
                }
                continue;
            }
            // Where a fault runs over the edge of the panel the line keeps to the edge.
            let edge = x.min(y).min(grid.width() - x).min(grid.height() - y);
            outline.add(place, edge.min(inside), LINE);
        }
        outline
    }

    /// Adds a pixel that lies so far into a pale stroke with a dark one beside it, mm.
    fn add(&mut self, place: usize, far: f32, wide: f32) {
        if (0.0..wide).contains(&far) {
            self.pale.push(place);
        } else if (wide..2.0 * wide).contains(&far) {
            self.dark.push(place);
        }
    }

    /// Whether it is the rest of the face that is hatched.
    #[must_use]
    pub const fn is_hatched(&self) -> bool {
        self.hatched
    }

    /// Draws the lines on a picture of the same grid: red, green, blue and alpha bytes.
    pub fn draw(&self, pixels: &mut [u8]) {
        for (places, colour) in [(&self.pale, PALE), (&self.dark, DARK)] {
            for place in places {
                if let Some(slots) = pixels.get_mut(4 * place..4 * place + 3) {
                    slots.copy_from_slice(&colour);
                }
            }
        }
    }
}

/// How far each pixel is from the nearest of some pixels, mm, in two passes of steps to neighbours.
fn distances(grid: Grid, is_from: impl Fn(usize) -> bool) -> Vec<f32> {
    let (columns, rows, scale) = (grid.columns, grid.rows, grid.scale);
    let aslant = core::f32::consts::SQRT_2 * scale;
    // Farther than any line.
    let beyond = scale * coordinate(columns + rows);
    let mut far: Vec<f32> = (0..grid.len()).map(|place| if is_from(place) { 0.0 } else { beyond }).collect();
    let mut pass = |place: usize, back: bool| {
        let (column, row) = (place % columns, place / columns);
        let (here, before) = if back { (rows - 1 - row, columns - 1 - column) } else { (row, column) };
        let (first, last) = (before > 0, before + 1 < columns);
        let above = here > 0;
        let at = |far: &[f32], apart: usize| {
            let other = if back { place + apart } else { place.wrapping_sub(apart) };
            far.get(other).copied().unwrap_or(beyond)
        };
        let near = [
            (first, 1, scale),
            (above, columns, scale),
            (above && first, columns + 1, aslant),
            (above && last, columns - 1, aslant),
        ];
        let nearest = near
            .into_iter()
            .filter(|(there, ..)| *there)
            .map(|(_, apart, step)| at(&far, apart) + step)
            .fold(beyond, f32::min);
        if let Some(slot) = far.get_mut(place) {
            *slot = slot.min(nearest);
        }
    };
    for place in 0..columns * rows {
        pass(place, false);
    }
    for place in (0..columns * rows).rev() {
        pass(place, true);
    }
    far
}
