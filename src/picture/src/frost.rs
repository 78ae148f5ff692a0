//! Air in a pore under the film: it mirrors as silver does, and to one side only, so that it brightens and fades as the lamp
//! goes round. What is solid in a pore is the same from everywhere.

use crate::light::Colour;
use crate::number::smooth;

/// Way that the lamp goes on the ceiling from where nothing is seen to where all is, mm either side.
const TURNS: f32 = 210.0;
/// What is left of it where the lamp stands on the wrong side.
const LEFT: f32 = 0.05;
/// A raking lamp at the left or right edge stands so far to that side, mm.
pub(crate) const RAKING: f32 = 420.0;

/// A pixel of a pore with air in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Frost {
    /// The pixel, counted row by row.
    pub(crate) place: usize,
    /// Share of the pore that turns silver.
    pub(crate) share: f32,
    /// Side that it faces: 1 is seen with the lamp on the left, -1 on the right.
    pub(crate) faces: f32,
    /// How far the lamp has to go further for this one, mm.
    pub(crate) further: f32,
}

/// One of them that waits for a lamp.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Frosted {
    /// What it is.
    pub(crate) frost: Frost,
    /// What the pixel sends back more when it is seen.
    pub(crate) more: Colour,
}

impl Frosted {
    /// Share of it that is seen when its pixel looks so far to the right of the lamp, mm on the ceiling.
    pub(crate) fn seen(&self, right: f32) -> f32 {
        LEFT + (1.0 - LEFT) * smooth(-TURNS, TURNS, self.frost.faces * right - self.frost.further)
    }
}
