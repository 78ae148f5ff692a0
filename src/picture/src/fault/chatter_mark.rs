//! Chatter: broad, even bars across the face that a bouncing scraper or a planer left in the wood. A low lamp throws them
//! into light and shade even on bare wood; the burnished crests take less stain. Thin, scattered lines would be sanding
//! scratches; bars in the colour alone, as far apart as a fan is wide, would be lap stripes.

use super::uptake;
use crate::map::Map;
use crate::noise::{Chance, cloud, soft};
use crate::number::smooth;
use crate::panel::{Finish, Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Distance from bar to bar.
const SPACING: (f32, f32) = (3.4, 5.8);
/// Lean of the bars from square to the grain, radians.
const LEAN: f32 = 0.09;
/// Half of the height from valley to crest, micrometres.
const HEIGHT: [f32; 3] = [8.5, 10.5, 13.0];
/// How far the tool's speed wandered: radians, over so many mm.
const WANDER: f32 = 0.35;
const WANDER_LENGTH: f32 = 40.0;
/// Along a bar it changes more slowly, by this share.
const ALONG_BARS: f32 = 0.3;
/// Sharper crests: share of the second harmonic.
const SHARP: f32 = 0.2;
/// Where it bounced: soft patches of this size, more of them the worse it is.
const PATCH: f32 = 46.0;
const PATCHES: [f32; 3] = [-0.15, 0.45, 1.3];
const PATCH_EDGE: (f32, f32) = (-0.9, 0.6);
/// What a crest takes less of stain, and how it shines.
const BURNISHED: [f32; 3] = [0.17, 0.24, 0.32];
const SHINES: f32 = 0.012;
/// Share of the height that each stage of finish still shows.
const SEALED: f32 = 0.9;
const COLOURED: f32 = 0.8;
const CLEARED: f32 = 0.17;
const BUFFED: f32 = 0.06;
/// Strength of a patch from which it counts as the fault.
const MARKED: (f32, f32) = (0.2, 0.4);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_310 + number);
    let mut chance = Chance::new(seed(0));
    let spacing = chance.between(SPACING.0, SPACING.1);
    let lean = LEAN * chance.normal();
    let mut strength = Map::of(grid, 0.0);
    strength
        .fill(|x, y, _| smooth(PATCH_EDGE.0, PATCH_EDGE.1, soft(seed(1), PATCH, x, y) + severity.of(PATCHES)))
        .await;
    let mut wave = Map::of(grid, 0.0);
    wave.fill(|x, y, _| {
        let drift = WANDER * cloud(seed(2), x / WANDER_LENGTH, ALONG_BARS * y / WANDER_LENGTH);
        let phase = core::f32::consts::TAU * (x + lean * y) / spacing + drift;
        libm::sinf(phase) + SHARP * libm::cosf(2.0 * phase)
    })
    .await;
    for (wave, strength) in wave.values.iter_mut().zip(&strength.values) {
        *wave *= strength;
    }
    pause().await;
    let shows = severity.of(HEIGHT) * shown(recipe.finish);
    for (height, wave) in layers.film.height.values.iter_mut().zip(&wave.values) {
        *height += shows * wave;
    }
    for (mask, strength) in layers.mask.values.iter_mut().zip(&strength.values) {
        *mask = mask.max(smooth(MARKED.0, MARKED.1, *strength));
    }
    pause().await;
    if recipe.opaque.is_some() {
        return;
    }
    for (body, wave) in layers.film.body.values.iter_mut().zip(&wave.values) {
        *body *= 1.0 + SHINES * wave;
    }
    for wave in &mut wave.values {
        *wave = 1.0 - severity.of(BURNISHED) * *wave;
    }
    pause().await;
    uptake::gain(layers, recipe, &wave).await;
}

const fn shown(finish: Finish) -> f32 {
    match finish {
        Finish::Bare => 1.0,
        Finish::Sealed => SEALED,
        Finish::Coloured => COLOURED,
        Finish::Cleared => CLEARED,
        Finish::Rubbed | Finish::Buffed => BUFFED,
    }
}
