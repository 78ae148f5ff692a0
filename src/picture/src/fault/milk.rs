//! A milky cloud: soft patches, worst where the film is thick, at sags and fat edges, with the gloss gone dull in them. Blush
//! and bloom are the same to look at; what differs is whether it lies in the film or on it.

use super::field::{coarse, edge, join, spread};
use crate::map::Map;
use crate::noise::soft;
use crate::number::smooth;
use crate::panel::{Finish, Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Strength of the cloud where it is thickest, and how much of the face it takes.
const STRENGTH: [f32; 3] = [0.22, 0.36, 0.50];
const SPREAD: [f32; 3] = [-0.75, -0.35, 0.10];
/// Patches within patches: their size, and the share of each.
const PATCHES: [(f32, f32); 3] = [(36.0, 0.60), (17.0, 0.36), (7.0, 0.14)];
/// From no cloud to all of it.
const EDGE: (f32, f32) = (-1.1, 2.9);
/// Sags: how thick, micrometres, and how wide.
const SAG: f32 = 16.0;
const SAG_SIZE: f32 = 30.0;
const SAG_EDGE: (f32, f32) = (0.1, 1.7);
/// The fat edge of a wet coat: how thick, micrometres, how far from the edge.
const FAT: f32 = 11.0;
const FAT_WIDE: f32 = 4.5;
/// Film so much thicker, micrometres, holds a step more of cloud.
const THICKER: f32 = 8.5;
/// The film's own waves count where they are wider than this.
const WAVES: f32 = 3.0;
/// What rounds the sags.
const ROUND: f32 = 1.2;
/// Grey-white, neither warm nor blue.
const COLOUR: [f32; 3] = [0.97, 0.97, 0.97];
/// What a full cloud does to the gloss: roughness, radians, and the share scattered wide.
const ROUGHENS: f32 = 0.030;
const VEILS: f32 = 0.9;
/// Share of a cloud from which it counts as the fault.
const MARKED: (f32, f32) = (0.020, 0.045);

/// A cloud that is to be laid.
pub(super) struct Milk {
    /// How thick it lies, 0 to 1.
    pub(super) cloud: Map,
    /// Its patches over the whole face.
    pub(super) patches: Map,
}

/// Gathers the cloud; the sags that it follows are laid on the film.
pub(super) async fn gather(layers: &mut Layers, recipe: &Recipe, severity: Severity) -> Milk {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_200 + number);
    let thick = coarse(grid, |x, y| {
        let fat = FAT * libm::expf(-edge(grid, x, y).max(0.0) / FAT_WIDE);
        fat + SAG * smooth(SAG_EDGE.0, SAG_EDGE.1, soft(seed(3), SAG_SIZE, x, y))
    })
    .await
    .blurred(ROUND)
    .await;
    let mut cloud = layers.film.height.blurred(WAVES).await;
    if recipe.finish != Finish::Buffed {
        let sags = spread(&thick, grid).await.blurred(ROUND).await;
        for (height, sag) in layers.film.height.values.iter_mut().zip(&sags.values) {
            *height += sag;
        }
        pause().await;
    }
    let patches = coarse(grid, |x, y| {
        let patch = (0..).zip(PATCHES).map(|(n, (size, share))| share * soft(seed(n), size, x, y));
        patch.sum::<f32>() + thick.near(x, y) / THICKER
    })
    .await;
    cloud
        .fill(|x, y, height| {
            let lies = patches.near(x, y) + height / THICKER;
            let full = smooth(EDGE.0, EDGE.1, lies + severity.of(SPREAD));
            severity.of(STRENGTH) * full * libm::sqrtf(full)
        })
        .await;
    Milk { cloud, patches }
}

/// Lays the cloud.
pub(super) async fn lay(layers: &mut Layers, cloud: &Map) {
    pause().await;
    let film = &mut layers.film;
    film.haze_colour = COLOUR;
    let maps = film.haze.values.iter_mut().zip(&mut film.rough.values).zip(&mut film.veil.values);
    for ((((haze, rough), veil), mask), share) in maps.zip(&mut layers.mask.values).zip(&cloud.values) {
        join(haze, *share);
        *rough += ROUGHENS * share;
        join(veil, VEILS * share);
        *mask = mask.max(smooth(MARKED.0, MARKED.1, *share));
    }
}
