//! How much a place takes in of what is put on the wood: stain above all, and a little of the first coat.

use crate::map::Map;
use crate::panel::{Layers, Recipe};
use crate::pause::pause;

/// How far the body darkens under a film for each unit that wood takes in more: with stain in it, and without.
const DEEPENS_STAINED: f32 = 0.06;
const DEEPENS_PLAIN: f32 = 0.22;
/// The lightest and darkest that this leaves.
const BODY: (f32, f32) = (0.6, 1.25);
/// Below this there is no stain to speak of.
const LEAST_STAIN: f32 = 0.05;

/// Multiplies what the wood takes in by a gain for each pixel.
pub(super) async fn gain(layers: &mut Layers, recipe: &Recipe, gains: &Map) {
    for (takes, gain) in layers.wood.takes.values.iter_mut().zip(&gains.values) {
        *takes *= gain;
    }
    pause().await;
    if !recipe.finish.has_film() {
        return;
    }
    let deepens = if recipe.stain < LEAST_STAIN { DEEPENS_PLAIN } else { DEEPENS_STAINED };
    for (body, gain) in layers.film.body.values.iter_mut().zip(&gains.values) {
        *body *= (1.0 - deepens * (gain - 1.0)).clamp(BODY.0, BODY.1);
    }
}

/// What colours a panel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Colouring {
    /// Dye in the wood.
    Dye,
    /// Colour in the film.
    Film,
}

/// The map that holds the build of a panel's colour: of the kind asked for where the panel has it, else of the other; where
/// nothing colours it, what bled into the film.
pub(super) fn colour<'a>(layers: &'a mut Layers, recipe: &Recipe, kind: Colouring) -> &'a mut Map {
    let film = recipe.amber > 0.0 || recipe.opaque.is_some() || recipe.shaded;
    let dye = recipe.stain > 0.0 && recipe.opaque.is_none();
    match kind {
        Colouring::Dye if dye => &mut layers.wood.takes,
        Colouring::Film if dye && !film => &mut layers.wood.takes,
        _ if film => &mut layers.film.tint,
        _ => &mut layers.film.bled,
    }
}
