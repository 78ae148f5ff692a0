//! Raised grain: water, or the first thin coat, has swollen cut fibres and they stand up stiff: short hairs along the grain,
//! all over, thicker in the soft early wood. A low lamp shows them best. Dry spray is powder without direction, and it rubs
//! off; nibs are few and lie anyhow.

use crate::map::Map;
use crate::noise::{Chance, soft};
use crate::number::{coordinate, smooth, whole};
use crate::panel::{Finish, Layers, Recipe, Severity};
use crate::pause::{MANY, pause};
use crate::wood::layer;

/// Fibres on a square centimetre.
const FIBRES: [f32; 3] = [26.0, 55.0, 100.0];
/// Median length of one that stands, its spread; width; how far it turns from the grain, radians.
const LENGTH: f32 = 1.9;
const LENGTH_SPREAD: f32 = 0.45;
const WIDTH: (f32, f32) = (0.09, 0.18);
const TURNS: f32 = 0.07;
/// How it rises from the end that still lies in the wood.
const RISES: [f32; 4] = [0.15, 0.35, 0.65, 1.0];
/// Height of a fibre that fills a pixel, micrometres, under a film and on bare wood; the film draws up round it.
const HEIGHT: [f32; 3] = [24.0, 30.0, 36.0];
const BARE: f32 = 1.8;
const ROUNDED: f32 = 0.10;
/// Share of the height that each stage of finish still shows.
const COLOURED: f32 = 0.8;
const CLEARED: f32 = 0.35;
const BUFFED: f32 = 0.05;
/// A standing fibre catches light and throws a small shade below it: gains of the body, the lines
/// that the shade is drawn in below the fibre, mm, and the share of each.
const CATCHES: f32 = 1.0;
const SHADES: f32 = 0.6;
const BELOW: [f32; 3] = [0.14, 0.22, 0.30];
const SHARE: f32 = 0.65;
/// Share of the light that a fibre scatters by itself, and its colour: broken cells are pale whatever the wood.
const PALE: f32 = 0.5;
const PALE_COLOUR: [f32; 3] = [1.0, 0.93, 0.83];
/// Fuzz between: roughness, radians, where fibres stand.
const FUZZ: [f32; 3] = [0.003, 0.006, 0.009];
/// Hard late wood swells less: share that it loses. Patches that were wetter, and share of them.
const LATE: f32 = 0.35;
const PATCH: f32 = 30.0;
const PATCHES: [f32; 3] = [0.1, 0.6, 1.4];
const PATCH_EDGE: (f32, f32) = (-0.8, 0.5);
/// Fibres are this close where a place counts as the fault, mm.
const CLOSE: f32 = 1.4;
const MARKED: (f32, f32) = (0.003, 0.03);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_344));
    let (mut stands, mut shade) = (Map::of(grid, 0.0), Map::of(grid, 0.0));
    let wetter = |x: f32, y: f32| {
        let patch = soft(layer(recipe.seed, 1_345), PATCH, x, y) + severity.of(PATCHES);
        smooth(PATCH_EDGE.0, PATCH_EDGE.1, patch)
    };
    for number in 0..whole(severity.of(FIBRES) * grid.square_centimetres()) {
        if number.is_multiple_of(MANY) {
            pause().await;
        }
        let (x, y) = (chance.even() * grid.width(), chance.even() * grid.height());
        let stands_here = chance.even() < wetter(x, y);
        let length = chance.about(LENGTH, LENGTH_SPREAD);
        let width = chance.between(WIDTH.0, WIDTH.1);
        let (turn, tall) = (TURNS * chance.normal(), chance.between(0.5, 1.0));
        let (dx, dy) = (0.5 * length * libm::cosf(turn), 0.5 * length * libm::sinf(turn));
        // One end stands up, the other still lies in the wood.
        let (mut from, way) = (-1.0, if chance.even() < 0.5 { 1.0 } else { -1.0 });
        if !stands_here {
            continue;
        }
        for part in RISES {
            let to = from + 2.0 / coordinate(RISES.len());
            let at = |share: f32| (x + way * share * dx, y + way * share * dy);
            stands.stroke(at(from), at(to), width, part * tall);
            from = to;
        }
        for below in BELOW {
            shade.stroke((x - dx, y - dy + below), (x + dx, y + dy + below), width, SHARE * tall);
        }
    }
    let firm = layers.wood.early.values.iter().map(|early| 1.0 - LATE * (1.0 - early.clamp(0.0, 1.0)));
    for ((stands, shade), firm) in stands.values.iter_mut().zip(&mut shade.values).zip(firm) {
        *stands *= firm;
        *shade *= firm;
    }
    pause().await;
    let bare = recipe.finish == Finish::Bare;
    let shows = shown(recipe.finish);
    let rounded = if bare { stands.clone() } else { stands.blurred(ROUNDED).await };
    let near = stands.blurred(CLOSE).await;
    let film = &mut layers.film;
    let rise = severity.of(HEIGHT) * shows * if bare { BARE } else { 1.0 };
    for (height, fibre) in film.height.values.iter_mut().zip(&rounded.values) {
        *height += rise * fibre.min(1.0);
    }
    for ((rough, mask), near) in film.rough.values.iter_mut().zip(&mut layers.mask.values).zip(&near.values) {
        let there = smooth(MARKED.0, MARKED.1, *near);
        *rough += severity.of(FUZZ) * shows * there;
        *mask = mask.max(there);
    }
    pause().await;
    if recipe.opaque.is_none() {
        film.haze_colour = PALE_COLOUR;
        for (haze, fibre) in film.haze.values.iter_mut().zip(&stands.values) {
            *haze = haze.max(shows * PALE * fibre.min(1.0));
        }
        for ((body, fibre), shade) in film.body.values.iter_mut().zip(&stands.values).zip(&shade.values) {
            *body *= 1.0 + shows * (CATCHES * fibre.min(1.0) - SHADES * shade.min(1.0));
        }
    }
}

const fn shown(finish: Finish) -> f32 {
    match finish {
        Finish::Bare | Finish::Sealed => 1.0,
        Finish::Coloured => COLOURED,
        Finish::Cleared => CLEARED,
        Finish::Rubbed | Finish::Buffed => BUFFED,
    }
}
