//! Dust nibs: single specks and fibres that fell into the wet coat. Each stands up out of the film, which has drawn up round it,
//! so that a lamp's edge bends away from it, and the speck is seen inside. They can be counted: dry spray is an even field; a
//! pop or a bowl is a hollow.

use super::scatter::Cluster;
use super::speck::{mark, rise};
use crate::light::screen;
use crate::map::Map;
use crate::noise::Chance;
use crate::number::{coordinate, smooth, whole};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Nibs on a panel; of such as have fallen together the share, and how they are spread; nearest distance of two.
const COUNT: [usize; 3] = [12, 28, 60];
const TOGETHER: f32 = 0.3;
const SPREAD: (f32, f32) = (22.0, 18.0);
const APART: f32 = 3.2;
const TRIES: usize = 8;
/// Median radius, its spread and range.
const RADIUS: f32 = 0.24;
const RADIUS_SPREAD: f32 = 0.45;
const RADIUS_RANGE: (f32, f32) = (0.12, 0.6);
/// Height of one, micrometres, and how much more for each mm of its radius.
const HIGH: (f32, f32) = (8.0, 16.0);
const HIGHER: f32 = 30.0;
/// The film drawn up round it: width, how much wider round larger ones, and share of the height.
const SKIRT: f32 = 0.85;
const SKIRT_WIDER: f32 = 1.6;
const SKIRT_HIGH: f32 = 0.36;
/// The speck inside: share of the nib's radius, and how well it hides what is below.
const SPECK: f32 = 0.75;
const HIDES: f32 = 0.85;
/// It is lit on one side and throws a small shade on the other: gains of what lies below, and how far aside, radii.
const LIT: f32 = 0.22;
const SHADE: f32 = -0.34;
const ASIDE: f32 = 0.75;
/// What falls: wood dust, grit, lint; and fibres: cotton, dark cloth.
const COLOURS: [[u8; 3]; 4] = [[196, 158, 112], [38, 31, 28], [120, 118, 116], [232, 228, 218]];
/// Fibres on a panel, their length and width, their steps, and how they curl, radians a mm.
const FIBRES: [usize; 3] = [2, 5, 11];
const LENGTH: (f32, f32) = (2.5, 6.5);
const WIDTH: (f32, f32) = (0.07, 0.13);
const STEP: f32 = 0.2;
const CURL: f32 = 0.5;
const JITTER: f32 = 0.10;
/// Height of the film over a fibre that fills a pixel, micrometres; and of what is drawn up beside it, how wide, mm.
const OVER: f32 = 45.0;
const BESIDE: f32 = 26.0;
const BESIDE_WIDE: f32 = 0.35;
/// Radii of a nib's skirt that are seen; share of a pixel's fibre, spread out, from which it is marked.
const MARKED: f32 = 1.35;
const MARKED_FIBRE: (f32, f32) = (0.02, 0.06);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut specks = COLOURS.map(|_| Map::of(grid, 0.0));
    nibs(layers, &mut specks, recipe, severity).await;
    fibres(layers, &mut specks, recipe, severity).await;
    for (map, colour) in specks.iter().zip(COLOURS.map(screen)) {
        for (place, share) in map.values.iter().enumerate().filter(|(_, share)| **share > 0.0) {
            layers.film.cover.lay(place % grid.columns, place / grid.columns, colour, HIDES * share.min(1.0));
        }
        pause().await;
    }
}

async fn nibs(layers: &mut Layers, specks: &mut [Map], recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_031));
    let cluster = Cluster::new(grid, &mut chance, SPREAD, TOGETHER);
    let mut fallen: Vec<(f32, f32)> = Vec::new();
    for _ in 0..severity.of(COUNT) {
        let radius = chance.about(RADIUS, RADIUS_SPREAD).clamp(RADIUS_RANGE.0, RADIUS_RANGE.1);
        let high = chance.between(HIGH.0, HIGH.1) + HIGHER * radius;
        let kind = kind(&mut chance);
        let free = |(x, y): &(f32, f32)| fallen.iter().all(|(ox, oy)| libm::hypotf(x - ox, y - oy) > APART);
        let Some(at) = (0..TRIES).map(|_| cluster.place(grid, &mut chance)).find(free) else { continue };
        fallen.push(at);
        let skirt = SKIRT + SKIRT_WIDER * (radius - RADIUS);
        rise(&mut layers.film.height, at, radius, high);
        rise(&mut layers.film.height, at, skirt, SKIRT_HIGH * high);
        let aside = ASIDE * radius;
        rise(&mut layers.film.body, (at.0 - aside, at.1 - aside), radius, LIT);
        rise(&mut layers.film.body, (at.0 + aside, at.1 + aside), radius, SHADE);
        if let Some(map) = specks.get_mut(kind) {
            map.disc(at, SPECK * radius, 1.0);
        }
        mark(layers, at, MARKED * skirt);
        pause().await;
    }
}

fn kind(chance: &mut Chance) -> usize {
    whole(chance.even() * coordinate(COLOURS.len())).min(COLOURS.len() - 1)
}

async fn fibres(layers: &mut Layers, specks: &mut [Map], recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_032));
    let mut all = Map::of(grid, 0.0);
    for _ in 0..severity.of(FIBRES) {
        let kind = kind(&mut chance);
        let mut at = (chance.even() * grid.width(), chance.even() * grid.height());
        let (length, width) = (chance.between(LENGTH.0, LENGTH.1), chance.between(WIDTH.0, WIDTH.1));
        let (mut heading, curl) = (chance.even() * core::f32::consts::TAU, CURL * chance.normal());
        pause().await;
        for _ in 0..whole(length / STEP) {
            heading += STEP * curl + JITTER * chance.normal();
            let to = (at.0 + STEP * libm::cosf(heading), at.1 + STEP * libm::sinf(heading));
            if let Some(map) = specks.get_mut(kind) {
                map.stroke(at, to, width, 1.0);
            }
            all.stroke(at, to, width, 1.0);
            at = to;
        }
    }
    let beside = all.blurred(BESIDE_WIDE).await;
    let maps = layers.film.height.values.iter_mut().zip(&mut layers.mask.values);
    for ((height, mask), (fibre, beside)) in maps.zip(all.values.iter().zip(&beside.values)) {
        *height += OVER * fibre.min(1.0) + BESIDE * beside;
        *mask = mask.max(smooth(MARKED_FIBRE.0, MARKED_FIBRE.1, *beside));
    }
}
