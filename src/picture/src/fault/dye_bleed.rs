//! Dye bleed: the first wet coat took up the dye below it. Colour floats in the coat: streaks and drips run down the panel,
//! across any grain, the figure goes muddy, and colour has spread onto the binding with a soft front. It is the dye's own
//! colour; there is no tape line in it, and it comes from the whole face and not from a neighbour of another wood.

use super::{strip, uptake};
use crate::light::screen;
use crate::map::{Map, near};
use crate::noise::{Chance, cloud, soft};
use crate::number::{mix, smooth, whole};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::{Screen, layer};

/// Reach of the colour on it, and how that differs along it.
const REACH: [f32; 3] = [1.3, 2.8, 5.5];
const REACH_NOISE: [(f32, f32); 3] = [(19.0, 0.45), (6.0, 0.35), (2.0, 0.12)];
/// Where its front lies in shares of the reach, and how much thinner it is there.
const FRONT: (f32, f32) = (0.35, 1.25);
const THINS: f32 = 0.4;
/// Build there against the field's.
const ON_BINDING: [f32; 3] = [0.35, 0.6, 0.85];
/// Streaks down the panel: width, length, strength.
const STREAK: (f32, f32) = (6.5, 70.0);
const STREAKS: [f32; 3] = [0.20, 0.32, 0.44];
/// Finer ones between them: width against theirs, strength against theirs. All waver as a coat runs: how far, over what length.
const FINER: (f32, f32) = (0.3, 0.35);
const WAVERS: (f32, f32) = (1.0, 26.0);
/// Colour that has come up, on the mean, against the streaks.
const RISEN: f32 = 0.35;
/// Wetter places, where the dye came up.
const PATCH: f32 = 24.0;
const PATCHES: [f32; 3] = [-0.3, 0.2, 0.8];
const PATCH_EDGE: (f32, f32) = (-0.7, 0.9);
/// Dye afloat over the figure: share of light that it sends back, and its colour.
const MUDDY: [f32; 3] = [0.06, 0.13, 0.20];
const MUD: Screen = [176, 104, 44];
/// Drips, for each mm of panel; half-width, length, height in micrometres, build in the head.
const DRIPS: [f32; 3] = [0.012, 0.035, 0.07];
const DRIP_HALF: (f32, f32) = (0.9, 1.7);
const DRIP: (f32, f32) = (7.0, 22.0);
const DRIP_HEIGHT: f32 = 9.0;
const DRIP_BUILD: f32 = 0.9;
/// How far down the binding it may come, and how far up the panel it may end, a share of it.
const OVER: f32 = 10.0;
const HIGHEST: f32 = 0.6;
/// Share of a drip that is its head.
const HEAD: f32 = 0.35;
/// Its tail against the head: width, build. Where its lower end closes and its upper one fades, shares of its length; its
/// foot is wider than its half-width.
const TAIL: (f32, f32) = (0.45, 0.35);
const END: (f32, f32) = (-0.1, 0.06);
const FADES: f32 = 0.7;
const FOOT: f32 = 1.5;
/// Change of build from which a place counts as the fault.
const MARKED: (f32, f32) = (0.06, 0.20);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let (line, joint) = strip::beside(layers, recipe, strip::Neighbour::Binding).await;
    let grid = layers.grid();
    let seed = |number: u32| layer(recipe.seed, 1_380 + number);
    let mut wetter = Map::of(grid, 0.0);
    wetter
        .fill(|x, y, _| {
            if x < joint {
                return 0.0;
            }
            smooth(PATCH_EDGE.0, PATCH_EDGE.1, soft(seed(0), PATCH, x, y) + severity.of(PATCHES))
        })
        .await;
    let mut added = Map::of(grid, 0.0);
    added
        .fill(|x, y, _| {
            let off = y - line;
            if x < joint {
                return 0.0;
            }
            if off < 0.0 {
                let u = x + WAVERS.0 * cloud(seed(1), x / WAVERS.1, y / WAVERS.1);
                let streak = cloud(seed(2), u / STREAK.0, y / STREAK.1)
                    + FINER.1 * cloud(seed(3), u / (FINER.0 * STREAK.0), y / STREAK.1);
                return severity.of(STREAKS) * (RISEN + streak);
            }
            let noise = |(number, (size, share)): (u32, (f32, f32))| {
                share * cloud(seed(4 + number), x / size, off / (2.0 * size))
            };
            let reach = severity.of(REACH) * libm::expf((0..).zip(REACH_NOISE).map(noise).sum());
            severity.of(ON_BINDING)
                * (1.0 - smooth(FRONT.0, FRONT.1, off / reach))
                * (1.0 - THINS * off / reach).max(0.0)
        })
        .await;
    for (place, (added, wetter)) in added.values.iter_mut().zip(&wetter.values).enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (_, y) = grid.middle(place % grid.columns, place / grid.columns);
        if y < line {
            *added *= wetter;
            if let Some(haze) = layers.film.haze.values.get_mut(place)
                && recipe.opaque.is_none()
            {
                *haze = haze.max(severity.of(MUDDY) * wetter);
            }
        }
    }
    layers.film.haze_colour = screen(MUD);
    drips(layers, &mut added, &mut Chance::new(seed(9)), severity, (line, joint)).await;
    for (place, added) in added.values.iter().enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (_, y) = grid.middle(place % grid.columns, place / grid.columns);
        if let Some(mask) = layers.mask.values.get_mut(place) {
            let muddied = if y < line { wetter.values.get(place).copied().unwrap_or(0.0) } else { 0.0 };
            let seen = added.abs().max(severity.of(MUDDY) * muddied);
            *mask = mask.max(smooth(MARKED.0, MARKED.1, seen));
        }
        if let Some(value) = uptake::colour(layers, recipe, uptake::Colouring::Dye).values.get_mut(place) {
            *value = (*value + added).max(0.0);
        }
    }
}

/// Coloured drips, some of them over the binding: a tail and a head, standing a little up.
async fn drips(
    layers: &mut Layers,
    added: &mut Map,
    chance: &mut Chance,
    severity: Severity,
    (line, joint): (f32, f32),
) {
    let grid = added.grid;
    for _ in 0..whole(severity.of(DRIPS) * grid.width() + 0.5) {
        let (x, length) = (chance.even() * grid.width(), chance.between(DRIP.0, DRIP.1));
        let half = chance.between(DRIP_HALF.0, DRIP_HALF.1);
        let lowest = line + chance.between(-HIGHEST * line, OVER);
        pause().await;
        if x < joint + 2.0 * half {
            continue;
        }
        for (column, row, dx, dy) in near(grid, x, lowest - 0.5 * length, 0.5 * length + 2.0 * half) {
            // 0 at the lower end, 1 at the upper.
            let up = 0.5 - dy / length;
            if !(END.0..1.0).contains(&up) || dx.abs() > 2.0 * half {
                continue;
            }
            let head = 1.0 - smooth(0.0, HEAD, up);
            let wide = half * mix(TAIL.0, 1.0, head) * smooth(END.0, END.1, up);
            let across = (dx / (FOOT * wide).max(0.5 * grid.scale)).abs().min(1.0);
            let profile = (1.0 - across * across) * (1.0 - across * across);
            let share = profile * mix(TAIL.1, 1.0, head) * (1.0 - smooth(FADES, 1.0, up));
            added.add(column, row, DRIP_BUILD * share);
            layers.film.height.add(column, row, DRIP_HEIGHT * share);
        }
    }
}
