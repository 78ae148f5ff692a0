//! White pores: uncoloured filler in dark wood. Solid pale dashes, the same from every angle, where air in a pore changes with
//! the lamp's side.

use super::pale_pore::choose;
use crate::panel::{Layers, Recipe, Severity};

/// How solid it is: a lamp in the middle shows as much of air in pores.
const SOLID: f32 = 0.65;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    for (place, share) in choose(layers, recipe, severity).await {
        if let Some(pale) = layers.film.grey.values.get_mut(place) {
            *pale = pale.max(SOLID * share);
        }
    }
}
