//! A panel of finished wood: grown, filmed, spoiled, lit.

mod body;
mod film;
mod recipe;

pub(crate) use body::Paints;
pub(crate) use film::{Arc, Film};
pub use recipe::{Finish, Probe, Recipe, Severity};

use crate::lamp::Lamp;
use crate::map::{Grid, Map};
use crate::scene::Lit;
use crate::wood::{Cut, Wood};

/// All maps of a panel: what a fault may change.
#[derive(Debug, Clone)]
pub(crate) struct Layers {
    pub(crate) wood: Wood,
    pub(crate) film: Film,
    /// Where the fault is, 0 to 1.
    pub(crate) mask: Map,
}

impl Layers {
    pub(crate) const fn grid(&self) -> Grid {
        self.mask.grid
    }
}

/// A panel that is being drawn, some rows at a time, so that a screen can answer between.
#[derive(Debug, Clone)]
pub struct Work {
    recipe: Recipe,
    layers: Layers,
    cut: Cut,
    stage: Stage,
    row: usize,
    lit: Lit,
}

/// What is done next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stage {
    Grow,
    Open,
    Film,
    Spoil,
    Light,
    Done,
}

impl Work {
    /// Begins a panel.
    #[must_use]
    pub fn begin(recipe: Recipe, grid: Grid) -> Self {
        let cut = Cut::new(&recipe.species, recipe.face, recipe.seed, grid.height());
        let layers = Layers { wood: Wood::blank(grid), film: Film::blank(grid), mask: Map::of(grid, 0.0) };
        Self { recipe, layers, cut, stage: Stage::Grow, row: 0, lit: Lit::blank(grid) }
    }

    /// Draws up to `rows` rows further, or does the one thing that cannot be divided. Whether it is done.
    pub fn step(&mut self, rows: usize) -> bool {
        let grid = self.layers.grid();
        let end = (self.row + rows.max(1)).min(grid.rows);
        let span = self.row..end;
        match self.stage {
            Stage::Grow => {
                for row in span {
                    self.layers.wood.grow(&self.recipe.species, &self.cut, row);
                }
                self.go_on(end, Stage::Open);
            }
            Stage::Open => {
                self.layers.wood.open(&self.recipe.species, &self.cut);
                self.stage = Stage::Film;
            }
            Stage::Film => {
                for row in span {
                    self.layers.film.lay(&self.recipe, row);
                }
                self.go_on(end, Stage::Spoil);
            }
            Stage::Spoil => {
                self.layers.film.sink(&self.recipe, &self.layers.wood.pore);
                if let Some((fault, severity)) = self.recipe.fault {
                    fault.spoil(&mut self.layers, &self.recipe, severity);
                }
                self.stage = Stage::Light;
            }
            Stage::Light => {
                for row in span {
                    self.lit.row(&self.layers, &self.recipe, row);
                }
                self.go_on(end, Stage::Done);
            }
            Stage::Done => {}
        }
        self.stage == Stage::Done
    }

    fn go_on(&mut self, end: usize, next: Stage) {
        self.row = end;
        if end >= self.layers.grid().rows {
            self.row = 0;
            self.stage = next;
        }
    }

    /// Draws what is left of it.
    #[must_use]
    pub fn finish(mut self) -> Panel {
        while !self.step(usize::MAX / 2) {}
        Panel {
            lit: self.lit,
            mask: self.layers.mask,
            height: self.layers.film.height,
            rough: self.layers.film.rough,
        }
    }
}

/// A panel that is drawn and can be lit.
#[derive(Debug, Clone)]
pub struct Panel {
    lit: Lit,
    mask: Map,
    height: Map,
    rough: Map,
}

impl Panel {
    /// Draws a panel.
    #[must_use]
    pub fn draw(recipe: Recipe, grid: Grid) -> Self {
        Work::begin(recipe, grid).finish()
    }

    /// How it is cut into pixels.
    #[must_use]
    pub const fn grid(&self) -> Grid {
        self.mask.grid
    }

    /// Its picture under a lamp: rows of red, green, blue and alpha bytes, alpha full. `pixels` is used again.
    pub fn light(&self, lamp: Lamp, pixels: &mut Vec<u8>) {
        self.lit.under(lamp, pixels);
    }

    /// Where the fault is: a share of each pixel, row by row, 0 where it is not.
    #[must_use]
    pub fn mask(&self) -> &[f32] {
        &self.mask.values
    }

    /// Height of its surface, micrometres, row by row.
    #[must_use]
    pub fn height(&self) -> &[f32] {
        &self.height.values
    }

    /// Root mean square slope of what is finer than a pixel, radians, row by row.
    #[must_use]
    pub fn rough(&self) -> &[f32] {
        &self.rough.values
    }

    /// Whether a place, mm from the left and the top, lies on the fault or within `reach` mm of it.
    #[must_use]
    pub fn is_on_fault(&self, x: f32, y: f32, reach: f32) -> bool {
        /// A pixel of which less is touched does not count.
        const LEAST: f32 = 0.05;
        let on = |(column, row, dx, dy): (usize, usize, f32, f32)| {
            libm::hypotf(dx, dy) <= reach.max(self.mask.grid.scale) && self.mask.at(column, row) > LEAST
        };
        crate::map::near(self.mask.grid, x, y, reach.max(self.mask.grid.scale)).any(on)
    }
}
