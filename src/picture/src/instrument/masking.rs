//! Tape and paper over a part.

use super::blank::Cell;
use super::dyes::{PAPER, TAPE};
use crate::light::{Colour, screen};
use crate::noise::cloud;
use crate::number::{cell as cell_of, coordinate, smooth};

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
const FOLD_SHIFT: f32 = 30.0;
const CREASE: f32 = 1.6;
const FOLD_DEPTH: f32 = 0.16;
const FACET: f32 = 0.025;
/// How far tape holds paper down along the edge, mm.
const HELD: f32 = 7.0;
/// An edge of tape: its dark line, mm.
const EDGE: f32 = 1.1;
const EDGE_DARK: f32 = 0.62;

/// Tape at a place so far within its edge, mm, strip beside strip.
pub(super) fn tape(seed: u32, cell: &Cell, within: f32) -> Colour {
    let (x, y) = cell.at;
    let lap = y.rem_euclid(STRIP);
    let lapped = if lap < LAPPED { LAP_DARK } else { 1.0 };
    strip(seed, (x, y), within).map(|part| part * lapped)
}

/// One strip of tape.
pub(super) fn strip(seed: u32, (x, y): (f32, f32), within: f32) -> Colour {
    let crepe = cloud(seed, (x + 0.4 * y) / CREPE.0, (y - 0.4 * x) / CREPE.1);
    let edge = EDGE_DARK + (1.0 - EDGE_DARK) * smooth(0.0, EDGE, within);
    screen(TAPE).map(|part| part * (1.0 + CREPE_DEPTH * crepe) * edge)
}

/// Paper, held down by tape along the edge.
pub(super) fn paper(seed: u32, cell: &Cell) -> Colour {
    if cell.inside < HELD {
        return strip(seed, cell.at, cell.inside.min(HELD - cell.inside));
    }
    let (x, y) = cell.at;
    let (mut shade, mut number) = (1.0, 0);
    for (u, v) in FOLDS {
        let across = x * u + y * v + FOLD_SHIFT * cloud(seed ^ 7, coordinate(number), 0.5);
        let (facet, within) = cell_of(across / FOLD);
        let tilt = if facet.is_multiple_of(2) { FACET } else { -FACET };
        let crease = (within.min(1.0 - within) * FOLD / CREASE).min(1.0);
        shade *= (1.0 + tilt) * (1.0 - FOLD_DEPTH * (1.0 - crease));
        number += 1;
    }
    screen(PAPER).map(|part| part * shade)
}
