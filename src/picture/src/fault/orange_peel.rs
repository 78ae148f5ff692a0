//! Orange peel: even, shallow, rounded bumps with narrow valleys over the whole face, as on citrus skin. Each bump keeps its
//! gloss, so the edge of a lamp breaks into drops that are as bright as the lamp; dry spray is dull. It takes no notice of the
//! grain and is there from the first minute: grain sink lies over pores and comes weeks later.

use crate::map::Map;
use crate::noise::soft;
use crate::panel::{Layers, Recipe, Severity};
use crate::wood::layer;

/// Size of the noise; from bump to bump is 1.6 times as far.
const SIZE: [f32; 3] = [1.7, 2.1, 2.6];
/// Broader waves below: their size against the bumps, and their share.
const BROAD: f32 = 2.1;
const BROAD_SHARE: f32 = 0.45;
/// Height, micrometres, as a standard deviation: from peak to valley about four times as much.
const HIGH: [f32; 3] = [0.55, 1.2, 2.1];
/// How rounded the tops are against the valleys; more reads as pits.
const ROUND: f32 = 0.42;
/// Standard deviation of the rounded noise, so that HIGH holds.
const DEVIATION: f32 = 0.42;
/// One pass of the gun is a little wetter than the next: size, and share of the height.
const PASSES: f32 = 45.0;
const UNEVEN: f32 = 0.15;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_041 + number);
    let passes = super::field::coarse(grid, |x, y| 1.0 + UNEVEN * soft(seed(2), PASSES, x, y)).await;
    let broad_size = BROAD * severity.of(SIZE);
    let broad = super::field::coarse(grid, |x, y| BROAD_SHARE * soft(seed(1), broad_size, x, y)).await;
    let gain = severity.of(HIGH) / DEVIATION;
    layers
        .film
        .height
        .fill(|x, y, height| {
            let bumps = soft(seed(0), severity.of(SIZE), x, y) + broad.near(x, y);
            height + gain * passes.near(x, y) * (1.0 - libm::expf(-ROUND * bumps))
        })
        .await;
    layers.mask = Map::of(grid, 1.0);
}
