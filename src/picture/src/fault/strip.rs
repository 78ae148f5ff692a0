//! What lies beside the wood of a panel where a fault needs a neighbour: a binding along the lower edge, cream, or black
//! beside pale opaque colour; or a strip of dark wood along the left edge. Neither is a fault, so neither is marked.

use crate::light::screen;
use crate::noise::{Chance, cloud};
use crate::panel::{Layers, Recipe};
use crate::pause::pause;
use crate::wood::{Screen, blend, layer};

/// Width of a binding, mm: where it was only glued on, and where colour goes onto it; width of the dark wood.
const NARROW: f32 = 7.0;
const WIDE: f32 = 15.0;
const DARK_WIDTH: (f32, f32) = (14.0, 24.0);
/// Cream binding and its faint grain along the strip: strength, length, width.
const CREAM: Screen = [236, 224, 190];
const CREAM_GRAIN: (f32, f32, f32) = (0.018, 30.0, 0.4);
const BLACK: Screen = [34, 32, 31];
/// Opaque colours of which green is above this are pale.
const PALE: u8 = 150;
/// Dark wood beside the panel, its streaks along the strip and the pores in it.
const DARK: Screen = [74, 44, 34];
const DARK_STREAK: (f32, f32, f32) = (0.28, 45.0, 1.1);
const DARK_PORE: (f32, f32) = (3.0, 0.16);
const DARK_PORES_FROM: f32 = 0.9;
const DARK_PORE_GAIN: f32 = 0.5;
/// The line of the joint: half of its width and its darkness.
const JOINT: f32 = 0.09;
const JOINT_DARK: f32 = 0.45;

/// Lays a binding along the lower edge, `width` mm wide, bare of the panel's colour. The height of its upper line.
async fn binding(layers: &mut Layers, recipe: &Recipe, width: f32) -> f32 {
    let line = layers.grid().height() - width;
    let pale = recipe.opaque.is_some_and(|[_, green, _]| green > PALE);
    let (plastic, seed) = (screen(if pale { BLACK } else { CREAM }), layer(recipe.seed, 1_390));
    let (strength, long, wide) = CREAM_GRAIN;
    lay(
        layers,
        |_, y| y - line,
        |x, y| {
            let gain = 1.0 + strength * cloud(seed, x / long, y / wide);
            plastic.map(|part| part * gain)
        },
    )
    .await;
    line
}

/// What colour can come from or go to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Neighbour {
    Binding,
    DarkWood,
}

/// A neighbour that a fault needs, and on half of the panels the other one too, so that a neighbour by itself does not tell
/// which fault it is: the height of the binding's upper line and the right edge of the dark wood, mm; without them the edges
/// of the panel.
pub(super) async fn beside(layers: &mut Layers, recipe: &Recipe, needed: Neighbour) -> (f32, f32) {
    let both = Chance::new(layer(recipe.seed, 1_394)).even() < 0.5;
    let line = if both || needed == Neighbour::Binding {
        binding(layers, recipe, WIDE).await
    } else {
        layers.grid().height()
    };
    let edge = if both || needed == Neighbour::DarkWood { dark_wood(layers, recipe).await } else { 0.0 };
    (line, edge)
}

/// Lays a strip of dark wood along the left edge, its own grain along it. Its right edge, mm.
async fn dark_wood(layers: &mut Layers, recipe: &Recipe) -> f32 {
    let width = Chance::new(layer(recipe.seed, 1_395)).between(DARK_WIDTH.0, DARK_WIDTH.1);
    let (dark, seed) = (screen(DARK), |number: u32| layer(recipe.seed, 1_391 + number));
    let (strength, long, wide) = DARK_STREAK;
    lay(
        layers,
        |x, _| width - x,
        |x, y| {
            let streak = cloud(seed(0), y / long, x / wide);
            let pore = cloud(seed(1), y / DARK_PORE.0, x / DARK_PORE.1);
            let gain = if pore > DARK_PORES_FROM { DARK_PORE_GAIN } else { 1.0 };
            dark.map(|part| part * gain * libm::expf(strength * streak))
        },
    )
    .await;
    width
}

/// The height of the joint along which things were glued: that with a binding on one half of the panels, the lower edge on
/// the other. Faults that are told apart share it, so that the binding gives nothing away.
pub(super) async fn joint(layers: &mut Layers, recipe: &Recipe) -> f32 {
    if Chance::new(layer(recipe.seed, 1_393)).even() < 0.5 {
        binding(layers, recipe, NARROW).await
    } else {
        layers.grid().height()
    }
}

/// Lays the binding that was taped. The height of its upper line.
pub(super) async fn taped(layers: &mut Layers, recipe: &Recipe) -> f32 {
    binding(layers, recipe, WIDE).await
}

/// Replaces the wood where `beyond`, mm, is above 0, and draws the joint at 0.
async fn lay(layers: &mut Layers, beyond: impl Fn(f32, f32) -> f32, colour: impl Fn(f32, f32) -> [f32; 3]) {
    let grid = layers.grid();
    for place in 0..grid.len() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let off = beyond(x, y) / grid.scale;
        if off < -1.0 - JOINT / grid.scale {
            continue;
        }
        let share = (off + 0.5).clamp(0.0, 1.0);
        let (wood, film) = (&mut layers.wood, &mut layers.film);
        for map in [
            &mut wood.takes,
            &mut wood.pore,
            &mut wood.tilt,
            &mut wood.early,
            &mut wood.fibre,
            &mut film.tint,
        ] {
            if let Some(value) = map.values.get_mut(place) {
                *value *= 1.0 - share;
            }
        }
        // The share of the pixel that the joint covers.
        let joint = ((off + JOINT / grid.scale).min(0.5) - (off - JOINT / grid.scale).max(-0.5)).max(0.0);
        let [red, green, blue] = &mut wood.colour;
        if let (Some(red), Some(green), Some(blue)) =
            (red.values.get_mut(place), green.values.get_mut(place), blue.values.get_mut(place))
        {
            let gain = 1.0 - JOINT_DARK * joint.min(1.0);
            [*red, *green, *blue] = blend([*red, *green, *blue], colour(x, y), share).map(|part| part * gain);
        }
    }
}
