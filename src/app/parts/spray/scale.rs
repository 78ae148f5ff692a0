//! The scale of the film map: it falls in lightness, with lines where it passes a limit and patterns for what lies outside of
//! it, so that no colour is needed to read it.

use crate::spraying::{Setup, Sprayer};

/// Red, green and blue of the scale from no film to its end: each darker than the one before.
const SCALE: [[f32; 3]; 6] = [
    [252.0, 251.0, 247.0],
    [243.0, 226.0, 180.0],
    [224.0, 180.0, 104.0],
    [188.0, 124.0, 56.0],
    [124.0, 70.0, 30.0],
    [48.0, 24.0, 12.0],
];
const INK: Pixel = [27, 29, 31, 255];
const PAPER: Pixel = [251, 250, 247, 255];
/// What is no work.
const BESIDE: Pixel = [214, 216, 214, 255];
/// Pixels of a cell each way.
const FINE: usize = 2;
/// Pixels from one line of a pattern to the next, and of a dot.
const APART: usize = 9;
const DOT: usize = 3;
const BYTES: usize = 4;
/// Red, green, blue and alpha.
type Pixel = [u8; BYTES];
/// Size of the strip of the scale.
const STRIP: (usize, usize) = (480, 24);
/// The scale ends at so many times the thickest film that is wanted.
const BEYOND: f64 = 1.6;
/// A fade is told by lines at parts of its deepest film.
const PARTS: f64 = 4.0;

/// A picture: its width, its height, its bytes.
pub(super) type Pixels = (usize, usize, Vec<u8>);

/// Where the scale ends and where its lines run, µm of wet film.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Marks {
    pub(in crate::app) end: f64,
    pub(in crate::app) lines: Vec<f64>,
    /// Thinnest and thickest film that is wanted: what lies outside of them has a pattern.
    window: Option<(f64, f64)>,
}

/// What a place of the map is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Class {
    Missed,
    Thin,
    Heavy,
    /// Within the limits, or between which lines.
    Between(usize),
}

impl Marks {
    /// Those of a task.
    pub(in crate::app) fn of(setup: &Setup) -> Self {
        if let Some((from, to)) = setup.window() {
            return Self { end: to * BEYOND, lines: vec![from, to], window: Some((from, to)) };
        }
        let deepest = setup.task.shade.map_or(0.0, |shade| shade.depth * setup.coat());
        let lines = (1_u8..).map(|nth| f64::from(nth) * deepest / PARTS).take_while(|line| *line <= deepest);
        Self { end: deepest * BEYOND, lines: lines.collect(), window: None }
    }

    fn class(&self, film: f64) -> Class {
        match self.window {
            Some((from, _)) if film < crate::spraying::reading::places::MISSED * from => Class::Missed,
            Some((from, _)) if film < from => Class::Thin,
            Some((_, to)) if film > to => Class::Heavy,
            _ => Class::Between(self.lines.iter().filter(|line| **line <= film).count()),
        }
    }

    /// A film as it is drawn.
    fn tint(&self, film: f64) -> Tint {
        Tint { class: self.class(film), colour: shade(film / self.end) }
    }
}

/// How a film is drawn: what it is, and its colour where no pattern lies on it.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Tint {
    class: Class,
    colour: Pixel,
}

impl Tint {
    /// Its colour at a pixel.
    const fn at(self, (x, y): (usize, usize)) -> Pixel {
        let down = (x + y).is_multiple_of(APART);
        let up = (x + APART - y % APART).is_multiple_of(APART);
        let dot = x % APART < DOT && y % APART < DOT;
        match self.class {
            Class::Missed if down || up => INK,
            Class::Thin if down => INK,
            Class::Heavy if dot => PAPER,
            _ => self.colour,
        }
    }
}

/// The colour of the scale at a share of it.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a share of 0 to 1 of few colours"
)]
fn shade(share: f64) -> Pixel {
    /// Steps between the colours of the scale.
    const STEPS: f64 = 5.0;
    let at = share.clamp(0.0, 1.0) * STEPS;
    let nth = (at as usize).min(SCALE.len() - 2);
    let pair = SCALE.get(nth).copied().zip(SCALE.get(nth + 1).copied());
    let (from, to) = pair.unwrap_or_default();
    let part = (at - at.floor()) as f32;
    let part = if at >= STEPS { 1.0 } else { part };
    let mut pixel = INK;
    for (slot, (from, to)) in pixel.iter_mut().zip(from.into_iter().zip(to)) {
        *slot = (from + (to - from) * part) as u8;
    }
    pixel
}

/// The pixels of a map.
pub(super) fn map(sprayer: &Sprayer, marks: &Marks) -> Pixels {
    let film = sprayer.film();
    let grid = film.grid();
    let work = grid.work(&sprayer.setup().outline);
    // A cell has several pixels: each is looked at once.
    let tint = |(laid, work): (&f32, &bool)| work.then(|| marks.tint(f64::from(*laid)));
    let tints: Vec<Option<Tint>> = film.laid().iter().zip(&work).map(tint).collect();
    let tint_of = |cell: usize| tints.get(cell).copied().flatten();
    let (wide, high) = (grid.columns * FINE, grid.rows * FINE);
    let mut pixels = vec![0; BYTES * wide * high];
    for (y, row) in pixels.chunks_exact_mut(BYTES * wide).enumerate() {
        let first = y / FINE * grid.columns;
        for (x, slot) in row.as_chunks_mut::<BYTES>().0.iter_mut().enumerate() {
            let cell = first + x / FINE;
            let Some(here) = tint_of(cell) else {
                *slot = BESIDE;
                continue;
            };
            let passes = |other: usize| tint_of(other).is_some_and(|other| other.class != here.class);
            // A limit is passed to the next cell on the right, or on the one below.
            let line = (x % FINE + 1 == FINE && passes(cell + 1))
                || (y % FINE + 1 == FINE && passes(cell + grid.columns));
            *slot = if line { INK } else { here.at((x, y)) };
        }
    }
    (wide, high, pixels)
}

#[allow(clippy::cast_precision_loss, reason = "a strip of some hundred pixels")]
pub(super) fn strip(marks: &Marks) -> Pixels {
    let (wide, high) = STRIP;
    let mut pixels = vec![0; BYTES * wide * high];
    for (nth, slot) in pixels.as_chunks_mut::<BYTES>().0.iter_mut().enumerate() {
        let (x, y) = (nth % wide, nth / wide);
        *slot = marks.tint(x as f64 / wide as f64 * marks.end).at((x, y));
    }
    (wide, high, pixels)
}
