//! Wood, from the log outward: rings, colour, bands, rays, pores, figure.

mod band;
mod cut;
mod figure;
mod pores;
mod ray;
mod slow;
mod species;
mod year;

pub use species::{Bands, Face, Growth, Gum, Pores, Rays, Screen, Species};

use crate::light::{Colour, screen};
use crate::map::{Grid, Map};
use crate::noise::hash;
use crate::number::mix;
use crate::pause::pause;
use core::ops::Range;
pub(crate) use cut::{Cut, Place};
pub(crate) use pores::bore;
pub(crate) use slow::Slow;
pub(crate) use year::Year;

/// How far the share of stain that wood takes follows its parts (by eye).
const TAKES_EARLY: f32 = 0.22;
const TAKES_STREAK: f32 = 0.12;
const TAKES_FINE: f32 = 0.10;
/// Open ends of fibres drink more, and send back less light.
const TAKES_END: f32 = 0.6;
const END_DARK: f32 = 0.74;
/// A little warmer here, a little cooler there: mostly in blue, or pale wood turns green.
const DRIFT: [f32; 3] = [0.008, 0.0, -0.022];
/// What silk adds to brightness, and to the tilt that turns with the lamp.
const SILK_BRIGHT: f32 = 0.03;
const SILK_TILT: f32 = 0.22;
/// Tilt of a ray that is cut lengthwise: it flashes.
const RAY_TILT: f32 = 0.5;

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
    /// Share that is ray, where no pore can be.
    ray: Map,
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
            ray: map(),
        }
    }

    /// Grows one row of pixels.
    pub(crate) fn grow(&mut self, species: &Species, cut: &Cut, row: usize) {
        self.grow_span(species, cut, row, 0..self.early.grid.columns);
    }

    /// Grows some pixels of a row, as they are in a whole one.
    pub(crate) fn grow_span(&mut self, species: &Species, cut: &Cut, row: usize, columns: Range<usize>) {
        let grid = self.early.grid;
        let paint = Paint::of(species);
        let slow = slow::Row::new(cut, grid, row, &columns);
        for column in columns {
            let (x, y) = grid.middle(column, row);
            let Some(Slow { place: at, streak, drift, ribbon }) = slow.at(x) else { continue };
            let fibre = Fibre { streak, fine: cut.fine(x, y) };
            let year = Year::at(species, cut, &at, grid.scale);
            let ray = species.rays.map_or(0.0, |rays| rays.cover * ray::share(cut, rays, &at, grid.scale));
            let silk = cut.silk(&at);
            let colour = paint.wood(species, cut, &Spot { at, year, fibre, ray, silk, drift }, grid.scale);
            let place = row * grid.columns + column;
            let put = |map: &mut Map, value: f32| {
                if let Some(slot) = map.values.get_mut(place) {
                    *slot = value;
                }
            };
            for (map, value) in self.colour.iter_mut().zip(colour) {
                put(map, value);
            }
            let flash = RAY_TILT * ray * at.crossing * at.crossing;
            let open = if cut.is_end() { TAKES_END } else { 0.0 };
            put(&mut self.early, year.early);
            put(&mut self.fibre, fibre.streak + fibre.fine);
            put(&mut self.tilt, ribbon + cut.curl(x, y) + SILK_TILT * silk + flash);
            put(
                &mut self.takes,
                1.0 + open + TAKES_EARLY * year.early + TAKES_STREAK * fibre.streak + TAKES_FINE * fibre.fine,
            );
            put(&mut self.ray, ray);
        }
    }

    /// Cuts the pores and the gum open.
    pub(crate) async fn open(&mut self, species: &Species, cut: &Cut) {
        bore(&mut self.pore, species, cut).await;
        for (pore, ray) in self.pore.values.iter_mut().zip(&self.ray.values) {
            *pore *= 1.0 - ray;
        }
        pause().await;
        pores::gum(self, species, cut);
        pause().await;
    }
}

/// Streaks along the grain.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fibre {
    pub(crate) streak: f32,
    pub(crate) fine: f32,
}

/// All that the colour of a pixel comes from.
struct Spot {
    at: Place,
    year: Year,
    fibre: Fibre,
    ray: f32,
    silk: f32,
    drift: f32,
}

/// Linear colours of a wood.
struct Paint {
    base: Colour,
    early: Colour,
    late: Option<Colour>,
    bands: Vec<Colour>,
    rays: Option<(Colour, Colour)>,
}

impl Paint {
    fn of(species: &Species) -> Self {
        Self {
            base: screen(species.base),
            early: screen(species.early),
            late: species.late.map(screen),
            bands: species.bands.iter().map(|bands| screen(bands.colour)).collect(),
            rays: species.rays.map(|rays| (screen(rays.colour), screen(rays.ends))),
        }
    }

    fn wood(&self, species: &Species, cut: &Cut, spot: &Spot, scale: f32) -> Colour {
        let Spot { at, year, fibre, .. } = spot;
        let dark = if species.growth == Growth::Conifer { 0.0 } else { species.contrast * year.early };
        let mut colour = blend(self.base, self.early, dark);
        if let Some(late) = self.late {
            colour = blend(colour, late, year.late);
        }
        for ((number, bands), shade) in (0_u32..).zip(&species.bands).zip(&self.bands) {
            colour = blend(colour, *shade, band::share(cut, number, *bands, at, fibre.streak, scale));
        }
        if let Some((lengthwise, ends)) = self.rays {
            let shown = blend(ends, lengthwise, at.crossing * at.crossing);
            colour = blend(colour, shown, spot.ray);
        }
        let end = if cut.is_end() { END_DARK } else { 1.0 };
        let gain = end
            * libm::expf(species.streak * fibre.streak + species.fine * fibre.fine)
            * (1.0 + SILK_BRIGHT * spot.silk);
        let [red, green, blue] = DRIFT.map(|part| gain * (1.0 + part * spot.drift));
        [colour[0] * red, colour[1] * green, colour[2] * blue]
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
