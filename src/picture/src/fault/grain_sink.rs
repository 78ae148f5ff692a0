//! Grain sink: weeks after buffing the film has sunk over the pores and, in woods with soft earlywood, over the rings: closed,
//! shallow dips with gloss in them. On the day it was buffed it was flat. A pattern without direction would be orange peel,
//! open holes would be pinholes; wood without visible pores shows nothing.

use crate::noise::soft;
use crate::number::smooth;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::{Growth, layer};

/// Depth of the dip over a pore that fills a pixel, and over earlywood, micrometres.
const PORES: [f32; 3] = [4.4, 7.0, 10.0];
const EARLY: [f32; 3] = [0.7, 1.4, 2.3];
/// Narrow rings of a conifer show as deep as wide ones of a ring-porous wood.
const CONIFER: f32 = 2.4;
/// The film rounds what lies below.
const PORE_BLUR: f32 = 0.33;
const EARLY_BLUR: f32 = 0.25;
/// Film is never equally thick: patches sink more.
const PATCH: f32 = 32.0;
const UNEVEN: f32 = 0.25;
/// This share of the rings' depth only lowers the whole face.
const LOWER: f32 = 0.4;
/// Depth from which a place counts as the fault, micrometres.
const MARKED: (f32, f32) = (0.5, 1.2);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let early = match recipe.species.growth {
        Growth::Ring => severity.of(EARLY),
        Growth::Conifer => CONIFER * severity.of(EARLY),
        Growth::SemiRing | Growth::Diffuse => 0.0,
    };
    let pore = if recipe.species.telegraphs { severity.of(PORES) } else { 0.0 };
    if early + pore <= 0.0 {
        return;
    }
    let (pores, rings) =
        (layers.wood.pore.blurred(PORE_BLUR).await, layers.wood.early.blurred(EARLY_BLUR).await);
    for (place, (pores, rings)) in pores.values.iter().zip(&rings.values).enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let uneven = 1.0 + UNEVEN * soft(layer(recipe.seed, 1_330), PATCH, x, y);
        let depth = uneven * (pore * pores + early * rings);
        if let Some(mask) = layers.mask.values.get_mut(place) {
            *mask = mask.max(smooth(MARKED.0, MARKED.1, depth - LOWER * early));
        }
        if let Some(height) = layers.film.height.values.get_mut(place) {
            *height -= depth;
        }
    }
}
