//! Where a levelled face was rubbed too far: low rises of wear about a high spot, a stroke's end or an edge, with a wavy outline
//! as on a map.

use super::field::coarse;
use crate::map::{Grid, Map};
use crate::noise::{Chance, cloud, soft};

/// Waves of the outline: size, and share of a rise that is 1 high.
const WAVES: [(f32, f32); 2] = [(16.0, 0.14), (6.0, 0.035)];
/// Strokes of the block along the grain: length, width, share.
const STROKES: (f32, f32) = (26.0, 0.9);

/// Less wear than this is none.
const LEAST: f32 = 0.01;

/// A rise of wear.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rise {
    /// Its middle, mm.
    pub(super) at: (f32, f32),
    /// Half of its length along the grain and of its width across, mm.
    pub(super) half: (f32, f32),
    /// How far it is worn in its middle: 1 is through the clear.
    pub(super) worn: f32,
}

/// A place on one of the four edges, and whether it is one that runs along the grain.
pub(super) fn on_edge(grid: Grid, chance: &mut Chance) -> ((f32, f32), bool) {
    /// Shares of an edge between which a spot lies.
    const INNER: (f32, f32) = (0.15, 0.85);
    let (x, y) =
        (chance.between(INNER.0, INNER.1) * grid.width(), chance.between(INNER.0, INNER.1) * grid.height());
    let far = chance.even() < 0.5;
    if chance.even() < grid.width() / (grid.width() + grid.height()) {
        ((x, if far { grid.height() } else { 0.0 }), true)
    } else {
        ((if far { grid.width() } else { 0.0 }, y), false)
    }
}

/// How far each place is worn; strokes of the block tear the outline by a share.
pub(super) async fn wear(grid: Grid, rises: &[Rise], seed: u32, torn: f32) -> Map {
    let slow = coarse(grid, |x, y| {
        let rise = |rise: &Rise| {
            let (u, v) = ((x - rise.at.0) / rise.half.0, (y - rise.at.1) / rise.half.1);
            rise.worn * libm::expf(-u * u - v * v)
        };
        let high = rises.iter().map(rise).sum::<f32>();
        let waves = (seed..).zip(WAVES).map(|(seed, (size, share))| share * soft(seed, size, x, y));
        high + high.min(1.0) * waves.sum::<f32>()
    })
    .await;
    let mut worn = Map::of(grid, 0.0);
    worn.fill(|x, y, _| {
        let high = slow.near(x, y);
        if high < LEAST {
            return 0.0;
        }
        let stroke = if torn > 0.0 { cloud(seed ^ 1, x / STROKES.0, y / STROKES.1) } else { 0.0 };
        high + torn * high.min(1.0) * stroke
    })
    .await;
    worn
}
