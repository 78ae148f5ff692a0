//! A board of ribbon-striped mahogany, grain running down the picture: grown from its log as every panel is.

use crate::map::{Grid, Map};
use crate::noise::Noise;
use crate::number::{coordinate, mix};
use crate::pause::at_once;
use crate::wood::{Cut, Face, Growth, Pores, Slow, Species, Year, bore};

/// Width of the board in millimetres, whatever the size of the picture.
pub(super) const BOARD_WIDTH: f32 = 110.0;

/// Rows between those for which slow layers are computed; the rows between are mixed.
const SLOW_ROWS: usize = 10;

/// Which piece of wood the board is.
const PIECE: u32 = 11;
/// Distance between growth zones, mm.
const RING: f32 = 7.0;
/// Strength of the ribbon, and of the pale line at the end of a year against its dark zone.
const RIBBON: f32 = 0.5;
const PALE_LINE: f32 = 0.45;
/// Streaks and single fibres.
const STREAK: f32 = 0.6;
const FINE: f32 = 0.35;

/// One value a pixel, row by row.
pub(super) struct Wood {
    /// Millimetres a pixel.
    pub(super) scale: f32,
    pub(super) width: usize,
    /// Light and dark of the growth zones, about 0 to 1, dark high, below 0 in the pale line at the end of a year.
    pub(super) zone: Vec<f32>,
    /// Tilt of the fibre out of the plane, about -1 to 1: the ribbon stripe.
    pub(super) tilt: Vec<f32>,
    /// Fine streaks, about -1 to 1.
    pub(super) fibre: Vec<f32>,
    /// Share of the pixel that is pore.
    pub(super) pore: Vec<f32>,
}

/// The wood of the board: colours are the board's own.
fn mahogany() -> Species {
    let pores = Pores {
        count: 24.0,
        stand: Growth::Diffuse,
        length: 3.0,
        length_spread: 0.6,
        width: 0.2,
        width_spread: 0.05,
    };
    Species {
        ring: RING,
        contrast: 1.0,
        late: Some([0; 3]),
        early_share: 0.6,
        ribbon: RIBBON,
        pores: vec![pores],
        ..Species::plain()
    }
}

/// What is mixed between rows.
#[derive(Clone, Copy)]
struct Lines {
    zone: f32,
    tilt: f32,
    streak: f32,
}

impl Wood {
    pub(super) fn new(width: usize, height: usize, noise: &Noise) -> Self {
        let scale = BOARD_WIDTH / coordinate(width.max(1));
        let species = mahogany();
        let cut = Cut::new(&species, Face::Rift, PIECE, BOARD_WIDTH);
        let mut wood = Self {
            scale,
            width,
            zone: Vec::with_capacity(width * height),
            tilt: Vec::with_capacity(width * height),
            fibre: Vec::with_capacity(width * height),
            pore: Vec::with_capacity(width * height),
        };
        wood.grow(height, &species, &cut, noise);
        wood.bore(height, &species, &cut);
        wood
    }

    /// The log lies along the columns of a panel; here its grain runs down the rows.
    fn slow_row(&self, row: usize, species: &Species, cut: &Cut) -> Vec<Lines> {
        let along = coordinate(row) * self.scale;
        (0..self.width)
            .map(|column| {
                let slow = Slow::at(cut, along, coordinate(column) * self.scale);
                let year = Year::at(species, cut, &slow.place, self.scale);
                let zone = 0.75 * year.early + 0.12 * slow.drift - PALE_LINE * year.late;
                Lines { zone, tilt: slow.ribbon, streak: STREAK * slow.streak }
            })
            .collect()
    }

    fn grow(&mut self, height: usize, species: &Species, cut: &Cut, noise: &Noise) {
        let mut upper = self.slow_row(0, species, cut);
        let mut lower = self.slow_row(SLOW_ROWS, species, cut);
        for row in 0..height {
            let step = row % SLOW_ROWS;
            if step == 0 && row > 0 {
                upper = lower;
                lower = self.slow_row(row + SLOW_ROWS, species, cut);
            }
            let share = coordinate(step) / coordinate(SLOW_ROWS);
            let y = coordinate(row) * self.scale;
            for (column, (above, below)) in upper.iter().zip(&lower).enumerate() {
                let x = coordinate(column) * self.scale;
                self.zone.push(mix(above.zone, below.zone, share));
                self.tilt.push(mix(above.tilt, below.tilt, share));
                self.fibre.push(mix(above.streak, below.streak, share) + FINE * noise.at(y / 3.2, x / 0.3));
            }
        }
    }

    fn bore(&mut self, height: usize, species: &Species, cut: &Cut) {
        let mut map = Map::of(Grid::covering(coordinate(height) * self.scale, BOARD_WIDTH, self.scale), 0.0);
        at_once(bore(&mut map, species, cut));
        for row in 0..height {
            self.pore.extend((0..self.width).map(|column| map.at(row, column)));
        }
    }
}
