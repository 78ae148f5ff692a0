//! Fish-eyes: smooth bowls, one to several millimetres wide, that opened while the coat was wet, most of them round one place;
//! the rim stands up, the floor is thin and pale, and where bowls meet only a ridge is left between them. They ignore the
//! pores. Pops and pinholes are pin-size and hard; a nib stands up.

use super::field::join;
use super::scatter::Cluster;
use crate::map::{Map, near};
use crate::noise::Chance;
use crate::number::smooth;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Bowls on a panel, their median radius, its spread and range.
const COUNT: [usize; 3] = [5, 11, 27];
const RADIUS: [f32; 3] = [1.8, 1.9, 2.1];
const RADIUS_SPREAD: f32 = 0.38;
const RADIUS_RANGE: (f32, f32) = (0.95, 3.9);
/// Depth, micrometres; how far single bowls leave it; a bowl of this radius is as deep as that, and wider ones hardly deeper.
const DEPTH: [f32; 3] = [14.0, 19.0, 25.0];
const DEEPER: (f32, f32) = (0.7, 1.2);
const WIDE: f32 = 1.5;
const DEEPEST: f32 = 1.3;
/// Two that are nearer to each other than this share of their radii have run into one; tries for a place.
const APART: f32 = 0.75;
const TRIES: usize = 8;
/// Share that lies in the cluster, and its spread along and across the grain.
const CLUSTERED: f32 = 0.65;
const CLUSTER: (f32, f32) = (25.0, 19.0);
/// Longest against widest, and how the outline waves: lobes, and share of the radius.
const OVAL: f32 = 1.35;
const LOBES: f32 = 3.0;
const WAVES: (f32, f32) = (0.02, 0.07);
/// Where the floor ends and the wall is at its height, in radii.
const WALL: (f32, f32) = (0.50, 1.00);
/// The rim: where it stands, its width in radii, and its height against the depth.
const RIM: (f32, f32) = (1.16, 0.30);
const RIM_HIGH: f32 = 0.38;
/// Radii beyond which nothing is changed, and up to which it is seen.
const END: f32 = 2.0;
const MARKED: f32 = 1.35;
/// Share of the colour that has left the floor, and that has come to the rim; thin colour reaches up the wall.
const PALE: f32 = 0.9;
const DARK: f32 = 0.30;
const UP_THE_WALL: f32 = 0.7;
/// Wood below the thin floor looks paler, and below the rim deeper: gains.
const FLOOR: f32 = 0.42;
const BELOW_RIM: f32 = 0.12;

/// The thin floor dried duller than the coat round it: roughness, radians, and share of the mirrored light scattered wide.
const FLOOR_ROUGH: f32 = 0.012;
const FLOOR_SCATTERS: f32 = 0.22;

/// What bowls do to the film: where they meet, the deeper one counts.
struct Bowls {
    /// Share of the film that has gone, 0 to 1, and what it comes to in micrometres.
    gone: Map,
    deep: Map,
    /// What stands up round them, the same.
    come: Map,
    high: Map,
}

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_001));
    let cluster = Cluster::new(grid, &mut chance, CLUSTER, CLUSTERED);
    let map = || Map::of(grid, 0.0);
    let mut bowls = Bowls { gone: map(), deep: map(), come: map(), high: map() };
    let mut opened: Vec<((f32, f32), f32)> = Vec::new();
    for _ in 0..severity.of(COUNT) {
        let radius = chance.about(severity.of(RADIUS), RADIUS_SPREAD).clamp(RADIUS_RANGE.0, RADIUS_RANGE.1);
        let depth = severity.of(DEPTH) * chance.between(DEEPER.0, DEEPER.1) * (radius / WIDE).min(DEEPEST);
        let free = |(x, y): &(f32, f32)| {
            opened.iter().all(|((ox, oy), other)| libm::hypotf(x - ox, y - oy) > APART * (radius + other))
        };
        let place = (0..TRIES).map(|_| cluster.place(grid, &mut chance)).find(free);
        if let Some(at) = place {
            opened.push((at, radius));
            open(layers, &mut bowls, &mut chance, at, radius, depth);
            pause().await;
        }
    }
    let film = &mut layers.film;
    let holes = bowls.gone.values.iter().zip(&bowls.deep.values);
    let rims = bowls.come.values.iter().zip(&bowls.high.values);
    let maps = film.height.values.iter_mut().zip(&mut film.tint.values).zip(&mut film.body.values);
    let gloss = film.rough.values.iter_mut().zip(&mut film.veil.values);
    for ((((height, tint), body), (rough, veil)), ((gone, deep), (come, high))) in
        maps.zip(gloss).zip(holes.zip(rims))
    {
        *rough += FLOOR_ROUGH * gone;
        join(veil, FLOOR_SCATTERS * gone);
        *height += high * (1.0 - gone) - deep;
        *tint *= 1.0 - PALE * libm::powf(*gone, UP_THE_WALL) + DARK * come * (1.0 - gone);
        *body *= 1.0 + FLOOR * gone - BELOW_RIM * come * (1.0 - gone);
    }
}

fn open(
    layers: &mut Layers,
    bowls: &mut Bowls,
    chance: &mut Chance,
    (x, y): (f32, f32),
    radius: f32,
    depth: f32,
) {
    let grid = layers.grid();
    let (turn, oval) = (chance.even() * core::f32::consts::PI, chance.between(1.0, OVAL));
    let (sine, cosine) = (libm::sinf(turn), libm::cosf(turn));
    let waves = chance.between(WAVES.0, WAVES.1);
    // As large as a round one.
    let (long, wide) = (libm::sqrtf(oval), 1.0 / libm::sqrtf(oval));
    for (column, row, dx, dy) in near(grid, x, y, END * radius * long) {
        let (u, v) = ((dx * cosine + dy * sine) / long, (dy * cosine - dx * sine) / wide);
        let angle = libm::atan2f(v, u);
        let off = libm::hypotf(u, v) / (radius * (1.0 + waves * libm::sinf(LOBES * angle + turn)));
        let hole = 1.0 - smooth(WALL.0, WALL.1, off);
        let beside = (off - RIM.0) / RIM.1;
        let rim = libm::expf(-beside * beside);
        let place = row * grid.columns + column;
        let seen = if off < MARKED { 1.0 } else { 0.0 };
        for (map, value) in [
            (&mut bowls.gone, hole),
            (&mut bowls.deep, depth * hole),
            (&mut bowls.come, rim),
            (&mut bowls.high, RIM_HIGH * depth * rim),
            (&mut layers.mask, seen),
        ] {
            if let Some(slot) = map.values.get_mut(place) {
                *slot = slot.max(value);
            }
        }
    }
}
