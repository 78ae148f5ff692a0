//! Water spots: drops stood on a fresh film or dried on it. Flat white rings and pale discs with the shape of a drop, where blush is
//! a cloud without shape; they lie in the film, not in the wood, and a cloth leaves them.

use super::field::join;
use crate::map::{Rows, near};
use crate::noise::{Chance, soft};
use crate::number::smooth;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Drops on a panel, their median radius, its spread and range, mm: a drop that has run out on a level face.
const DROPS: [usize; 3] = [2, 5, 10];
const RADIUS: [f32; 3] = [4.8, 5.2, 5.6];
const RADIUS_SPREAD: f32 = 0.42;
const RADIUS_RANGE: (f32, f32) = (2.4, 10.0);
/// Shares of the panel between which their middle lies.
const INNER: (f32, f32) = (0.3, 0.7);
/// They fell together: share of the panel over which they lie about one place.
const SCATTER: f32 = 0.24;
/// Drops that touch run into one: those that stay apart do not lap over each other. Tries for the place of one.
const TRIES: usize = 12;
/// The outline: oval up to this, and uneven by a share of the radius, over so many radii.
const OVAL: f32 = 1.12;
const UNEVEN: f32 = 0.035;
const UNEVEN_SIZE: f32 = 1.3;
/// The ring where it dried last, in radii: how far out, how thick inward and outward.
const RING: f32 = 0.94;
const INWARD: f32 = 0.17;
const OUTWARD: f32 = 0.10;
/// It dried faster here than there: what a ring has least, and the size of the change, in radii.
const FAINTEST: f32 = 0.7;
const FAINT_SIZE: f32 = 1.0;
/// How white the ring is, and of that the spot inside, from clear to filled.
const WHITE: [f32; 3] = [0.24, 0.32, 0.40];
const INSIDE: (f32, f32) = (0.15, 0.85);
const MOTTLE: f32 = 0.12;
const MOTTLE_SIZE: f32 = 2.6;
/// What it does to the gloss where it is whitest: roughness, radians, share scattered wide.
const DULLS: f32 = 0.004;
const SCATTERS: f32 = 0.5;
/// Nothing is left so many radii out.
const REACH: f32 = 1.25;
/// White from which it counts as the fault.
const MARKED: (f32, f32) = (0.02, 0.04);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_260));
    let middle =
        (chance.between(INNER.0, INNER.1) * grid.width(), chance.between(INNER.0, INNER.1) * grid.height());
    let mut fallen: Vec<((f32, f32), f32)> = Vec::new();
    for number in 0..severity.of(DROPS) {
        let radius = chance.about(severity.of(RADIUS), RADIUS_SPREAD).clamp(RADIUS_RANGE.0, RADIUS_RANGE.1);
        let free = |(x, y): &(f32, f32)| {
            let apart = |((ox, oy), other): &((f32, f32), f32)| libm::hypotf(x - ox, y - oy) > radius + other;
            (0.0..grid.width()).contains(x) && (0.0..grid.height()).contains(y) && fallen.iter().all(apart)
        };
        let place = |_| {
            let mut off = |from: f32, size: f32| from + SCATTER * chance.normal() * size;
            (off(middle.0, grid.width()), off(middle.1, grid.height()))
        };
        let Some(at) = (0..TRIES).map(place).find(free) else { continue };
        fallen.push((at, radius));
        let seed = layer(recipe.seed, 1_261).wrapping_add(u32::try_from(number).unwrap_or(0));
        drop(layers, &mut chance, at, radius, severity.of(WHITE), seed).await;
    }
}

async fn drop(
    layers: &mut Layers,
    chance: &mut Chance,
    (x, y): (f32, f32),
    radius: f32,
    white: f32,
    seed: u32,
) {
    let grid = layers.grid();
    let (turn, oval) = (chance.even() * core::f32::consts::PI, chance.between(1.0, OVAL));
    let (sine, cosine) = (libm::sinf(turn), libm::cosf(turn));
    let inside = chance.between(INSIDE.0, INSIDE.1);
    let mut rows = Rows::default();
    for (column, row, dx, dy) in near(grid, x, y, REACH * radius) {
        if rows.begins(row) {
            pause().await;
        }
        let (u, v) = (dx * cosine + dy * sine, (dy * cosine - dx * sine) * oval);
        let uneven = UNEVEN * soft(seed, UNEVEN_SIZE * radius, dx, dy);
        let off = libm::hypotf(u, v) / radius + uneven;
        if off > REACH {
            continue;
        }
        let far = (off - RING) / if off < RING { INWARD } else { OUTWARD };
        let ring = libm::expf(-far * far);
        let mottle = 1.0 + MOTTLE * soft(seed ^ 1, MOTTLE_SIZE, dx, dy);
        let spot = inside * mottle * (1.0 - smooth(RING - INWARD, RING + OUTWARD, off));
        let uneven = smooth(-0.9, 0.9, soft(seed ^ 2, FAINT_SIZE * radius, dx, dy));
        let outer = (FAINTEST + (1.0 - FAINTEST) * uneven) * ring;
        let share = white * outer.max(spot);
        let share = share.clamp(0.0, white);
        let place = row * grid.columns + column;
        let film = &mut layers.film;
        if let Some(haze) = film.haze.values.get_mut(place) {
            join(haze, share);
        }
        if let Some(rough) = film.rough.values.get_mut(place) {
            *rough += DULLS * share;
        }
        if let Some(veil) = film.veil.values.get_mut(place) {
            join(veil, (SCATTERS * share).min(1.0));
        }
        if let Some(mask) = layers.mask.values.get_mut(place) {
            *mask = mask.max(smooth(MARKED.0, MARKED.1, share));
        }
    }
}
