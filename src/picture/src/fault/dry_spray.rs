//! Dry spray: droplets that were dry before they landed lie on the film as grit and powder. The lamp's image is spread out or
//! gone, the wood under it is dulled, and a low lamp shows sand; worst toward one side, where the spray drifted to. Orange peel
//! keeps its gloss, nibs are single; what is powder wipes off, but the film below stays rough.

use super::field::{coarse, join};
use super::wipe;
use crate::light::screen;
use crate::map::Map;
use crate::noise::{Chance, soft};
use crate::number::{smooth, whole};
use crate::panel::{Layers, Probe, Recipe, Severity};
use crate::pause::{MANY, pause};
use crate::wood::{blend, layer};

/// How much of the face it takes, on a scale on which the panel is two wide.
const SPREAD: [f32; 3] = [-0.60, 0.05, 0.60];
const EDGE: (f32, f32) = (-1.2, 1.3);
/// Air that turned: size of its clouds and their share.
const CLOUDS: [(f32, f32); 2] = [(34.0, 0.22), (12.0, 0.10)];
/// Droplets on a square centimetre where it is worst; median radius and its spread.
const DROPS: [f32; 3] = [240.0, 380.0, 560.0];
const RADIUS: f32 = 0.042;
const RADIUS_SPREAD: f32 = 0.40;
/// Height of one that fills a pixel, micrometres.
const HIGH: f32 = 55.0;
/// Roughness where it is worst, radians.
const ROUGH: [f32; 3] = [0.019, 0.040, 0.066];
/// Powder: share of light that an even dust of it sends back, and that a droplet which fills a pixel does.
const DUST: [f32; 3] = [0.020, 0.035, 0.055];
const DROP: [f32; 3] = [0.30, 0.42, 0.52];
/// The small shade below a droplet that fills a pixel, and how far it lies aside, mm.
const SHADE: f32 = 0.45;
const BELOW: f32 = 0.10;
/// Share of powder and of roughness that stays under a cloth.
const POWDER_STAYS: f32 = 0.2;
const ROUGH_STAYS: f32 = 0.7;
/// Colour of dry lacquer, and how pale its own colour is when it is powder.
const POWDER: [f32; 3] = [1.0, 0.97, 0.92];
const PALER: f32 = 0.35;
/// Share of the worst from which it counts as the fault.
const MARKED: (f32, f32) = (0.10, 0.22);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_051 + number);
    let mut chance = Chance::new(seed(0));
    let toward = chance.even() * core::f32::consts::TAU;
    let (along, across) = (libm::cosf(toward), libm::sinf(toward));
    let lies = coarse(grid, |x, y| {
        let ramp = along * (2.0 * x / grid.width() - 1.0) + across * (2.0 * y / grid.height() - 1.0);
        let clouds = (1..).zip(CLOUDS).map(|(n, (size, share))| share * soft(seed(n), size, x, y));
        smooth(EDGE.0, EDGE.1, ramp + clouds.sum::<f32>() + severity.of(SPREAD))
    })
    .await;
    let (mut drops, mut shades) = (Map::of(grid, 0.0), Map::of(grid, 0.0));
    for number in 0..whole(severity.of(DROPS) * grid.square_centimetres()) {
        if number.is_multiple_of(MANY) {
            pause().await;
        }
        let (x, y) = (chance.even() * grid.width(), chance.even() * grid.height());
        let (landed, radius) = (chance.even(), chance.about(RADIUS, RADIUS_SPREAD));
        if landed < lies.near(x, y) {
            drops.disc((x, y), radius, 1.0);
            shades.disc((x + BELOW, y + BELOW), radius, 1.0);
        }
    }
    let wiped = if recipe.probe == Probe::Wiped {
        wipe::band(layers, &lies, recipe.seed).await
    } else {
        Map::of(grid, 0.0)
    };
    let film = &mut layers.film;
    film.haze_colour = recipe.opaque.map_or(POWDER, |paint| blend(screen(paint), POWDER, PALER));
    let maps = film.height.values.iter_mut().zip(&mut film.rough.values).zip(&mut film.haze.values);
    let maps = maps.zip(&mut layers.mask.values).zip(drops.values.iter().zip(&wiped.values));
    let maps = maps.zip(film.body.values.iter_mut().zip(&shades.values));
    for (place, (((((height, rough), haze), mask), (drop, wiped)), (body, shade))) in maps.enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let (lies, drop) = (lies.near(x, y), drop.min(1.0));
        let powder = 1.0 - (1.0 - POWDER_STAYS) * wiped;
        let grit = 1.0 - (1.0 - ROUGH_STAYS) * wiped;
        *height += HIGH * drop * grit;
        *rough += severity.of(ROUGH) * lies * grit;
        join(haze, powder * (severity.of(DUST) * lies + severity.of(DROP) * drop));
        *body *= 1.0 - SHADE * powder * shade.min(1.0);
        *mask = mask.max(smooth(MARKED.0, MARKED.1, lies));
    }
}
