//! Wood, from the log outward: rings, colour, pores, rays, figure.

mod cut;
mod pores;
mod species;

pub use species::{Clouds, Flecks, Growth, Pores, Rays, Screen, Species};

use crate::light::{Colour, screen};
use crate::map::{Grid, Map};
use crate::noise::{cloud, hash};
use crate::number::{mix, smooth};
pub(crate) use cut::Cut;

/// How far the share of stain that wood takes follows its parts (by eye).
const TAKES_EARLY: f32 = 0.22;
const TAKES_STREAK: f32 = 0.12;
const TAKES_FINE: f32 = 0.10;

/// The wood of a panel, before anything is done to it.
#[derive(Debug, Clone)]
pub(crate) struct Wood {
    /// Red, green and blue without the pores, linear.
    pub(crate) colour: [Map; 3],
    /// Share of earlywood.
    pub(crate) early: Map,
    /// Streaks and single fibres, about -1 to 1.
    pub(crate) fibre: Map,
    /// Tilt of the fibre out of the face, about -1 to 1.
    pub(crate) tilt: Map,
    /// Share of the pixel that is pore.
    pub(crate) pore: Map,
    /// How much stain it takes: 1 on the mean.
    pub(crate) takes: Map,
}

impl Wood {
    /// Nothing grown yet.
    pub(crate) fn blank(grid: Grid) -> Self {
        let map = || Map::of(grid, 0.0);
        Self {
            colour: [map(), map(), map()],
            early: map(),
            fibre: map(),
            tilt: map(),
            pore: map(),
            takes: Map::of(grid, 1.0),
        }
    }

    /// Grows one row of pixels.
    pub(crate) fn grow(&mut self, species: &Species, cut: &Cut, row: usize) {
        let grid = self.early.grid;
        let paint = Paint::of(species);
        for column in 0..grid.columns {
            let (x, y) = grid.middle(column, row);
            let ring = cut.ring(x, y);
            let fibre = cut.fibre(x, y, ring);
            let early = cut.early(ring);
            let colour = paint.wood(species, cut, &ring, early, fibre, (x, y));
            let place = row * grid.columns + column;
            let put = |map: &mut Map, value: f32| {
                if let Some(slot) = map.values.get_mut(place) {
                    *slot = value;
                }
            };
            for (map, value) in self.colour.iter_mut().zip(colour) {
                put(map, value);
            }
            put(&mut self.early, early);
            put(&mut self.fibre, fibre.streak + fibre.fine);
            put(&mut self.tilt, cut.tilt(x, y));
            put(
                &mut self.takes,
                1.0 + TAKES_EARLY * early + TAKES_STREAK * fibre.streak + TAKES_FINE * fibre.fine,
            );
        }
    }

    /// Cuts the pores, the flecks and the rays open.
    pub(crate) fn open(&mut self, species: &Species, cut: &Cut) {
        pores::bore(self, species, cut);
        pores::fleck(self, species, cut);
        pores::cross(self, species, cut);
    }
}

/// The log that a panel is cut from.
pub(crate) fn log(species: &Species, seed: u32) -> Cut {
    Cut::new(species, seed)
}

/// Streaks along the grain.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fibre {
    pub(crate) streak: f32,
    pub(crate) fine: f32,
}

/// A place in the log.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ring {
    /// Years from the pith.
    pub(crate) year: f32,
    /// Share of the year, 0 to 1.
    pub(crate) phase: f32,
    /// A number of this year's own, 0 to 1.
    pub(crate) own: f32,
    /// How squarely the face cuts the rings, 0 where it only touches them.
    pub(crate) crossing: f32,
}

/// Linear colours of a wood.
struct Paint {
    base: Colour,
    early: Colour,
    late: Option<Colour>,
    clouds: Option<Colour>,
}

impl Paint {
    fn of(species: &Species) -> Self {
        Self {
            base: screen(species.base),
            early: screen(species.early),
            late: species.late.map(screen),
            clouds: species.clouds.map(|clouds| screen(clouds.colour)),
        }
    }

    fn wood(
        &self,
        species: &Species,
        cut: &Cut,
        ring: &Ring,
        early: f32,
        fibre: Fibre,
        at: (f32, f32),
    ) -> Colour {
        let dark = if species.growth == Growth::Conifer { 0.0 } else { species.contrast * early };
        let mut colour = blend(self.base, self.early, dark);
        if let Some(late) = self.late {
            colour = blend(colour, late, cut.late(ring));
        }
        if let (Some(shade), Some(clouds)) = (self.clouds, species.clouds) {
            colour = blend(colour, shade, cut.clouded(clouds, ring, at));
        }
        let gain = libm::expf(species.streak * fibre.streak + species.fine * fibre.fine);
        // A little warmer here, a little cooler there: in red and blue only, or pale wood turns green.
        const DRIFT: f32 = 0.025;
        let drift = DRIFT * cloud(cut.seed(7), at.0 / 55.0, at.1 / 9.0);
        [colour[0] * gain * (1.0 + drift), colour[1] * gain, colour[2] * gain * (1.0 - drift)]
    }
}

/// From one colour to another by a share.
pub(crate) fn blend(from: Colour, to: Colour, share: f32) -> Colour {
    [mix(from[0], to[0], share), mix(from[1], to[1], share), mix(from[2], to[2], share)]
}

/// The number of a layer: adding a layer never changes another.
pub(crate) fn layer(seed: u32, number: u32) -> u32 {
    hash(seed, number.wrapping_mul(0x9E37_79B1))
}

/// 0 at the start of the year, up at once, held, and down softly.
fn earlywood(phase: f32, share: f32) -> f32 {
    smooth(0.0, 0.05, phase) * (1.0 - smooth(0.7 * share, 1.25 * share, phase))
}
