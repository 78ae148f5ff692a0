//! Cracks of the wood below: straight splits that run with the grain, stepping from fibre to fibre, or dead straight along a
//! glue joint; the film broke over them, stays stuck on both sides, and its edges look white. A cold check crosses the
//! grain or makes a net; round these lines nothing peels.

use super::crack::{Crack, Family, STEP, lay};
use crate::light::Colour;
use crate::map::Map;
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, mix, smooth, whole};
use crate::panel::{Layers, Recipe, Severity};
use crate::wood::{Cut, layer};

/// Splits on a panel, their length and their width.
const COUNT: [usize; 3] = [1, 2, 4];
const LENGTH: [(f32, f32); 3] = [(42.0, 62.0), (45.0, 80.0), (50.0, 110.0)];
const WIDTH: [f32; 3] = [0.22, 0.25, 0.32];
/// On this share of panels one of them is a joint.
const JOINT: f32 = 0.5;
/// A split keeps to one fibre so far, then goes on beside it: how far aside, and how far the two overlap.
const KEEPS: (f32, f32) = (7.0, 22.0);
const ASIDE: (f32, f32) = (0.18, 0.55);
const OVERLAP: (f32, f32) = (0.5, 3.0);
/// A piece of a split against the widest, at the ends of the whole.
const END_WIDTH: f32 = 0.45;
/// Film opens over a joint in pieces, and holds between.
const OPENS: (f32, f32) = (14.0, 34.0);
const HOLDS: (f32, f32) = (0.6, 4.0);
/// Both sides of a joint never stand level again: step, micrometres, and how far from the joint one sees it.
const STANDS: [f32; 3] = [2.0, 3.5, 5.0];
const STANDS_WIDE: f32 = 7.0;
/// White edges: air below the film, for each mm of width within each mm; at most; how far in, how unevenly, and its colour.
const WHITE: f32 = 2.4;
const WHITE_MOST: f32 = 0.42;
const WHITE_WIDE: f32 = 0.38;
const WHITE_WAVE: f32 = 4.0;
const WHITE_LEAST: f32 = 0.25;
const WHITE_COLOUR: Colour = [1.0, 0.94, 0.82];
/// Lifted edges stand over the rest, micrometres for each mm of width within each mm.
const LIPS: f32 = 16.0;
/// White from which the edge is marked.
const SEEN: (f32, f32) = (0.04, 0.10);
/// Nothing begins nearer to the rim, in shares of the height, nor nearer to another.
const RIM: f32 = 0.1;
/// Where in its part of the height a split runs, and where it begins, share of the width less half its length.
const STAND: (f32, f32) = (0.15, 0.85);
const START: (f32, f32) = (-0.1, 1.0);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let mut chance = Chance::new(layer(recipe.seed, 1_141));
    let mut family = Family::on(grid);
    let count = severity.of(COUNT);
    let joint = (chance.even() < JOINT).then(|| whole(chance.even() * coordinate(count)));
    let room = (1.0 - 2.0 * RIM) / coordinate(count);
    for number in 0..count {
        let y = grid.height() * (RIM + room * (coordinate(number) + chance.between(STAND.0, STAND.1)));
        if joint == Some(number) {
            open_joint(&mut family, &mut chance, y, grid.width(), severity);
            step(&mut layers.film.height, y, severity.of(STANDS)).await;
        } else {
            split(&mut family, &mut chance, recipe, y, (grid.width(), grid.height()), severity);
        }
    }
    lay(layers, recipe, &family).await;
    whiten(layers, recipe, &family).await;
}

/// A split of the wood, piece by piece along the fibre.
fn split(
    family: &mut Family,
    chance: &mut Chance,
    recipe: &Recipe,
    from: f32,
    (wide, high): (f32, f32),
    severity: Severity,
) {
    let cut = Cut::new(&recipe.species, recipe.face, recipe.seed, high);
    let (shortest, longest) = severity.of(LENGTH);
    let length = chance.between(shortest, longest);
    let start = chance.between(START.0, START.1) * (wide - 0.5 * length);
    let (mut x, mut y) = (start, from);
    let mut end = start;
    while end < (start + length).min(wide) {
        end = (x + chance.between(KEEPS.0, KEEPS.1)).min(start + length);
        let off = (x + end - 2.0 * start) / length - 1.0;
        let width = severity.of(WIDTH) * (END_WIDTH + (1.0 - END_WIDTH) * (1.0 - off * off));
        let mut points = Vec::new();
        while x < end {
            points.push((x, y));
            x += STEP;
            y += STEP * cut.slope(x, y.clamp(0.0, high));
        }
        family.cracks.push(Crack { points, width, held: (false, false) });
        x -= chance.between(OVERLAP.0, OVERLAP.1);
        let side = if chance.even() < 0.5 { 1.0 } else { -1.0 };
        y += side * chance.between(ASIDE.0, ASIDE.1);
    }
}

/// A joint: one straight line, over which the film opened in pieces.
fn open_joint(family: &mut Family, chance: &mut Chance, y: f32, wide: f32, severity: Severity) {
    let mut x = -chance.between(OPENS.0, OPENS.1);
    while x < wide {
        let end = x + chance.between(OPENS.0, OPENS.1);
        let points = (0..whole((end - x) / STEP)).map(|n| (x + STEP * coordinate(n), y)).collect();
        let width = severity.of(WIDTH) * chance.between(END_WIDTH, 1.0);
        family.cracks.push(Crack { points, width, held: (false, false) });
        x = end + chance.between(HOLDS.0, HOLDS.1);
    }
}

/// The wood on one side of a joint stands lower.
async fn step(height: &mut Map, joint: f32, lower: f32) {
    height
        .fill(|_, y, before| {
            let off = (y - joint) / STANDS_WIDE;
            before - if off > 0.0 { lower * libm::expf(-off) } else { 0.0 }
        })
        .await;
}

/// Whitens the edges, here more and there less.
async fn whiten(layers: &mut Layers, recipe: &Recipe, family: &Family) {
    let open = family.drawn(layers.grid(), (0.0, 0.0)).await;
    let beside = open.blurred(WHITE_WIDE).await;
    let seed = layer(recipe.seed, 1_142);
    let mut white = beside.clone();
    white
        .fill(|x, y, share| {
            // Most of the face is far from any crack.
            if share <= 0.0 {
                return 0.0;
            }
            let uneven = smooth(-1.0, 1.0, cloud(seed, x / WHITE_WAVE, y / WHITE_WAVE));
            (WHITE * share * mix(WHITE_LEAST, 1.0, uneven)).min(WHITE_MOST)
        })
        .await;
    let film = &mut layers.film;
    film.haze_colour = WHITE_COLOUR;
    let maps = film.haze.values.iter_mut().zip(&mut film.height.values).zip(&mut layers.mask.values);
    let seen = white.values.iter().zip(&beside.values).zip(&open.values);
    for (((haze, height), mask), ((white, beside), open)) in maps.zip(seen) {
        *haze += white * (1.0 - open.min(1.0));
        *height += LIPS * beside;
        *mask = mask.max(smooth(SEEN.0, SEEN.1, *white));
    }
}
