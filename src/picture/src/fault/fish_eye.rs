//! Fish-eyes: smooth bowls that opened while the coat was wet, most of them in one cluster; the rim stands up, the floor is
//! thin and pale. They ignore the pores.

use crate::noise::Chance;
use crate::number::{coordinate, smooth};
use crate::panel::{Layers, Recipe, Severity};
use crate::wood::layer;

/// Bowls on a panel, their median radius, and their depth.
const COUNT: [usize; 3] = [3, 9, 26];
const RADIUS: [f32; 3] = [1.9, 2.0, 2.2];
const RADIUS_SPREAD: f32 = 0.40;
const RADIUS_RANGE: (f32, f32) = (0.7, 4.2);
const DEPTH: [f32; 3] = [15.0, 21.0, 27.0];
/// Share that lies in the cluster, and its spread.
const CLUSTERED: f32 = 0.65;
const CLUSTER: (f32, f32) = (26.0, 20.0);

pub(super) fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_001));
    let middle = (chance.between(0.25, 0.75) * grid.width(), chance.between(0.25, 0.75) * grid.height());
    for _ in 0..severity.of(COUNT) {
        let (x, y) = if chance.even() < CLUSTERED {
            (middle.0 + CLUSTER.0 * chance.normal() * 0.5, middle.1 + CLUSTER.1 * chance.normal() * 0.5)
        } else {
            (chance.even() * grid.width(), chance.even() * grid.height())
        };
        let radius = chance.about(severity.of(RADIUS), RADIUS_SPREAD).clamp(RADIUS_RANGE.0, RADIUS_RANGE.1);
        let depth = severity.of(DEPTH) * chance.between(0.7, 1.2) * (radius / 1.4).min(1.3);
        bowl(layers, &mut chance, (x, y), radius, depth);
    }
}

fn bowl(layers: &mut Layers, chance: &mut Chance, (x, y): (f32, f32), radius: f32, depth: f32) {
    let (turn, oval) = (chance.even() * core::f32::consts::PI, chance.between(1.0, 1.35));
    let (sine, cosine) = (libm::sinf(turn), libm::cosf(turn));
    let (lobes, wobble) = (coordinate(3), 0.05 * chance.between(0.5, 1.5));
    for (column, row, dx, dy) in crate::map::near(layers.grid(), x, y, 2.2 * radius) {
        let (u, v) = (dx * cosine + dy * sine, (dy * cosine - dx * sine) * oval);
        let angle = libm::atan2f(v, u);
        let off = libm::hypotf(u, v) / (radius * (1.0 + wobble * libm::sinf(lobes * angle + turn)));
        let hole = 1.0 - smooth(0.30, 1.02, off);
        let rim = libm::expf(-((off - 1.16) / 0.30) * ((off - 1.16) / 0.30));
        layers.film.height.add(column, row, depth * (0.3 * rim - hole));
        let tint = 1.0 - 0.9 * libm::powf(hole, 0.7) + 0.30 * rim;
        let place = row * layers.grid().columns + column;
        if let Some(value) = layers.film.tint.values.get_mut(place) {
            *value *= tint;
        }
        if off < 1.3 {
            layers.mask.add(column, row, 1.0);
        }
    }
}
