//! Crow's feet: small stars of three sharp prongs from one point, many of them in a patch, where hard film lies on soft. A
//! cold check is a long line or a net; a sanding scratch never branches.

use super::crack::{Family, Way, lay};
use crate::noise::Chance;
use crate::number::coordinate;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Stars on a panel, in so many patches, and the spread of a patch.
const COUNT: [usize; 3] = [11, 24, 46];
const PATCHES: [usize; 3] = [1, 2, 3];
const PATCH: (f32, f32) = (13.0, 10.0);
/// Share that stands alone.
const ALONE: f32 = 0.2;
/// Prongs of a star (T1: three from one point), their angle and how far it differs, radians.
const PRONGS: usize = 3;
const ANGLE: f32 = core::f32::consts::TAU / 3.0;
const ANGLE_OFF: f32 = 0.2;
/// Length of a prong, and its width at the point.
const LENGTH: [f32; 3] = [3.2, 3.6, 4.0];
const LENGTH_SPREAD: f32 = 0.25;
const WIDTH: [f32; 3] = [0.18, 0.20, 0.23];
/// Turn at a step.
const JITTER: f32 = 0.04;
/// Stars keep apart, mm; tries for the place of one; nothing stands nearer to the rim.
const APART: f32 = 5.0;
const TRIES: usize = 12;
const RIM: f32 = 6.0;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_171));
    let mut family = Family::on(grid);
    let anywhere = |chance: &mut Chance| {
        (chance.between(RIM, grid.width() - RIM), chance.between(RIM, grid.height() - RIM))
    };
    let patches: Vec<(f32, f32)> = (0..severity.of(PATCHES)).map(|_| anywhere(&mut chance)).collect();
    for number in 0..severity.of(COUNT) {
        let patch = patches.get(number % patches.len().max(1)).copied().unwrap_or_default();
        let free = (0..TRIES).find_map(|_| {
            let place = if chance.even() < ALONE {
                anywhere(&mut chance)
            } else {
                let (x, y) = (patch.0 + PATCH.0 * chance.normal(), patch.1 + PATCH.1 * chance.normal());
                (x.clamp(RIM, grid.width() - RIM), y.clamp(RIM, grid.height() - RIM))
            };
            (!family.passes(place, APART)).then_some(place)
        });
        if let Some(place) = free {
            star(&mut family, &mut chance, place, severity);
            pause().await;
        }
    }
    lay(layers, recipe, &family).await;
}

fn star(family: &mut Family, chance: &mut Chance, place: (f32, f32), severity: Severity) {
    let turn = chance.even() * core::f32::consts::TAU;
    for prong in 0..PRONGS {
        let way = Way {
            heading: turn + ANGLE * coordinate(prong) + ANGLE_OFF * chance.normal(),
            jitter: JITTER,
            kink: (0.0, 0.0),
            length: chance.about(severity.of(LENGTH), LENGTH_SPREAD),
        };
        family.walk(chance, place, &way, severity.of(WIDTH), 0.0);
    }
    family.point(PRONGS);
}
