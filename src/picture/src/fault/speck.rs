//! Round things about as small as a pixel: what is finer than the picture is drawn wider and as much fainter.

use crate::map::{Map, near};
use crate::panel::{Layers, Recipe};

/// Nothing is drawn narrower than this share of a pixel.
const FINEST: f32 = 0.6;
/// Where a normal curve ends for the eye, in its widths.
const END: f32 = 2.2;
/// Dark of a hole in opaque colour, linear.
const HOLE: [f32; 3] = [0.012, 0.010, 0.008];

/// Adds a round rise: its height, and the width at which it has fallen to 1/e.
pub(super) fn rise(map: &mut Map, (x, y): (f32, f32), width: f32, height: f32) {
    let wide = libm::hypotf(width, FINEST * map.grid.scale);
    let height = height * (width / wide) * (width / wide);
    map.within(x, y, END * wide, |value, dx, dy| {
        *value += height * libm::expf(-(dx * dx + dy * dy) / (wide * wide));
    });
}

/// Adds a round lip that stands up: its radius, its width and its height.
pub(super) fn lip(map: &mut Map, (x, y): (f32, f32), radius: f32, width: f32, height: f32) {
    let wide = libm::hypotf(width, FINEST * map.grid.scale);
    let height = height * width / wide;
    map.within(x, y, radius + END * wide, |value, dx, dy| {
        let off = (libm::hypotf(dx, dy) - radius) / wide;
        *value += height * libm::expf(-off * off);
    });
}

/// Open holes.
pub(super) struct Holes {
    /// Share of each pixel that is hole.
    pub(super) open: Map,
}

impl Holes {
    pub(super) fn on(layers: &Layers) -> Self {
        Self { open: Map::of(layers.grid(), 0.0) }
    }

    /// Sinks them into the film: `deep` micrometres, and so dark that a share of the light comes back.
    pub(super) fn sink(&self, layers: &mut Layers, recipe: &Recipe, deep: f32, light: f32) {
        let film = &mut layers.film;
        let grid = self.open.grid;
        for (place, open) in self.open.values.iter().enumerate().filter(|(_, open)| **open > 0.0) {
            let open = open.min(1.0);
            let of = |map: &mut Map, change: &dyn Fn(f32) -> f32| {
                if let Some(value) = map.values.get_mut(place) {
                    *value = change(*value);
                }
            };
            of(&mut film.height, &|height| height - deep * open);
            of(&mut film.mirror, &|mirror| mirror * (1.0 - open));
            if recipe.opaque.is_some() {
                film.cover.lay(place % grid.columns, place / grid.columns, HOLE, (1.0 - light) * open);
            } else {
                of(&mut film.body, &|body| body * (1.0 - (1.0 - light) * open));
            }
        }
    }
}

/// Marks a round place.
pub(super) fn mark(layers: &mut Layers, (x, y): (f32, f32), radius: f32) {
    let grid = layers.grid();
    let radius = radius.max(FINEST * grid.scale);
    for (column, row, dx, dy) in near(grid, x, y, radius) {
        if libm::hypotf(dx, dy) <= radius
            && let Some(mask) = layers.mask.values.get_mut(row * grid.columns + column)
        {
            *mask = 1.0;
        }
    }
}
