//! Blotch: wood of uneven density drinks stain unevenly: soft clouds, darker along the figure, with no edge anywhere. A hard
//! edge at a joint, or a print, would be glue; bands along the passes would be lap stripes.

use super::{strip, uptake};
use crate::map::Map;
use crate::noise::cloud;
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Strength of the clouds.
const STRENGTH: [f32; 3] = [0.25, 0.41, 0.58];
/// Coarse woods with open pores take stain evenly enough: T12 names oak, ash, walnut and mahogany.
const COARSE: f32 = 0.35;
/// Clouds: size across the grain, and share.
const CLOUDS: [(f32, f32); 3] = [(13.0, 0.75), (6.0, 0.5), (2.4, 0.2)];
/// How much longer they are along the grain.
const LONG: f32 = 2.0;
/// One is turned against the next by this slope, so that no lattice shows.
const TURN: f32 = 0.35;
/// How far they follow fibre, earlywood and figure.
const FIBRE: f32 = 0.20;
const EARLY: f32 = 0.35;
const FIGURE: f32 = 0.45;
/// Held back at the ends, so that nothing goes black.
const HELD: f32 = 0.25;
/// Change of stain from which a place counts as the fault.
const MARKED: (f32, f32) = (0.12, 0.30);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let line = strip::joint(layers, recipe).await;
    let mut gains = Map::of(grid, 0.0);
    let strength = severity.of(STRENGTH) * if recipe.species.telegraphs { COARSE } else { 1.0 };
    gains
        .fill(|x, y, _| {
            let cloud = |(number, (size, share)): (u32, (f32, f32))| {
                let (u, v) = (x / (LONG * size), y / size);
                let turn = if number % 2 == 0 { TURN } else { -TURN };
                share * cloud(layer(recipe.seed, 1_340 + number), u + turn * v, v - turn * u)
            };
            (0..).zip(CLOUDS).map(cloud).sum::<f32>()
        })
        .await;
    let wood = &layers.wood;
    let figure = wood.fibre.values.iter().zip(&wood.early.values).zip(&wood.tilt.values);
    for (gain, ((fibre, early), tilt)) in gains.values.iter_mut().zip(figure) {
        let drinks = *gain + FIBRE * fibre + EARLY * (early - 0.5) + FIGURE * tilt;
        let drinks = strength * drinks;
        *gain = libm::expf(drinks / (1.0 + HELD * drinks.abs()));
    }
    pause().await;
    for (place, gain) in gains.values.iter_mut().enumerate() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (_, y) = grid.middle(place % grid.columns, place / grid.columns);
        *gain = if y < line { *gain } else { 1.0 };
    }
    for (mask, gain) in layers.mask.values.iter_mut().zip(&gains.values) {
        *mask = mask.max(crate::number::smooth(MARKED.0, MARKED.1, (gain - 1.0).abs()));
    }
    uptake::gain(layers, recipe, &gains).await;
}
