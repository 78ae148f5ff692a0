//! Where faults lie that are many and small: in clusters or in patches without direction, whatever window is drawn.

use crate::map::Grid;
use crate::noise::{Chance, soft};
use crate::number::smooth;

/// Tries for the place of one thing.
const TRIES: usize = 24;

/// A place in a rectangle round the middle of a panel, as wide as a share of it.
fn anywhere(grid: Grid, chance: &mut Chance, share: f32) -> (f32, f32) {
    let from = 0.5 - 0.5 * share;
    (chance.between(from, from + share) * grid.width(), chance.between(from, from + share) * grid.height())
}

/// A cluster round one place, and what stands by itself.
pub(super) struct Cluster {
    middle: (f32, f32),
    spread: (f32, f32),
    share: f32,
}

impl Cluster {
    /// A cluster of a spread (standard deviation along and across the grain) that takes a share of all things.
    pub(super) fn new(grid: Grid, chance: &mut Chance, spread: (f32, f32), share: f32) -> Self {
        /// Its middle lies within this share of the face.
        const INNER: f32 = 0.6;
        Self { middle: anywhere(grid, chance, INNER), spread, share }
    }

    /// The next place on the panel.
    pub(super) fn place(&self, grid: Grid, chance: &mut Chance) -> (f32, f32) {
        let inside =
            |(x, y): &(f32, f32)| (0.0..grid.width()).contains(x) && (0.0..grid.height()).contains(y);
        let near = (0..TRIES).find_map(|_| {
            if chance.even() > self.share {
                return Some(anywhere(grid, chance, 1.0));
            }
            let x = self.middle.0 + self.spread.0 * chance.normal();
            Some((x, self.middle.1 + self.spread.1 * chance.normal())).filter(inside)
        });
        near.unwrap_or(self.middle)
    }
}

/// Patches where things stand thick, with soft borders.
pub(super) struct Patches {
    /// Seed of the noise.
    pub(super) seed: u32,
    /// Size of a patch.
    pub(super) size: f32,
    /// How much of the face they take: 0 is half of it, 1 nearly all.
    pub(super) more: f32,
}

impl Patches {
    /// From the border of a patch to its middle, against noise of standard deviation 0.85.
    const BORDER: (f32, f32) = (0.0, 1.3);

    /// How thick things stand at a place, 0 to 1.
    pub(super) fn crowd(&self, (x, y): (f32, f32)) -> f32 {
        smooth(Self::BORDER.0, Self::BORDER.1, soft(self.seed, self.size, x, y) + self.more)
    }

    /// The next place on the panel, the likelier the thicker they stand.
    pub(super) fn place(&self, grid: Grid, chance: &mut Chance) -> Option<(f32, f32)> {
        (0..TRIES).find_map(|_| {
            let at = anywhere(grid, chance, 1.0);
            (chance.even() < self.crowd(at)).then_some(at)
        })
    }
}
