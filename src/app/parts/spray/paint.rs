//! How a sprayed face looks while it is sprayed: the wood or what lies on it, the coat, its sheen while it is wet, what
//! landed dry, what runs. Tints and sheen are tuned by eye (no source) and measure nothing.

use crate::content::Coat;
use crate::spraying::{Grid, Setup};

/// Red, green and blue, 0 to 255.
type Rgb = [f32; 3];

/// What hangs behind the work: the wall of a booth.
const WALL: Rgb = [196.0, 199.0, 198.0];
/// Bare wood, and where it is darkest in its grain.
const WOOD: Rgb = [214.0, 172.0, 116.0];
const GRAIN: f32 = 0.10;
/// A primed face before its colour.
const PRIMED: Rgb = [226.0, 222.0, 211.0];
/// The solid colour.
const COLOUR: Rgb = [142.0, 40.0, 30.0];
/// The film, µm, of which a solid colour lets a third of what is below it through.
const COVERS: f32 = 38.0;
/// How a clear film and a shading colour take red, green and blue, for each 100 µm.
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
/// Steps of the table of tints, and µm of each.
const STEPS: usize = 1_024;
const STEP: f32 = 1.0;

/// A cell of the film.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen {
    /// Laid, still wet, landed dry, µm.
    pub(super) laid: f32,
    pub(super) wet: f32,
    pub(super) dry: f32,
    /// Film to the right of it less that to the left, and below less above, µm.
    pub(super) slope: f32,
    /// Whether it runs.
    pub(super) runs: bool,
}

/// Paints the cells of one face.
pub(super) struct Painter {
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

impl Painter {
    pub(super) fn new(setup: &Setup, grid: Grid, work: &[bool]) -> Self {
        let primed = setup.task.coat == Coat::Colour && setup.task.shade.is_none();
        let ground = work.iter().enumerate().map(|(cell, work)| {
            work.then(|| if primed { PRIMED } else { wood(cell % grid.columns, cell / grid.columns) })
        });
        let lamp = (0..grid.count()).map(|cell| {
            let (x, y) = (cell % grid.columns, cell / grid.columns);
            lamp(real(x) / real(grid.columns), real(y) / real(grid.rows))
        });
        let film = (0..STEPS).map(|nth| through(setup, real(nth) * STEP));
        Self { ground: ground.collect(), lamp: lamp.collect(), film: film.collect(), columns: grid.columns }
    }

    /// Writes the colour of a cell.
    pub(super) fn paint(&self, cell: usize, seen: Seen, slot: &mut [u8]) {
        let colour = match self.ground.get(cell).copied().flatten() {
            Some(ground) => self.coated(cell, ground, seen),
            None => WALL,
        };
        for (slot, value) in slot.iter_mut().zip(colour.into_iter().chain([255.0])) {
            *slot = byte(value);
        }
    }

    fn coated(&self, cell: usize, ground: Rgb, seen: Seen) -> Rgb {
        let Seen { laid, wet, dry, slope, runs } = seen;
        let nth = step(laid).min(STEPS - 1);
        let (through, adds) = self.film.get(nth).copied().unwrap_or(([1.0; 3], [0.0; 3]));
        let veil = if laid > 0.0 { VEILS * dry / laid } else { 0.0 };
        let mirrors = wet / (wet + MIRRORS);
        let lamp = self.lamp.get(cell).copied().unwrap_or_default();
        let relief = (slope * SLOPE).clamp(-SLOPE_MOST, SLOPE_MOST);
        let trail = if runs && (cell % self.columns).is_multiple_of(TRAIL) { -SLOPE_MOST } else { 0.0 };
        let light = mirrors * (SHEEN + LAMP * lamp + relief) + trail;
        let mut colour = [0.0; 3];
        let parts = ground.into_iter().zip(through).zip(adds).zip(DUST);
        for (slot, (((ground, through), adds), dust)) in colour.iter_mut().zip(parts) {
            let body = ground * through + adds;
            *slot = body + (dust - body) * veil + light;
        }
        colour
    }
}

/// What a film lets through of what is below it, and what it adds.
fn through(setup: &Setup, film: f32) -> (Rgb, Rgb) {
    if setup.task.coat == Coat::Colour && setup.task.shade.is_none() {
        let left = libm::expf(-film / COVERS);
        return ([left; 3], COLOUR.map(|colour| colour * (1.0 - left)));
    }
    let takes = if setup.task.shade.is_some() { SHADE_TAKES } else { CLEAR_TAKES };
    (takes.map(|takes| libm::expf(-takes * film / 100.0)), [0.0; 3])
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
