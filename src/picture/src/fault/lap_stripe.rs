//! Lap stripes: lighter and darker bands of one transparent colour along the passes of the gun, one a pass, because the fans overlapped too little. They
//! lie in the colour alone: nothing in the height, nothing on bare wood, and as far apart as the fan is wide, where chatter
//! is in the wood, close and across.

use super::uptake;
use crate::map::Map;
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, smooth};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Width of the fan: a small gun, near, so that a panel of this size holds some passes.
const FAN: (f32, f32) = (30.0, 36.0);
/// Way from pass to pass in widths of the fan; half a width would be even.
const STEP: [f32; 3] = [0.77, 0.84, 0.93];
/// Share of the fan's half-width that is even, from where it thins out.
const EVEN: f32 = 0.25;
/// How far passes differ in strength, and stray from their place in widths of the fan.
const UNEVEN: f32 = 0.06;
const ASTRAY: f32 = 0.02;
/// A hand wavers along a pass: so many mm, over such a length.
const WAVERS: f32 = 1.0;
const WAVER_LENGTH: f32 = 55.0;
/// Cells between the noise of one pass and the next.
const APART: f32 = 7.0;
/// How far the build follows the fans.
const GAIN: [f32; 3] = [0.85, 1.0, 1.15];
/// Mist of the neighbouring passes lies everywhere, and no stripe is without colour: the least build.
const LEAST: f32 = 0.62;
/// Colour for striking passes has red and brown in it: builds of both for each build that a dark bar has more.
const RED: f32 = 0.30;
const BROWN: f32 = 0.15;
/// Most passes that cross a panel.
const PASSES: usize = 24;
/// Change of build from which a place counts as the fault.
const MARKED: (f32, f32) = (0.05, 0.14);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_320 + number);
    let mut chance = Chance::new(seed(0));
    let half = 0.5 * chance.between(FAN.0, FAN.1);
    let step = 2.0 * half * severity.of(STEP);
    let first = -step * chance.between(0.5, 1.5);
    let passes: [(f32, f32); PASSES] = core::array::from_fn(|n| {
        let place = first + coordinate(n) * step + 2.0 * half * ASTRAY * chance.normal();
        (place, 1.0 + UNEVEN * chance.normal())
    });
    // Mean of a fan's profile over its half-width, spread over the way between passes.
    let mean = (0.5 + 0.5 * EVEN) * 2.0 * half / step;
    let mut builds = Map::of(grid, 0.0);
    builds
        .fill(|x, y, _| {
            let fan = |(n, (place, strength)): (usize, &(f32, f32))| {
                let off = (y - place).abs();
                if off > half + 2.0 * WAVERS {
                    return 0.0;
                }
                let off = y - place - WAVERS * cloud(seed(1), x / WAVER_LENGTH, APART * coordinate(n) + 0.5);
                strength * (1.0 - smooth(EVEN, 1.0, off.abs() / half))
            };
            let laid = passes.iter().enumerate().map(fan).sum::<f32>();
            (1.0 + severity.of(GAIN) * (laid / mean - 1.0)).max(LEAST)
        })
        .await;
    for (mask, build) in layers.mask.values.iter_mut().zip(&builds.values) {
        *mask = mask.max(smooth(MARKED.0, MARKED.1, (build - 1.0).abs()));
    }
    pause().await;
    let map = uptake::colour(layers, recipe, uptake::Colouring::Film);
    for (value, build) in map.values.iter_mut().zip(&builds.values) {
        *value *= build;
    }
    if recipe.amber > 0.0 && recipe.opaque.is_none() {
        let film = &mut layers.film;
        let maps = film.shade.values.iter_mut().zip(&mut film.bled.values);
        for ((brown, red), build) in maps.zip(&builds.values) {
            let more = (build - 1.0).max(0.0);
            *brown += BROWN * more;
            *red += RED * more;
        }
    }
}
