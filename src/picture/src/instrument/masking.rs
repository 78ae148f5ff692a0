//! Tape and paper over a part.

use super::blank::Cell;
use super::dyes::{PAPER, TAPE};
use crate::light::{Colour, screen};
use crate::noise::cloud;
use crate::number::{cell as cell_of, smooth};

/// Width of a strip of tape, and of the dark line where one lies over the next, mm.
const STRIP: f32 = 19.0;
const LAPPED: f32 = 1.0;
const LAP_DARK: f32 = 0.84;
/// Crêpe: distance between wrinkles, their length and depth.
const CREPE: (f32, f32) = (1.8, 11.0);
const CREPE_DEPTH: f32 = 0.05;
/// Folds of paper: ways square to them, how far apart and how wide, mm, how dark, and how the facets between are lit.
const FOLDS: [(f32, f32); 2] = [(0.94, 0.34), (-0.26, 0.97)];
const FOLD: f32 = 84.0;
const CREASE: f32 = 1.6;
const FOLD_DEPTH: f32 = 0.16;
const FACET: f32 = 0.025;
/// How far tape holds paper down along the edge, mm.
const HELD: f32 = 7.0;
/// An edge of tape: its dark line, mm.
const EDGE: f32 = 1.1;
const EDGE_DARK: f32 = 0.62;

/// A mask at a pixel: its colour, on which more may be sprayed, and the light that its form lets it send back.
pub(super) struct Mask {
    pub(super) colour: Colour,
    pub(super) light: f32,
}

/// What masks are made of, in linear light.
pub(super) struct Masks {
    tape: Colour,
    paper: Colour,
    seed: u32,
}

impl Masks {
    pub(super) fn new(seed: u32) -> Self {
        Self { tape: screen(TAPE), paper: screen(PAPER), seed }
    }

    /// Tape over a whole part, strip beside strip.
    pub(super) fn strips(&self, cell: &Cell) -> Mask {
        let lapped = if cell.at.1.rem_euclid(STRIP) < LAPPED { LAP_DARK } else { 1.0 };
        let strip = self.strip(cell, cell.inside);
        Mask { light: strip.light * lapped, ..strip }
    }

    /// One strip of tape at a place so far within its edge, mm.
    pub(super) fn strip(&self, cell: &Cell, within: f32) -> Mask {
        let (x, y) = cell.at;
        let crepe = cloud(self.seed, (x + 0.4 * y) / CREPE.0, (y - 0.4 * x) / CREPE.1);
        let edge = EDGE_DARK + (1.0 - EDGE_DARK) * smooth(0.0, EDGE, within);
        Mask { colour: self.tape, light: (1.0 + CREPE_DEPTH * crepe) * edge }
    }

    /// Paper, held down by tape along the edge.
    pub(super) fn paper(&self, cell: &Cell) -> Mask {
        if cell.inside < HELD {
            return self.strip(cell, cell.inside.min(HELD - cell.inside));
        }
        let (x, y) = cell.at;
        let mut light = 1.0;
        for (u, v) in FOLDS {
            let (facet, within) = cell_of((x * u + y * v) / FOLD);
            let tilt = if facet.is_multiple_of(2) { FACET } else { -FACET };
            let crease = (within.min(1.0 - within) * FOLD / CREASE).min(1.0);
            light *= (1.0 + tilt) * (1.0 - FOLD_DEPTH * (1.0 - crease));
        }
        Mask { colour: self.paper, light }
    }
}
