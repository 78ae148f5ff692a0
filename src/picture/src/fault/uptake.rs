//! How much a place takes in of what is put on the wood: stain above all, and a little of the first coat.

use crate::map::Map;
use crate::panel::{Layers, Recipe};

/// How far the body darkens under a film for each unit that wood takes in more: with stain in it, and without.
const DEEPENS_STAINED: f32 = 0.06;
const DEEPENS_PLAIN: f32 = 0.22;
/// The lightest and darkest that this leaves.
const BODY: (f32, f32) = (0.6, 1.25);
/// Below this there is no stain to speak of.
const LEAST_STAIN: f32 = 0.05;

/// Multiplies what the wood takes in by a gain for each pixel.
pub(super) fn gain(layers: &mut Layers, recipe: &Recipe, gains: &Map) {
    for (takes, gain) in layers.wood.takes.values.iter_mut().zip(&gains.values) {
        *takes *= gain;
    }
    if !recipe.finish.has_film() {
        return;
    }
    let deepens = if recipe.stain < LEAST_STAIN { DEEPENS_PLAIN } else { DEEPENS_STAINED };
    for (body, gain) in layers.film.body.values.iter_mut().zip(&gains.values) {
        *body *= (1.0 - deepens * (gain - 1.0)).clamp(BODY.0, BODY.1);
    }
}

/// Multiplies the build of whatever colours the panel: film colour and shade where there is some, else the stain.
pub(super) fn build(layers: &mut Layers, recipe: &Recipe, gains: &Map) {
    let coloured = recipe.amber > 0.0 || recipe.opaque.is_some() || recipe.shaded;
    let map = if coloured { &mut layers.film.tint } else { &mut layers.wood.takes };
    for (value, gain) in map.values.iter_mut().zip(&gains.values) {
        *value *= gain;
    }
}
