//! Filler haze: pore filler that was left too long and wiped too little. A muddy film on the flats between the pores,
//! cloudy, most of it about the mouths of the pores, in smears across the grain and in the corners. It lies on the wood and is there before any clear; blush comes with a wet coat and is
//! as white over the pores.

use super::field::coarse;
use crate::light::{Colour, screen};
use crate::noise::{Chance, cloud, soft};
use crate::number::smooth;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::{blend, layer};

/// How much of the wood a full smear hides, and how much of the face has smears.
const HIDES: [f32; 3] = [0.30, 0.44, 0.58];
const SPREAD: [f32; 3] = [-0.45, 0.05, 0.55];
/// Patches that the rag missed, longer the way it went, and how softly they end.
const PATCH: f32 = 19.0;
const LONGER: f32 = 2.4;
const PATCH_EDGE: (f32, f32) = (-0.7, 1.7);
/// Corners hold it: within so many mm, so many steps more.
const CORNER: f32 = 20.0;
const CORNER_MORE: f32 = 2.0;
/// Strokes of the rag: angle to the grain, degrees, length and width, mm, bend over the panel, and how far they part the smear.
const ANGLE: (f32, f32) = (66.0, 114.0);
const STROKE: (f32, f32) = (34.0, 4.5);
const FINE: (f32, f32) = (16.0, 1.1);
const BEND: f32 = 0.0025;
const PARTS: (f32, f32) = (0.34, 0.10);
/// It lies in clouds besides, thicker and thinner without direction: sizes, mm, and how much.
const CLOUDS: [(f32, f32); 2] = [(8.0, 0.30), (2.6, 0.14)];
/// Most of it is left about the mouths of the pores: how far, mm, and how much more than where no pore is near.
const MOUTH: f32 = 0.7;
const AT_PORES: (f32, f32) = (0.72, 3.2);
const AT_PORES_MOST: f32 = 1.5;
/// Filler dries pale, halfway to the colour of its powder; without a colour of its own it is a walnut brown.
const POWDER: Colour = [0.62, 0.53, 0.43];
const DRIES: f32 = 0.55;
const BROWN: [u8; 3] = [74, 50, 32];
/// Stain does not reach the wood through it.
const KEEPS_OUT: f32 = 0.6;
/// Pixels with more pore than this are filled and wiped level.
const PORE: (f32, f32) = (0.15, 0.6);
/// Share hidden from which it counts as the fault.
const MARKED: (f32, f32) = (0.06, 0.14);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_270 + number);
    let mut chance = Chance::new(seed(0));
    let turn = chance.between(ANGLE.0, ANGLE.1).to_radians();
    let (sine, cosine) = (libm::sinf(turn), libm::cosf(turn));
    let muddy = blend(screen(recipe.filler.unwrap_or(BROWN)), POWDER, DRIES);
    let patches = coarse(grid, |x, y| {
        let corner = libm::hypotf(x.min(grid.width() - x), y.min(grid.height() - y)) / CORNER;
        let more = CORNER_MORE * libm::expf(-corner * corner);
        let (along, off) = (x * cosine + y * sine, y * cosine - x * sine);
        let lies = soft(seed(1), PATCH, along / LONGER, off) + more + severity.of(SPREAD);
        smooth(PATCH_EDGE.0, PATCH_EDGE.1, lies)
    })
    .await;
    let mouths = layers.wood.pore.blurred(MOUTH).await;
    for place in 0..grid.len() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let patch = patches.near(x, y);
        if patch <= 0.0 {
            continue;
        }
        let (along, off) = (x * cosine + y * sine, y * cosine - x * sine);
        let off = off + BEND * along * along;
        let stroke = PARTS.0 * cloud(seed(2), along / STROKE.0, off / STROKE.1)
            + PARTS.1 * cloud(seed(3), along / FINE.0, off / FINE.1)
            + (4..).zip(CLOUDS).map(|(n, (size, share))| share * soft(seed(n), size, x, y)).sum::<f32>();
        let mouth = mouths.values.get(place).copied().unwrap_or(0.0);
        let mouth = (AT_PORES.0 + AT_PORES.1 * mouth).min(AT_PORES_MOST);
        let pore = layers.wood.pore.values.get(place).copied().unwrap_or(0.0);
        let flat = 1.0 - smooth(PORE.0, PORE.1, pore);
        let share = severity.of(HIDES)
            * (mouth * (patch * (1.0 + stroke) + stroke * patch * (1.0 - patch))).clamp(0.0, 1.0);
        for (map, part) in layers.wood.colour.iter_mut().zip(muddy) {
            if let Some(value) = map.values.get_mut(place) {
                *value += (part - *value) * share * flat;
            }
        }
        if let Some(takes) = layers.wood.takes.values.get_mut(place) {
            *takes *= 1.0 - KEEPS_OUT * share;
        }
        if let Some(mask) = layers.mask.values.get_mut(place) {
            *mask = mask.max(smooth(MARKED.0, MARKED.1, share));
        }
    }
}
