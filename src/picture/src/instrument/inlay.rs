//! What is on a part besides plain wood, and how the light falls on its form.

use super::blank::{Cell, FALLS_OVER};
use super::part::Part;
use super::path::Point;
use crate::number::{coordinate, smooth, whole};

/// The lamp is up and to the left: the way to it.
const TO_LAMP: Point = (-0.64, -0.77);
/// Light falls off from there over the view by this share.
const FALLS: f32 = 0.16;
const BRIGHT: f32 = 1.06;
/// How a face that falls to its rim is lit, for a bow of 1; and a rounded arris.
const BOWED: f32 = 0.46;
const ARRIS: f32 = 0.20;
const ARRIS_WIDE: f32 = 2.6;
/// The line between parts, mm, and what is left of the light there.
const LINE: f32 = 1.2;
const LINE_LIGHT: f32 = 0.38;
/// Rings round a hole: from where to where, mm from its edge, and the mosaic within them, of so many pale pieces.
const RINGS: (f32, f32) = (4.0, 11.0);
const MOSAIC: (f32, f32) = (5.4, 9.6);
const PIECES: f32 = 28.0;
/// Frets: the octave lies this far down the board, as a share of it, and their width, mm.
const OCTAVE: f32 = 1.02;
const FRET: f32 = 1.7;
const SEMITONES: u8 = 12;

/// How squarely a slope that rises a way turns to the lamp, -1 to 1.
pub(super) fn facing(inward: Point) -> f32 {
    -(inward.0 * TO_LAMP.0 + inward.1 * TO_LAMP.1)
}

/// Light that falls on a pixel of a face so bowed.
pub(super) fn lit(size: Point, cell: &Cell, bow: f32) -> f32 {
    let far = (cell.at.0 / size.0.max(1.0) + cell.at.1 / size.1.max(1.0)) * 0.5;
    let inside = cell.inside.max(0.0);
    let falls = (1.0 - cell.rim.max(0.0) / FALLS_OVER).max(0.0);
    let arris = (1.0 - inside / ARRIS_WIDE).max(0.0);
    let form = 1.0 + facing(cell.fall) * BOWED * bow * falls * falls + facing(cell.inward) * ARRIS * arris;
    let line = LINE_LIGHT + (1.0 - LINE_LIGHT) * smooth(-0.5, LINE, cell.inside);
    (BRIGHT - FALLS * far) * form * line
}

/// Shares of a pixel of `scale` mm that are the dark rings of a rosette, and pale pieces laid over these.
pub(super) fn rosette(part: &Part, cell: &Cell, scale: f32) -> (f32, f32) {
    let Some(rosette) = part.rosette else { return (0.0, 0.0) };
    let (x, y) = (cell.at.0 - rosette.middle.0, cell.at.1 - rosette.middle.1);
    let off = libm::hypotf(x, y) - rosette.radius;
    let share = |(from, to): (f32, f32)| ((off - from).min(to - off) / scale + 0.5).clamp(0.0, 1.0);
    let dark = share(RINGS);
    if dark <= 0.0 {
        return (0.0, 0.0);
    }
    let turn = libm::atan2f(y, x) / core::f32::consts::TAU + 0.5;
    let pale = whole(turn * PIECES * 2.0).is_multiple_of(2);
    (dark, if pale { share(MOSAIC) } else { 0.0 })
}

/// Share of a pixel that is fret.
pub(super) fn fret(part: &Part, cell: &Cell) -> f32 {
    if !part.frets {
        return 0.0;
    }
    let bounds = part.paths.first().map(super::path::Path::bounds);
    let Some(((_, top), (_, bottom))) = bounds else { return 0.0 };
    let share = |semitones: f32| 2.0 * OCTAVE * (1.0 - libm::exp2f(-semitones / f32::from(SEMITONES)));
    (1..=SEMITONES)
        .map(|fret| top + (bottom - top) * share(coordinate(usize::from(fret))) - cell.at.1)
        .map(|off| (0.5 * FRET - off.abs() + 0.5).clamp(0.0, 1.0))
        .fold(0.0, f32::max)
}
