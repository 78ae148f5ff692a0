//! Bloom: a thin veil that came out on the gloss. To look at it is as blush is; but it lies on the film, and a damp cloth
//! takes it off.

use super::{milk, wipe};
use crate::panel::{Layers, Probe, Recipe, Severity};

/// What a cloth leaves behind.
const LEFT: f32 = 0.03;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let mut milk = milk::gather(layers, recipe, severity).await;
    if recipe.probe == Probe::Wiped {
        let wiped = wipe::band(layers, &milk.patches, recipe.seed).await;
        for (share, wiped) in milk.cloud.values.iter_mut().zip(&wiped.values) {
            *share *= 1.0 - (1.0 - LEFT) * wiped;
        }
    }
    milk::lay(layers, &milk.cloud).await;
}
