//! Grey pores: air under the clear, or filler that let go of it. The pores look silver or frosty, and change or vanish as the
//! lamp goes to the other side; filler that is white is the same from everywhere, blush is white between the pores too.

use super::pale_pore::{choose, own};
use crate::frost::Frost;
use crate::noise::Chance;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::{MANY, pause};
use crate::wood::layer;

/// How squarely all of them face one side, and how far each strays from that, mm on the ceiling.
const FACES: f32 = 1.0;
const STRAYS: f32 = 90.0;
/// They are seen a little beyond the middle, mm on the ceiling.
const BEYOND: f32 = 25.0;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let side = if Chance::new(layer(recipe.seed, 1_230)).even() < 0.5 { FACES } else { -FACES };
    let turned = choose(layers, recipe, severity).await;
    for (number, (place, share)) in turned.into_iter().enumerate() {
        if number.is_multiple_of(MANY) {
            pause().await;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let further = STRAYS * own(layer(recipe.seed, 1_231), x, y) - BEYOND;
        layers.film.frost.push(Frost { place, share, faces: side, further });
    }
}
