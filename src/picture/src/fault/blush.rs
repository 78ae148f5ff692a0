//! Blush: water that fell out of the air into the wet film, or resin that dropped out of it. A milky, grey-white cloud, worst
//! where the film is thick; it lies between the pores too. It is in the film: a damp cloth changes nothing.

use super::milk;
use crate::panel::{Layers, Recipe, Severity};

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let milk = milk::gather(layers, recipe, severity).await;
    milk::lay(layers, &milk.cloud).await;
}
