//! The room and its lamps, mirrored in a panel that lies on a bench.
//!
//! Places are in mm: the panel at height 0, its upper left corner at the origin, x along the grain, y toward the one who
//! looks; the camera above and before the near edge; lamps and window in the plane of the ceiling. The picture is the panel
//! seen straight from above, while what is mirrored is seen from the camera, as it is when one stands at a bench.

mod block;
mod under;

use crate::bench::{ceiling, fresnel, slopes};
use crate::frost::Frosted;
use crate::light::{Colour, LIGHT, Light};
use crate::map::{Grid, Map};
use crate::mirrored::SHARPEST;
use crate::number::hypotenuse;
use crate::panel::{Arc, Layers, Paints, Recipe};
use crate::scratch::Scratch;
use block::{Block, LANES};

/// From the panel to the ceiling along the mirrored ray, about: slope turns into a length there.
const REACH: f32 = 1_450.0;
/// No body is darker than this.
const DARKEST: f32 = 1.0e-4;

/// What a cloud sends back.
const CLOUD: f32 = 0.62;
/// Tilted fibre turns light with the lamp: on bare wood, and more under film.
const SHEEN: f32 = 0.11;
const SHEEN_FILM: f32 = 0.13;
/// All of a panel that does not change with the lamp.
#[derive(Debug, Clone)]
pub(crate) struct Lit {
    grid: Grid,
    light: &'static Light,
    blocks: Vec<Block>,
    scratches: Vec<Scratch>,
    frosted: Vec<Frosted>,
    film: bool,
}

/// A pixel that is ready to be lit.
#[derive(Debug, Clone, Copy, Default)]
struct Pixel {
    /// What it sends back of the light that falls on it.
    body: Colour,
    /// What it shows whatever the lamp; its block adds what it mirrors of the room.
    still: Colour,
    /// Where on the ceiling it looks.
    ceiling: (f32, f32),
    /// Blur of a lamp there, along the grain and across it.
    blur: (f32, f32),
    /// Share that is mirrored.
    mirror: f32,
    /// Share of it that is scattered wide.
    veil: f32,
    /// Tilt of the fibre.
    tilt: f32,
    /// Slope along the grain and across it: what a raking lamp sees.
    slope: (f32, f32),
}

impl Lit {
    pub(crate) fn blank(grid: Grid) -> Self {
        Self {
            grid,
            light: &LIGHT,
            blocks: Vec::with_capacity(grid.len().div_ceil(LANES)),
            scratches: Vec::new(),
            frosted: Vec::new(),
            film: false,
        }
    }

    /// Makes one row ready, the rows one after another.
    pub(crate) fn row(&mut self, layers: &Layers, recipe: &Recipe, row: usize) {
        let grid = self.grid;
        let paints = Paints::of(recipe);
        self.film = recipe.finish.has_film();
        if row == 0 {
            let ready = |arc: &Arc| Scratch::new(*arc, ceiling(grid, arc.x, arc.y, (0.0, 0.0)));
            self.scratches = layers.film.arcs.iter().map(ready).collect();
            self.frosted.clear();
        }
        let reached = |place: usize| layers.film.frost.partition_point(|frost| frost.place < place);
        let pores = reached(row * grid.columns)..reached((row + 1) * grid.columns);
        for column in 0..grid.columns {
            let place = row * grid.columns + column;
            let pixel = self.pixel(layers, &paints, (column, row), place);
            self.take(place, &pixel);
        }
        for frost in layers.film.frost.get(pores).unwrap_or_default() {
            let plain = paints.body(layers, self.light, frost.place);
            let silver = paints.with_pore(layers, self.light, frost.place, frost.share);
            let block = self.blocks.get(frost.place / LANES).copied().unwrap_or_default();
            let shown = block.body.map(|lanes| lanes.get(frost.place % LANES).copied().unwrap_or(0.0));
            let more = |part: usize| {
                let of = |colour: Colour| colour.get(part).copied().unwrap_or(0.0);
                of(shown) * (of(silver) / of(plain).max(DARKEST) - 1.0)
            };
            self.frosted.push(Frosted { frost: *frost, more: [more(0), more(1), more(2)] });
        }
    }

    /// Takes a pixel, one after another; the last of a block, or of all, mirrors the room for it.
    fn take(&mut self, place: usize, pixel: &Pixel) {
        let lane = place % LANES;
        if lane == 0 {
            self.blocks.push(Block::default());
        }
        if let Some(block) = self.blocks.last_mut() {
            block.take(lane, pixel);
            if lane + 1 == LANES || place + 1 == self.grid.len() {
                block.mirror_room(self.grid);
            }
        }
    }

    fn pixel(&self, layers: &Layers, paints: &Paints, (column, row): (usize, usize), place: usize) -> Pixel {
        let (grid, film) = (self.grid, &layers.film);
        let at = |map: &Map| map.values.get(place).copied().unwrap_or(0.0);
        let body = paints.body(layers, self.light, place);
        let (x, y) = grid.middle(column, row);
        let slope = slopes(&film.height, column, row);
        let there = if self.film { at(&film.there) } else { 0.0 };
        let ceiling = ceiling(grid, x, y, slope);
        let rough = at(&film.rough);
        let blurred = |rough: f32| hypotenuse(SHARPEST, 2.0 * rough * REACH);
        let blur =
            (blurred(rough), if film.rubbed > 0.0 { blurred(rough + film.rubbed) } else { blurred(rough) });
        let mirror = there * at(&film.mirror).max(0.0) * fresnel(grid, x, y);
        let veil = at(&film.veil).clamp(0.0, 1.0);
        let haze = at(&film.haze).clamp(0.0, 1.0);
        let cover = at(&film.cover.share);
        let clear = (1.0 - mirror) * (1.0 - haze) * (1.0 - cover);
        let groove = if there > 0.0 { 1.0 } else { paints.groove(layers, column, row) };
        let still = |part: usize| {
            let of = |colour: Colour| colour.get(part).copied().unwrap_or(0.0);
            let laid = film.cover.colour.get(part).map_or(0.0, at);
            haze * CLOUD * of(film.haze_colour) * (1.0 - cover) + cover * laid
        };
        let sheen = if self.film { SHEEN + SHEEN_FILM } else { SHEEN };
        Pixel {
            body: body.map(|part| part * clear * groove),
            still: [still(0), still(1), still(2)],
            ceiling,
            blur,
            mirror,
            veil,
            tilt: at(&layers.wood.tilt) * sheen * (1.0 - paints.hidden(layers, self.light, place)),
            slope,
        }
    }
}
