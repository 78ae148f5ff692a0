//! A spot that moves straight over the cells of a grid.

use super::{Layers, Spot};
use core::ops::Range;

/// A straight way of a spot. Places count in half widths of the spot: how far ahead of the beginning of the way, along it,
/// and how far beside it.
#[derive(Debug, Clone, PartialEq)]
pub struct Sweep {
    /// Columns of the cells that the spot may reach.
    pub columns: Range<usize>,
    /// Their rows.
    pub rows: Range<usize>,
    /// Where the middle of the first of them lies.
    pub first: (f32, f32),
    /// How much farther that of the cell to its right lies.
    pub right: (f32, f32),
    /// And that of the cell below.
    pub below: (f32, f32),
    /// How long the way is.
    pub length: f32,
    /// Film in the middle of a spot that stands still as long, µm.
    pub height: f32,
    /// Share of it that lands wet.
    pub moist: f32,
    /// What lands wet times this is how it is kept.
    pub older: f32,
    /// What is kept times this is wet now.
    pub left: f32,
}

impl Sweep {
    /// Lays what the spot leaves on its way. Cells that the layers do not have are left out.
    pub fn lay(&self, spot: &Spot, layers: &mut Layers) {
        let mut begins = self.first;
        for row in self.rows.clone() {
            let cells = row * layers.columns + self.columns.start..row * layers.columns + self.columns.end;
            let (mut ahead, mut beside) = begins;
            begins = (begins.0 + self.below.0, begins.1 + self.below.1);
            let Layers { laid, dry, wet, wettest, .. } = &mut *layers;
            let (Some(laid), Some(dry)) = (laid.get_mut(cells.clone()), dry.get_mut(cells.clone())) else {
                return;
            };
            let (Some(wet), Some(wettest)) = (wet.get_mut(cells.clone()), wettest.get_mut(cells)) else {
                return;
            };
            for (((laid, dry), wet), wettest) in laid.iter_mut().zip(dry).zip(wet).zip(wettest) {
                let film = self.height * spot.lays(ahead, beside, self.length);
                (ahead, beside) = (ahead + self.right.0, beside + self.right.1);
                if film > 0.0 {
                    *laid += film;
                    *dry += film * (1.0 - self.moist);
                    *wet += film * self.moist * self.older;
                    *wettest = wettest.max(*wet * self.left);
                }
            }
        }
    }
}
