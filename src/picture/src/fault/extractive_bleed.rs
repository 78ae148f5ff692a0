//! Extractive bleed: the first wet coat drew red-brown out of a coloured wood onto the pale wood beside it. It starts at the
//! joint, is strongest there and runs out along the grain. The colour is the dark wood's own, not that of any dye used, and
//! it is not bound to a tape line.

use super::strip;
use crate::noise::cloud;
use crate::number::smooth;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// How far the colour creeps, and its build at the joint.
const REACH: [f32; 3] = [4.0, 9.0, 20.0];
const BUILD: [f32; 3] = [0.6, 0.9, 1.15];
/// Fall over the reach.
const FALL: f32 = 1.6;
/// Reach differs: from fibre to fibre (along, across, strength), and from place to place along the joint.
const FIBRES: [(f32, f32, f32); 3] = [(16.0, 0.35, 0.35), (22.0, 1.3, 0.40), (60.0, 9.0, 0.45)];
/// The longest reach against the usual.
const LONGEST: f32 = 2.4;
/// Farther than this many reaches nothing is seen.
const FAR: f32 = 6.0;
/// Pores lead it on: build more in them.
const PORES: f32 = 0.5;
/// Extractives are brown besides: light that a build of one swallows in all colours.
const BROWN: f32 = 0.22;
/// Build from which a place counts as the fault.
const MARKED: (f32, f32) = (0.06, 0.20);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let (_, joint) = strip::beside(layers, recipe, strip::Neighbour::DarkWood).await;
    let grid = layers.grid();
    let reach = severity.of(REACH);
    for place in 0..grid.len() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        let off = x - joint;
        if off < 0.0 || off > FAR * reach {
            continue;
        }
        let fibre = |(number, (long, wide, strength)): (u32, (f32, f32, f32))| {
            strength * cloud(layer(recipe.seed, 1_370 + number), x / long, y / wide)
        };
        let led = reach * libm::expf((0..).zip(FIBRES).map(fibre).sum()).min(LONGEST);
        let pore = layers.wood.pore.values.get(place).copied().unwrap_or(0.0);
        let build = severity.of(BUILD) * libm::expf(-FALL * off / led) * (1.0 + PORES * pore);
        if let Some(bled) = layers.film.bled.values.get_mut(place) {
            *bled += build;
        }
        if let Some(body) = layers.film.body.values.get_mut(place) {
            *body *= 1.0 - (BROWN * build).min(0.5);
        }
        if let Some(mask) = layers.mask.values.get_mut(place) {
            *mask = mask.max(smooth(MARKED.0, MARKED.1, build));
        }
    }
}
