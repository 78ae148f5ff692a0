//! Solvent pop: the skin closed over solvent that was still in the film, and it broke out: tiny blisters and burst pits with a
//! sharp edge, in patches where the film is thickest, on any wood. They come hours after spraying; a fish-eye is many times as
//! wide, soft, and there at once; pinholes lie on pores.

use super::scatter::Patches;
use super::speck::{Holes, lip, mark, rise};
use crate::noise::Chance;
use crate::number::whole;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::{MANY, pause};
use crate::wood::layer;

/// Pops on a square centimetre of the whole face.
const COUNT: [f32; 3] = [0.8, 2.2, 6.0];
/// Where the film is thick: size of the patches, and how much of the face they take.
const PATCH: f32 = 22.0;
const MORE: [f32; 3] = [-0.5, -0.3, 0.0];
/// Median radius, its spread and range.
const RADIUS: f32 = 0.13;
const RADIUS_SPREAD: f32 = 0.45;
const RADIUS_RANGE: (f32, f32) = (0.07, 0.3);
/// Share that is still closed: a blister is wider than the hole that it would leave, so many times; its height for each mm of
/// its radius, micrometres.
const CLOSED: f32 = 0.42;
const WIDER: f32 = 2.2;
const BLISTER: f32 = 40.0;
/// Depth of a pit, micrometres, and the share of light that comes out of it.
const DEEP: f32 = 26.0;
const LIGHT: f32 = 0.10;
/// The lip that a burst leaves: most height for each mm of radius, micrometres; width, and how far it lies aside, radii.
const LIP: f32 = 20.0;
const LIP_WIDE: f32 = 0.45;
const ASIDE: f32 = 0.35;
/// Radii round a pop that are changed.
const MARKED: f32 = 1.5;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_011));
    let thick = Patches { seed: layer(recipe.seed, 1_012), size: PATCH, more: severity.of(MORE) };
    let mut holes = Holes::on(layers);
    for number in 0..whole(severity.of(COUNT) * grid.square_centimetres()) {
        if number.is_multiple_of(MANY) {
            pause().await;
        }
        let radius = chance.about(RADIUS, RADIUS_SPREAD).clamp(RADIUS_RANGE.0, RADIUS_RANGE.1);
        let (closed, high) = (chance.even() < CLOSED, chance.even());
        let (aside_x, aside_y) = (ASIDE * radius * chance.normal(), ASIDE * radius * chance.normal());
        let Some(at) = thick.place(grid, &mut chance) else { continue };
        mark(layers, at, MARKED * if closed { WIDER * radius } else { radius });
        let height = &mut layers.film.height;
        if closed {
            rise(height, at, WIDER * radius, BLISTER * WIDER * radius * (0.5 + high));
        } else {
            holes.open.disc(at, radius, 1.0);
            lip(height, (at.0 + aside_x, at.1 + aside_y), radius, LIP_WIDE * radius, LIP * radius * high);
        }
    }
    holes.sink(layers, recipe, DEEP, LIGHT);
}
