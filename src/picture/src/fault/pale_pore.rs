//! Pores that turned pale, in patches: air under the film, or filler that is white. At one place of the lamp both look alike.

use super::field::coarse;
use crate::map::Map;
use crate::noise::{cloud, soft};
use crate::number::smooth;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Share of a pore that turned, and how much of the face has such pores.
const TURNED: [f32; 3] = [0.70, 0.88, 1.0];
const SPREAD: [f32; 3] = [0.0, 0.6, 1.4];
/// Patches of them, and how softly they end.
const PATCH: f32 = 17.0;
const PATCH_EDGE: (f32, f32) = (-0.5, 0.9);
/// A pore's own chance: a field as long and as wide as a pore is, and from where to where it decides.
const PORE: (f32, f32) = (4.5, 0.45);
const OWN: (f32, f32) = (-1.1, 0.5);
/// What covers less of a pixel than this is no pore.
const LEAST: f32 = 0.02;
/// Share of a pixel that turned from which it counts as the fault.
const MARKED: (f32, f32) = (0.06, 0.18);

/// Where pores turned: the pixel, and how much of its pore did; the mask is marked.
pub(super) async fn choose(layers: &mut Layers, recipe: &Recipe, severity: Severity) -> Vec<(usize, f32)> {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_220 + number);
    let patches: Map = coarse(grid, |x, y| {
        smooth(PATCH_EDGE.0, PATCH_EDGE.1, soft(seed(0), PATCH, x, y) + severity.of(SPREAD))
    })
    .await;
    let mut turned = Vec::new();
    let pores = layers.wood.pore.values.iter().zip(&mut layers.mask.values).enumerate();
    for (place, (pore, mask)) in pores {
        if grid.begins_row(place) {
            pause().await;
        }
        if *pore < LEAST {
            continue;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let own = smooth(OWN.0, OWN.1, own(seed(1), x, y));
        let share = severity.of(TURNED) * own * patches.near(x, y);
        if share > 0.0 {
            turned.push((place, share));
            *mask = mask.max(smooth(MARKED.0, MARKED.1, share * pore));
        }
    }
    turned
}

/// A number of each pore's own, about -1 to 1.
pub(super) fn own(seed: u32, x: f32, y: f32) -> f32 {
    cloud(seed, x / PORE.0, y / PORE.1)
}
