//! A panel of finished wood: grown, filmed, spoiled, lit.

mod body;
mod film;
mod place;
mod recipe;
mod work;

pub(crate) use body::{DRY_PORE, Paints};
pub(crate) use film::{Arc, Film, shaded};
pub use recipe::{Dyes, Finish, Probe, Recipe, Severity};
pub use work::Work;

use crate::lamp::Lamp;
use crate::map::{Grid, Map};
use crate::outline::Outline;
use crate::pause::at_once;
use crate::scene::Lit;
use crate::wood::Wood;

/// All maps of a panel: what a fault may change.
#[derive(Debug, Clone)]
pub(crate) struct Layers {
    pub(crate) wood: Wood,
    pub(crate) film: Film,
    /// Where the fault is, 0 to 1.
    pub(crate) mask: Map,
    /// The middle of the mark of a test, or of the place that it tried, mm.
    pub(crate) mark: Option<(f32, f32)>,
}

impl Layers {
    pub(crate) const fn grid(&self) -> Grid {
        self.mask.grid
    }
}

/// A panel that is drawn and can be lit.
#[derive(Debug, Clone)]
pub struct Panel {
    lit: Lit,
    mask: Map,
    mark: Option<(f32, f32)>,
    height: Map,
    rough: Map,
}

impl Panel {
    /// Share of a pixel from which a fault is told as touching it.
    pub const TOUCHED: f32 = 0.05;

    /// Draws a panel.
    #[must_use]
    pub fn draw(recipe: Recipe, grid: Grid) -> Self {
        at_once(work::draw(recipe, grid))
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

    /// A line round the fault, to be drawn on the picture once it may be shown; see [`Outline`].
    #[must_use]
    pub fn outline(&self) -> Outline {
        Outline::of(&self.mask)
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
}
