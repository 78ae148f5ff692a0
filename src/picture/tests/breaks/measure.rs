//! What tests of pictures share: a wood without marks of its own, and how pixels are compared.

use stepboard_picture::{Fault, Finish, Grid, Lamp, Panel, Recipe, Severity, Species};

/// A pale, even wood in amber clear, with a fault or without: what is seen on it is not the wood.
pub(crate) fn recipe(fault: Option<(Fault, Severity)>, seed: u32) -> Recipe {
    Recipe { finish: Finish::Cleared, amber: 0.35, fault, ..Recipe::bare(Species::plain(), seed) }
}

/// A panel of it, 120 by 90 mm.
pub(crate) fn panel(fault: Option<(Fault, Severity)>, seed: u32, scale: f32) -> Panel {
    Panel::draw(recipe(fault, seed), Grid::covering(120.0, 90.0, scale))
}

/// The fault of a slug.
pub(crate) fn named(slug: &str) -> Fault {
    Fault::from_slug(slug).expect("a fault that is drawn")
}

/// Brightness of every pixel under a lamp, 0 to 255.
pub(crate) fn brightness(panel: &Panel, lamp: Lamp) -> Vec<f32> {
    let mut pixels = Vec::new();
    panel.light(lamp, &mut pixels);
    pixels.chunks_exact(4).map(|p| p.iter().take(3).map(|part| f32::from(*part)).sum::<f32>() / 3.0).collect()
}

/// Share of the face that a fault changes by more than the eye overlooks: 6 of 255 steps in any colour.
pub(crate) fn changed(with: &Panel, without: &Panel, lamp: Lamp) -> f32 {
    let (mut a, mut b) = (Vec::new(), Vec::new());
    with.light(lamp, &mut a);
    without.light(lamp, &mut b);
    let pairs = a.chunks_exact(4).zip(b.chunks_exact(4));
    let seen = pairs.filter(|(a, b)| a.iter().zip(b.iter()).any(|(a, b)| a.abs_diff(*b) > 6)).count();
    seen as f32 / with.mask().len() as f32
}
