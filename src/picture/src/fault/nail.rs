//! A thumbnail pressed into film that gives: a crescent, deepest in its middle.

use crate::map::{Grid, Map};
use crate::number::coordinate;

/// Width of the dent, mm, and pieces of which the crescent is made.
const WIDE: f32 = 0.7;
const STEPS: usize = 24;
/// One that tries the film on purpose: where, shares of the panel, radius of the crescent, mm, and half of its angle.
const TRIED_AT: (f32, f32) = (0.62, 0.4);
const TRIED: (f32, f32) = (6.5, 0.7);

/// A crescent.
#[derive(Debug, Clone, Copy)]
pub(super) struct Nail {
    /// The middle of it, mm.
    pub(super) at: (f32, f32),
    /// Radius, mm, and half of the angle that it spans, radians.
    pub(super) radius: f32,
    pub(super) half: f32,
    /// To which side it bulges, radians.
    pub(super) facing: f32,
}

impl Nail {
    /// The one that tries the film.
    pub(super) fn beside_the_middle(grid: Grid) -> Self {
        let at = (TRIED_AT.0 * grid.width(), TRIED_AT.1 * grid.height());
        Self { at, radius: TRIED.0, half: TRIED.1, facing: -core::f32::consts::FRAC_PI_2 }
    }

    /// Adds its depth, micrometres, to a map of dents.
    pub(super) fn press(self, dents: &mut Map, deep: f32) {
        let (x, y) = self.at;
        let place = |step: usize| {
            let turn = self.facing + self.half * (2.0 * coordinate(step) / coordinate(STEPS) - 1.0);
            // The middle of the crescent lies at the place.
            (
                x + self.radius * (libm::cosf(turn) - libm::cosf(self.facing)),
                y + self.radius * (libm::sinf(turn) - libm::sinf(self.facing)),
            )
        };
        for step in 0..STEPS {
            let middle = 1.0 - libm::fabsf(2.0 * (coordinate(step) + 0.5) / coordinate(STEPS) - 1.0);
            dents.stroke(place(step), place(step + 1), WIDE, deep * libm::sqrtf(middle));
        }
    }
}
