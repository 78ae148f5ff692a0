//! Witness lines: thin outlines, as the contours of a map, where levelling cut through one coat into the one below it. Colour
//! and gloss are the same on both sides, the outline keeps its place as the lamp moves, and is gone while it is wet with
//! naphtha. At a sand-through the colour differs; swirl marks are no closed outline and go with the lamp.

use super::field::join;
use super::worn::{Rise, on_edge, wear};
use crate::noise::Chance;
use crate::number::smooth;
use crate::panel::{Layers, Probe, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Places rubbed through, the share of the further ones that lie at an edge, and coats cut in each: as many lines as there are levels.
const PLACES: [usize; 3] = [1, 3, 5];
const AT_EDGE: f32 = 0.4;
const INNER: (f32, f32) = (0.25, 0.75);
const LEVELS: [f32; 3] = [0.42, 0.78, 1.12];
/// Half of a place's length and width, mm, and how far it is worn in its middle.
const LONG: (f32, f32) = (15.0, 25.0);
const WIDE: (f32, f32) = (11.0, 18.0);
const WORN: [(f32, f32); 3] = [(0.66, 0.76), (0.9, 1.1), (1.05, 1.5)];
/// Half-width of a line, mm, and how pale it is.
const LINE: f32 = 0.3;
const PALE: [f32; 3] = [0.13, 0.16, 0.2];
/// It is a grey, so that it shows on pale wood too, and hides a little of the wood.
const GREY: [f32; 3] = [0.86, 0.80, 0.72];
const HIDES: f32 = 0.2;
/// On the worn side the cut coat runs out as a feather, mm, a little pale.
const FEATHER: f32 = 1.2;
const FEATHER_PALE: f32 = 0.28;
/// The thin feather keeps less gloss than the coats on both sides: share of the mirrored light that it scatters wide.
const SHEEN: f32 = 0.22;
/// Where nothing of it is left, mm.
const ENDS: f32 = 5.0;
/// Step from coat to coat, micrometres, and its width, mm.
const STEP: f32 = 1.3;
const STEP_WIDE: f32 = 0.9;
/// A line is seen so far from its middle, mm.
const MARKED: f32 = 0.6;
/// Flatter than this, wear a mm, there is no line.
const FLATTEST: f32 = 0.004;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_250));
    let mut rises = Vec::new();
    for place in 0..severity.of(PLACES) {
        let inside = (
            chance.between(INNER.0, INNER.1) * grid.width(),
            chance.between(INNER.0, INNER.1) * grid.height(),
        );
        let (edge, _) = on_edge(grid, &mut chance);
        let at = if chance.even() < AT_EDGE && place > 0 { edge } else { inside };
        let half = (chance.between(LONG.0, LONG.1), chance.between(WIDE.0, WIDE.1));
        let (from, to) = severity.of(WORN);
        rises.push(Rise { at, half, worn: chance.between(from, to) });
    }
    let worn = wear(grid, &rises, layer(recipe.seed, 1_251), 0.0).await;
    let wet = recipe.probe == Probe::Wetted;
    let pale = severity.of(PALE);
    layers.film.haze_colour = GREY;
    for row in 0..grid.rows {
        pause().await;
        for column in 0..grid.columns {
            let here = worn.at(column, row);
            if here <= 0.0 {
                continue;
            }
            let (dx, dy) = (worn.at(column + 1, row) - here, worn.at(column, row + 1) - here);
            let steep = libm::hypotf(dx, dy) / grid.scale;
            let place = row * grid.columns + column;
            for level in LEVELS {
                let off = (here - level) / steep.max(FLATTEST);
                if off < -MARKED.max(STEP_WIDE) {
                    continue;
                }
                if off > ENDS {
                    layers.film.height.add(column, row, if wet { 0.0 } else { -STEP });
                    continue;
                }
                let line = libm::expf(-(off / LINE) * (off / LINE));
                let feather = if off > 0.0 { FEATHER_PALE * libm::expf(-off / FEATHER) } else { 0.0 };
                let feather = feather * (1.0 - line);
                if let Some(mask) = layers.mask.values.get_mut(place) {
                    *mask = mask.max(1.0 - smooth(0.5 * MARKED, MARKED, off.abs()));
                }
                if wet {
                    continue;
                }
                if let Some(haze) = layers.film.haze.values.get_mut(place) {
                    join(haze, pale * (line + feather));
                }
                if let Some(veil) = layers.film.veil.values.get_mut(place) {
                    join(veil, SHEEN * (line + feather / FEATHER_PALE).min(1.0));
                }
                if let Some(body) = layers.film.body.values.get_mut(place) {
                    *body *= 1.0 - HIDES * line;
                }
                layers.film.height.add(column, row, -STEP * smooth(-STEP_WIDE, STEP_WIDE, off));
            }
        }
    }
}
