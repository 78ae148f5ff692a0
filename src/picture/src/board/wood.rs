//! A board of ribbon-striped mahogany, grain running down the picture.

use crate::noise::{Chance, Noise};
use crate::number::{coordinate, mix, smooth, whole};

/// Width of the board in millimetres, whatever the size of the picture.
pub(super) const BOARD_WIDTH: f32 = 110.0;

/// Rows between those for which slow layers are computed; the rows between are mixed.
const SLOW_ROWS: usize = 8;

/// Distance between growth zones, mm.
const RING: f32 = 7.0;
/// Pores a square centimetre, their length and its spread, width and its spread, mm.
const PORES: f32 = 24.0;
const PORE_LENGTH: f32 = 3.0;
const PORE_LENGTH_SPREAD: f32 = 0.6;
const PORE_WIDTH: f32 = 0.22;
const PORE_WIDTH_SPREAD: f32 = 0.05;
/// Slope of single pores against the grain.
const PORE_SLOPE: f32 = 0.02;
const SQUARE_CENTIMETRE: f32 = 100.0;

/// One value a pixel, row by row.
pub(super) struct Wood {
    /// Millimetres a pixel.
    pub(super) scale: f32,
    pub(super) width: usize,
    /// Light and dark of the growth zones, about 0 to 1, dark high.
    pub(super) zone: Vec<f32>,
    /// Tilt of the fibre out of the plane, about -1 to 1: the ribbon stripe.
    pub(super) tilt: Vec<f32>,
    /// Fine streaks, about -1 to 1.
    pub(super) fibre: Vec<f32>,
    /// Share of the pixel that is pore.
    pub(super) pore: Vec<f32>,
}

impl Wood {
    pub(super) fn new(width: usize, height: usize, noise: &Noise) -> Self {
        let scale = BOARD_WIDTH / coordinate(width.max(1));
        let mut wood = Self {
            scale,
            width,
            zone: Vec::with_capacity(width * height),
            tilt: Vec::with_capacity(width * height),
            fibre: Vec::with_capacity(width * height),
            pore: vec![0.0; width * height],
        };
        wood.grow(height, noise);
        wood.bore(height, noise);
        wood
    }

    fn slow_row(&self, row: usize, noise: &Noise) -> Vec<(f32, f32)> {
        let y = coordinate(row) * self.scale;
        (0..self.width)
            .map(|column| {
                let x = coordinate(column) * self.scale;
                let bend = 2.6 * noise.at(y / 70.0, x / 45.0) + 0.5 * noise.at(y / 23.0 + 7.3, x / 14.0);
                let ring = (x + bend + 9.0) / RING + 0.55 * noise.at(3.7, x / (2.7 * RING));
                let phase = ring - ring.floor();
                let early = smooth(0.0, 0.22, phase) * (1.0 - smooth(0.35, 1.0, phase));
                let ribbon = noise.at(y / 160.0 + 11.0, (x + bend) / 8.5)
                    + 0.45 * noise.at(y / 60.0, (x + bend) / 3.5);
                (0.75 * early + 0.25 * noise.at(y / 110.0, x / 5.0), ribbon)
            })
            .collect()
    }

    fn grow(&mut self, height: usize, noise: &Noise) {
        let mut upper = self.slow_row(0, noise);
        let mut lower = self.slow_row(SLOW_ROWS, noise);
        for row in 0..height {
            let step = row % SLOW_ROWS;
            if step == 0 && row > 0 {
                upper = lower;
                lower = self.slow_row(row + SLOW_ROWS, noise);
            }
            let share = coordinate(step) / coordinate(SLOW_ROWS);
            let y = coordinate(row) * self.scale;
            for (column, ((zone, tilt), (zone_below, tilt_below))) in upper.iter().zip(&lower).enumerate() {
                let x = coordinate(column) * self.scale;
                let fibre = 0.6 * noise.at(y / 38.0, x / 1.1) + 0.7 * noise.at(y / 13.0 + 5.0, x / 0.5);
                self.zone.push(mix(*zone, *zone_below, share));
                self.tilt.push(mix(*tilt, *tilt_below, share));
                self.fibre.push(fibre);
            }
        }
    }

    /// Cuts the pores: each a dash along the fibre, cut at a random depth, its ends tapered.
    fn bore(&mut self, height: usize, noise: &Noise) {
        let tall = coordinate(height) * self.scale;
        let mut chance = Chance::new(0x5EED);
        let count = whole(PORES * BOARD_WIDTH * tall / SQUARE_CENTIMETRE);
        for _ in 0..count {
            let (x, y) = (chance.even() * BOARD_WIDTH, chance.even() * tall);
            let length = PORE_LENGTH * libm::expf(PORE_LENGTH_SPREAD * chance.normal());
            let width = (PORE_WIDTH + PORE_WIDTH_SPREAD * chance.normal()) * chance.even().sqrt();
            let slope = PORE_SLOPE * (noise.at(y / 70.0, x / 50.0) + chance.normal());
            let crowded = 0.7 + 0.5 * noise.at(y / 30.0, x / 6.0);
            if chance.even() < crowded {
                self.cut(height, x, y, length, width, slope);
            }
        }
        for pore in &mut self.pore {
            *pore = pore.min(1.0);
        }
    }

    fn cut(&mut self, height: usize, x: f32, y: f32, length: f32, width: f32, slope: f32) {
        let first = whole((y - 0.5 * length) / self.scale);
        let last = whole((y + 0.5 * length) / self.scale).min(height.saturating_sub(1));
        for row in first..=last {
            let off = coordinate(row) * self.scale - y;
            let end = (2.0 * off / length).abs();
            let wide = width * (1.0 - end * end * end).max(0.0) / self.scale;
            let middle = (x + slope * off) / self.scale;
            let (from, to) = (middle - 0.5 * wide, middle + 0.5 * wide);
            for column in whole(from)..=whole(to).min(self.width.saturating_sub(1)) {
                let cover = to.min(coordinate(column + 1)) - from.max(coordinate(column));
                if let Some(pixel) = self.pore.get_mut(row * self.width + column) {
                    *pixel += cover.max(0.0);
                }
            }
        }
    }
}
