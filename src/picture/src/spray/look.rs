//! How a face looks while it is sprayed: the wood or what lies on it, the coat, its sheen while it is wet, what
//! landed dry, what runs. Tints and sheen are tuned by eye (no source) and measure nothing.

use super::Layers;

/// Red, green and blue, 0 to 255.
type Rgb = [f32; 3];

/// Bare wood, and where it is darkest in its grain.
const WOOD: Rgb = [214.0, 172.0, 116.0];
const GRAIN: f32 = 0.10;
/// A primed face before its colour.
const PRIMED: Rgb = [226.0, 222.0, 211.0];
/// The solid colour.
const COLOUR: Rgb = [142.0, 40.0, 30.0];
/// The film, µm, of which a solid colour lets a third of what is below it through.
const COVERS: f32 = 38.0;
/// How a clear film and a shading colour take red, green and blue, for each film of so many µm.
const TAKEN_BY: f32 = 100.0;
const CLEAR_TAKES: Rgb = [0.06, 0.16, 0.42];
const SHADE_TAKES: Rgb = [0.95, 1.7, 2.4];
/// What landed dry looks like, and how much of it veils all below.
const DUST: Rgb = [236.0, 232.0, 224.0];
const VEILS: f32 = 0.75;
/// Film, µm, from which a wet place mirrors well.
const MIRRORS: f32 = 14.0;
/// Sheen of a wet film everywhere, and under the lamp.
const SHEEN: f32 = 16.0;
const LAMP: f32 = 104.0;
/// What a slope of 1 µm from cell to cell changes.
const SLOPE: f32 = 7.0;
const SLOPE_MOST: f32 = 38.0;
/// Two tubes over the stand: where they are mirrored, and half their width, in shares of the width.
const TUBES: [f32; 2] = [0.31, 0.66];
const TUBE: f32 = 0.035;
/// How much the mirrored tubes lean from top to bottom, in shares of the width.
const LEANS: f32 = 0.12;
/// Columns from one trail of a run to the next.
const TRAIL: usize = 5;
/// Bytes of a pixel, and those where there is no work.
const BYTES: usize = 4;
const NOTHING: [u8; BYTES] = [0; BYTES];
/// Steps of the table of tints, and µm of each.
const STEPS: usize = 1_024;
const STEP: f32 = 1.0;

/// What is sprayed, by how it takes light.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Coating {
    /// A clear film on wood.
    Clear,
    /// A transparent colour on wood.
    Shade,
    /// A solid colour on a primed face.
    Solid,
}

/// What the layers come to at a moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// What is kept of the wet film times this is wet.
    pub left: f32,
    /// Wet film that runs, µm.
    pub runs_at: f32,
}

/// Cells as they are seen, row by row of the picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Seen {
    /// The cell at the upper left.
    pub first: usize,
    /// From a cell to the one that is seen to its right.
    pub right: isize,
    /// From a cell to the one that is seen below it.
    pub below: isize,
    /// How many are seen beside each other.
    pub wide: usize,
    /// And how many below each other.
    pub high: usize,
}

/// How one face looks.
#[derive(Debug)]
pub struct Look {
    /// What lies there before the first stroke; nothing where there is no work.
    ground: Vec<Option<Rgb>>,
    /// How bright the tubes are mirrored in each cell, 0 to 1.
    lamp: Vec<f32>,
    /// What a film lets through of the ground, and what it adds, by its µm.
    film: Vec<(Rgb, Rgb)>,
    columns: usize,
}

#[allow(clippy::cast_precision_loss, reason = "cells are few")]
const fn real(count: usize) -> f32 {
    count as f32
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a colour of 0 to 255; `as` stops there"
)]
const fn byte(value: f32) -> u8 {
    value as u8
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a film of some hundred µm")]
const fn step(film: f32) -> usize {
    (film / STEP) as usize
}

impl Look {
    /// A bare face; `work` says of each cell whether it is work.
    #[must_use]
    pub fn new(coating: Coating, columns: usize, work: &[bool]) -> Self {
        let columns = columns.max(1);
        let rows = real(work.len() / columns);
        let bare = |cell: usize| match coating {
            Coating::Solid => PRIMED,
            Coating::Clear | Coating::Shade => wood(cell % columns, cell / columns),
        };
        let ground = work.iter().enumerate().map(|(cell, work)| work.then(|| bare(cell)));
        let lamp = (0..work.len())
            .map(|cell| lamp(real(cell % columns) / real(columns), real(cell / columns) / rows));
        let film = (0..STEPS).map(|nth| through(coating, real(nth) * STEP));
        Self { ground: ground.collect(), lamp: lamp.collect(), film: film.collect(), columns }
    }

    /// Writes the colours of cells that are seen: red, green, blue and alpha bytes by row.
    pub fn paint(&self, layers: &Layers, moment: Moment, seen: Seen, pixels: &mut Vec<u8>) {
        pixels.resize(BYTES * seen.wide * seen.high, 0);
        let mut begins = seen.first;
        for row in pixels.chunks_exact_mut((BYTES * seen.wide).max(1)) {
            let mut cell = begins;
            begins = begins.wrapping_add_signed(seen.below);
            for slot in row.as_chunks_mut::<BYTES>().0 {
                *slot = self.ground.get(cell).copied().flatten().map_or(NOTHING, |ground| {
                    let [red, green, blue] = self.coated(cell, ground, layers, moment);
                    [byte(red), byte(green), byte(blue), u8::MAX]
                });
                cell = cell.wrapping_add_signed(seen.right);
            }
        }
    }

    fn coated(&self, cell: usize, ground: Rgb, layers: &Layers, moment: Moment) -> Rgb {
        let at = |values: &[f32], cell: usize| values.get(cell).copied().unwrap_or_default();
        let laid = at(&layers.laid, cell);
        if laid <= 0.0 {
            return ground;
        }
        let wet = at(&layers.wet, cell) * moment.left;
        let beside = at(&layers.laid, cell + 1) - at(&layers.laid, cell.wrapping_sub(1));
        let below = at(&layers.laid, cell + self.columns) - at(&layers.laid, cell.wrapping_sub(self.columns));
        let (through, adds) =
            self.film.get(step(laid).min(STEPS - 1)).copied().unwrap_or(([1.0; 3], [0.0; 3]));
        let veil = VEILS * at(&layers.dry, cell) / laid;
        let mirrors = wet / (wet + MIRRORS);
        let relief = ((beside + below) * SLOPE).clamp(-SLOPE_MOST, SLOPE_MOST);
        let runs = at(&layers.wettest, cell) >= moment.runs_at;
        let trail = if runs && (cell % self.columns).is_multiple_of(TRAIL) { -SLOPE_MOST } else { 0.0 };
        let light = mirrors * (SHEEN + LAMP * at(&self.lamp, cell) + relief) + trail;
        let body = |nth: usize| {
            let of = |colour: Rgb| colour.get(nth).copied().unwrap_or_default();
            let body = of(ground) * of(through) + of(adds);
            body + (of(DUST) - body) * veil + light
        };
        [body(0), body(1), body(2)]
    }
}

/// What a film lets through of what is below it, and what it adds.
fn through(coating: Coating, film: f32) -> (Rgb, Rgb) {
    let takes = match coating {
        Coating::Clear => CLEAR_TAKES,
        Coating::Shade => SHADE_TAKES,
        Coating::Solid => {
            let left = libm::expf(-film / COVERS);
            return ([left; 3], COLOUR.map(|colour| colour * (1.0 - left)));
        }
    };
    (takes.map(|takes| libm::expf(-takes * film / TAKEN_BY)), [0.0; 3])
}

/// Wood with an even, standing grain.
fn wood(x: usize, y: usize) -> Rgb {
    let (x, y) = (real(x), real(y));
    let wave = libm::sinf(x * 0.9 + libm::sinf(y * 0.021) * 3.0) + libm::sinf(x * 0.37 + y * 0.008);
    WOOD.map(|colour| colour * (1.0 - GRAIN * (0.5 + 0.25 * wave)))
}

/// How bright the tubes are mirrored at shares of width and height.
fn lamp(u: f32, v: f32) -> f32 {
    let leaned = u + LEANS * (v - 0.5);
    let near = |tube: f32| {
        let off = (leaned - tube) / TUBE;
        libm::expf(-off * off)
    };
    TUBES.into_iter().map(near).sum()
}
