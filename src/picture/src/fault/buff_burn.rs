//! Buff burn: the wheel stood too long or caught the edge, and the film melted and tore. A short, deep streak,
//! broad where it grabbed and a tail where it left, dull and browned inside, torn to the wood in strips where it is bad, its
//! colour smeared along; a shiny lip is pushed up round it. A sand-through has a clean edge and no lip; swirl
//! marks are fine and everywhere.

use super::field::join;
use super::worn::on_edge;
use crate::map::{Rows, near};
use crate::noise::{Chance, cloud};
use crate::number::{mix, smooth};
use crate::panel::{Layers, Probe, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Streaks on a panel; the share of them that run out over an edge.
const STREAKS: [usize; 3] = [1, 1, 2];
const AT_EDGE: f32 = 0.5;
/// Shares of the panel between which the others lie.
const INNER: (f32, f32) = (0.25, 0.75);
/// Half of a streak's length and of its width, mm; the wheel's lean to the grain, and how far
/// one streak strays from it, radians.
const LONG: [(f32, f32); 3] = [(9.0, 12.0), (13.0, 17.0), (17.0, 24.0)];
const WIDE: [(f32, f32); 3] = [(3.2, 4.2), (4.4, 5.8), (5.6, 7.4)];
const LEAN: f32 = 0.4;
const STRAY: f32 = 0.06;
/// Drag lines: length, width, mm; height, micrometres; and how far they fray the outline.
const DRAG: (f32, f32) = (34.0, 1.4);
const DRAG_HIGH: [f32; 3] = [1.0, 1.4, 1.8];
const FRAYS: f32 = 0.14;
/// The wheel grabs broadly and leaves in a tail: how much narrower the end is, and the beginning broader.
const TAPERS: f32 = 0.35;
/// Fine tears between them.
const TEAR: (f32, f32) = (9.0, 0.5);
const TEAR_HIGH: f32 = 0.25;
/// The hollow, and the lip that was pushed up: height, micrometres, where and how wide, in half-widths; higher at the end.
const HOLLOW: [f32; 3] = [3.0, 4.5, 6.0];
const LIP: f32 = 3.2;
const LIP_AT: f32 = 1.08;
const LIP_WIDE: f32 = 0.18;
const LIP_END: f32 = 1.6;
/// Edge of the melted part, in half-widths.
const MELTED: (f32, f32) = (0.72, 1.02);
/// Torn film is rough, radians, scatters, and has white in its tears.
const TORN: f32 = 0.022;
const SCATTERS: f32 = 0.14;
/// Share of what it mirrored that charred film swallows.
const SWALLOWS: f32 = 0.6;
const WHITE: (f32, f32) = (0.09, 0.14);
/// Tears are uneven: mean, spread and least.
const RAGGED: (f32, f32) = (0.6, 0.4);
const RAGGED_LEAST: f32 = 0.2;
/// Heat browns it, along the drag lines most: light that is lost, build of red-brown, and build of black-brown; colour is dragged from the middle to the end.
const SCORCHED: f32 = 0.18;
const BROWNED: (f32, f32) = (0.26, 0.20);
const BLACKENED: f32 = 0.16;
const THINNED: [f32; 3] = [0.2, 0.35, 0.5];
const DRAGGED: f32 = 0.5;
/// Share of it that is taken in the middle, and how far drag lines keep it.
const TAKEN: f32 = 0.7;
const RIDGED: f32 = 0.4;
/// Strips worn to the wood along the deepest drag lines: how near to the middle and how deep a line must be, both in one
/// number; none where it is slight.
const BARE: [f32; 3] = [9.0, 0.85, 0.62];
const BARE_EDGE: f32 = 0.16;
const BARE_LINES: f32 = 0.45;
/// Half-widths that are looked at, and that count as the fault.
const REACH: f32 = 1.6;
const MARKED: (f32, f32) = (1.04, 1.18);

/// A streak in its own direction.
struct Streak {
    at: (f32, f32),
    way: (f32, f32),
    half: (f32, f32),
    seed: u32,
}

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_280));
    let lean = LEAN * chance.normal();
    for number in 0..severity.of(STREAKS) {
        let inside = (
            chance.between(INNER.0, INNER.1) * grid.width(),
            chance.between(INNER.0, INNER.1) * grid.height(),
        );
        let (edge, _) = on_edge(grid, &mut chance);
        let at = if chance.even() < AT_EDGE { edge } else { inside };
        let turn =
            lean + STRAY * chance.normal() + if chance.even() < 0.5 { 0.0 } else { core::f32::consts::PI };
        let (long, wide) = (severity.of(LONG), severity.of(WIDE));
        let half = (chance.between(long.0, long.1), chance.between(wide.0, wide.1));
        let seed = layer(recipe.seed, 1_281).wrapping_add(u32::try_from(number).unwrap_or(0) << 4);
        let way = (libm::cosf(turn), libm::sinf(turn));
        burn(layers, recipe, severity, &Streak { at, way, half, seed }).await;
    }
}

async fn burn(layers: &mut Layers, recipe: &Recipe, severity: Severity, streak: &Streak) {
    let grid = layers.grid();
    let wet = recipe.probe == Probe::Wetted;
    let Streak { at, way, half, seed } = *streak;
    let mut rows = Rows::default();
    for (column, row, dx, dy) in near(grid, at.0, at.1, REACH * half.0.max(half.1)) {
        if rows.begins(row) {
            pause().await;
        }
        let (u, v) = (dx * way.0 + dy * way.1, dy * way.0 - dx * way.1);
        let (along, across) = (u / half.0, v / half.1);
        if libm::hypotf(along, across) > REACH {
            continue;
        }
        let drag = cloud(seed, u / DRAG.0, v / DRAG.1);
        let tear = cloud(seed ^ 1, u / TEAR.0, v / TEAR.1);
        // Lines fray the end, not the sides.
        let off = libm::hypotf(along, across * (1.0 + TAPERS * along).max(TAPERS))
            + FRAYS * drag * along.clamp(0.0, 1.0);
        let melted = 1.0 - smooth(MELTED.0, MELTED.1, off);
        let lip = (off - LIP_AT) / LIP_WIDE;
        let lip = libm::expf(-lip * lip) * (1.0 + LIP_END * along.clamp(0.0, 1.0)) * (1.0 + 0.5 * drag);
        let deepest = 1.0 - off - BARE_LINES * drag;
        let bare = smooth(severity.of(BARE) - BARE_EDGE, severity.of(BARE) + BARE_EDGE, deepest);
        let film = &mut layers.film;
        let lines = severity.of(DRAG_HIGH) * drag + TEAR_HIGH * tear;
        film.height.add(column, row, LIP * lip + melted * (lines - severity.of(HOLLOW)));
        let place = row * grid.columns + column;
        let torn = melted * (RAGGED.0 + RAGGED.1 * tear).clamp(RAGGED_LEAST, 1.0);
        if let Some(tint) = film.tint.values.get_mut(place) {
            let left = 1.0
                - severity.of(THINNED) * melted * (TAKEN - DRAGGED * along - RIDGED * drag).clamp(0.0, 1.0);
            *tint *= left + DRAGGED * lip * along.max(0.0);
        }
        if let Some(body) = film.body.values.get_mut(place) {
            *body *= 1.0 - SCORCHED * melted * (1.0 - bare);
        }
        if let Some(bled) = film.bled.values.get_mut(place) {
            *bled += melted * (1.0 - bare) * (BROWNED.0 + BROWNED.1 * drag).max(0.0);
        }
        if let Some(shade) = film.shade.values.get_mut(place) {
            *shade += BLACKENED * melted * (1.0 - bare) * (1.0 + drag).max(0.0);
        }
        if let Some(mask) = layers.mask.values.get_mut(place) {
            *mask = mask.max(1.0 - smooth(MARKED.0, MARKED.1, off));
        }
        if wet {
            continue;
        }
        if let Some(there) = film.there.values.get_mut(place) {
            *there *= 1.0 - bare;
        }
        if let Some(rough) = film.rough.values.get_mut(place) {
            *rough += TORN * torn;
        }
        if let Some(mirror) = film.mirror.values.get_mut(place) {
            *mirror *= 1.0 - SWALLOWS * torn;
        }
        if let Some(veil) = film.veil.values.get_mut(place) {
            join(veil, SCATTERS * torn);
        }
        if let Some(haze) = film.haze.values.get_mut(place) {
            join(haze, torn * mix(WHITE.0, WHITE.1, smooth(0.0, 1.0, drag)) * (1.0 - bare));
        }
    }
}
