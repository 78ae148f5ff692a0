//! Pinholes: air came out of open pores through the wet coat and left small holes, one behind the other along a groove. On
//! wood without large pores, or over filled ones, there are none: solvent pop does not mind the wood, and grain sink is closed.
//! After buffing, compound sits in them as white dots, until a wet brush takes it out.

use super::scatter::Patches;
use super::speck::{Holes, lip, mark};
use crate::map::Map;
use crate::noise::Chance;
use crate::number::{coordinate, whole};
use crate::panel::{Finish, Layers, Recipe, Severity};
use crate::pause::{MANY, pause};
use crate::wood::layer;

/// Places on a square centimetre at which a hole opens if they lie on a pore.
const TRIED: [f32; 3] = [80.0, 130.0, 230.0];
/// Share of a quarter of a millimetre across the grain that must be pore, so that air is held in it.
const OPEN: f32 = 0.30;
const ACROSS: [f32; 5] = [-0.10, -0.05, 0.0, 0.05, 0.10];
/// Where the coat went on too thick or the work warmed: size of the patches, and how much of the face they take.
const PATCH: f32 = 26.0;
const MORE: [f32; 3] = [-0.1, 0.2, 0.5];
/// Median radius, and its spread.
const RADIUS: f32 = 0.15;
const RADIUS_SPREAD: f32 = 0.25;
/// Share that has a neighbour in the same groove, and how far away it is.
const PAIRED: f32 = 0.5;
const NEXT: (f32, f32) = (0.5, 1.5);
/// Depth of a hole, micrometres, and the share of light that comes out of it.
const DEEP: f32 = 26.0;
const LIGHT: f32 = 0.16;
/// Its rim: height for each mm of radius, micrometres; width in radii.
const RIM: f32 = 22.0;
const RIM_WIDE: f32 = 0.5;
/// Compound that is packed into it, linear.
const COMPOUND: [f32; 3] = [0.72, 0.70, 0.66];
/// Radii round a hole that are changed.
const MARKED: f32 = 1.6;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    if !recipe.species.telegraphs || recipe.filler.is_some() {
        return;
    }
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_021));
    let warm = Patches { seed: layer(recipe.seed, 1_022), size: PATCH, more: severity.of(MORE) };
    let mut holes = Holes::on(layers);
    for number in 0..whole(severity.of(TRIED) * grid.square_centimetres()) {
        if number.is_multiple_of(MANY) {
            pause().await;
        }
        // As much chance for each place whatever is there: a window then shows the same holes.
        let at = (chance.even() * grid.width(), chance.even() * grid.height());
        let (kept, radius) = (chance.even(), chance.about(RADIUS, RADIUS_SPREAD));
        let next = chance.between(NEXT.0, NEXT.1) * if chance.even() < 0.5 { 1.0 } else { -1.0 };
        let (paired, other) = (chance.even() < PAIRED, chance.about(RADIUS, RADIUS_SPREAD));
        if let Some(at) = groove(&layers.wood.pore, at).filter(|at| kept < warm.crowd(*at)) {
            open(layers, &mut holes, at, radius);
            if let Some(at) = groove(&layers.wood.pore, (at.0 + next, at.1)).filter(|_| paired) {
                open(layers, &mut holes, at, other);
            }
        }
    }
    let packed = matches!(recipe.finish, Finish::Rubbed | Finish::Buffed);
    holes.sink(layers, recipe, if packed { 0.0 } else { DEEP }, LIGHT);
    if packed {
        for (place, open) in holes.open.values.iter().enumerate() {
            layers.film.cover.lay(place % grid.columns, place / grid.columns, COMPOUND, *open);
        }
    }
}

/// The middle of the pore that a place lies on.
fn groove(pore: &Map, (x, y): (f32, f32)) -> Option<(f32, f32)> {
    let shares = ACROSS.map(|off| pore.near(x, y + off).min(1.0));
    let sum: f32 = shares.iter().sum();
    let middle = shares.iter().zip(ACROSS).map(|(share, off)| share * off).sum::<f32>() / sum.max(OPEN);
    (sum > OPEN * coordinate(ACROSS.len())).then_some((x, y + middle))
}

fn open(layers: &mut Layers, holes: &mut Holes, at: (f32, f32), radius: f32) {
    holes.open.disc(at, radius, 1.0);
    lip(&mut layers.film.height, at, radius, RIM_WIDE * radius, RIM * radius);
    mark(layers, at, MARKED * radius);
}
