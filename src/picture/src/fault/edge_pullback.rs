//! Edges that the film drew back from while it dried: bays that are bare or thin along the arris, wider at
//! corners, between places where it held, with a rounded, slightly thicker rim where the film stopped. Nothing is scuffed and the outline is soft: an edge that was sanded through
//! is rubbed dull about it and ragged along the fibre, and was whole before the paper touched it.

use super::fat_edge::{Edge, edges};
use crate::noise::{Chance, cloud};
use crate::number::{mix, smooth};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Edges that film drew back from, how far where it did, and how bare they are.
const EDGES: [usize; 3] = [1, 2, 3];
const WIDE: [f32; 3] = [1.4, 2.0, 2.7];
const BARE: [f32; 3] = [0.75, 0.9, 1.0];
/// Along an edge it drew back here and held there: length of such stretches, how much of the edge is bare, on the scale
/// of noise of standard deviation 0.85, and from where it holds to where it drew back all the way.
const STRETCH: f32 = 26.0;
const STRETCHES: [f32; 3] = [0.35, 0.5, 0.6];
const HOLDS: (f32, f32) = (-0.2, 0.9);
/// Bays between tongues of film that held on: length along the edge, and least and most of the way back.
const BAY: f32 = 12.0;
const BAYS: (f32, f32) = (0.6, 0.6);
/// Their tongues are rounded off, on the scale of that noise.
const ROUNDED: f32 = 0.15;
/// Film draws back further round a corner: how much, and how far from it.
const CORNER: [f32; 3] = [1.0, 1.8, 2.6];
const CORNER_LONG: f32 = 4.5;
/// From all film to none.
const SOFT: f32 = 0.9;
/// Thickness of the film that is gone, micrometres.
const FILM: f32 = 22.0;
/// The rim: height, distance from the line, width, and colour that gathers in it.
const RIM: f32 = 6.0;
const RIM_OFF: f32 = 1.3;
const RIM_WIDE: f32 = 0.95;
const RIM_TINT: f32 = 0.35;
/// Bare wood is dull: slope, radians.
const DULL: f32 = 0.12;
/// Share that is bare from which it is marked.
const MARKED: (f32, f32) = (0.12, 0.5);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let edges = edges(&mut Chance::new(layer(recipe.seed, 1_161)), severity.of(EDGES));
    for row in 0..grid.rows {
        pause().await;
        for column in 0..grid.columns {
            let place = grid.middle(column, row);
            let past =
                |edge: &Edge| inside(*edge, recipe.seed, place, (grid.width(), grid.height()), severity);
            let past = edges.iter().map(past).fold(f32::MAX, f32::min);
            draw_back(layers, row * grid.columns + column, past, severity);
        }
    }
}

/// How far inside the line at which the film stopped a place lies, mm.
fn inside(edge: Edge, seed: u32, place: (f32, f32), size: (f32, f32), severity: Severity) -> f32 {
    /// Beyond this nothing is changed.
    const FAR: f32 = 12.0;
    let (off, along) = edge.of(place, size);
    if off > FAR {
        return FAR;
    }
    let length = match edge {
        Edge::Top | Edge::Bottom => size.0,
        Edge::Left | Edge::Right => size.1,
    };
    let noise = |number: u32, long: f32| cloud(layer(seed, 1_162 + number), along / long, edge.number());
    let corner = along.min(length - along).max(0.0) / CORNER_LONG;
    let corner = libm::expf(-corner * corner);
    let stretch = smooth(HOLDS.0, HOLDS.1, noise(0, STRETCH) + severity.of(STRETCHES));
    let drew = stretch.max(corner);
    let bays = BAYS.0 + BAYS.1 * libm::hypotf(noise(1, BAY), ROUNDED);
    // Where it held it reaches the arris whole.
    off + SOFT * (1.0 - drew) - severity.of(WIDE) * drew * bays - severity.of(CORNER) * corner
}

fn draw_back(layers: &mut Layers, place: usize, inside: f32, severity: Severity) {
    let gone = severity.of(BARE) * (1.0 - smooth(-0.5 * SOFT, 0.5 * SOFT, inside));
    let rim = (inside - RIM_OFF) / RIM_WIDE;
    let rim = libm::expf(-rim * rim);
    let film = &mut layers.film;
    let maps = [
        (&mut film.height, 1.0, RIM * rim - FILM * gone),
        (&mut film.there, 1.0 - gone, 0.0),
        (&mut film.tint, (1.0 - gone) * (1.0 + RIM_TINT * rim), 0.0),
    ];
    for (map, gain, more) in maps {
        if let Some(value) = map.values.get_mut(place) {
            *value = *value * gain + more;
        }
    }
    if let Some(rough) = film.rough.values.get_mut(place) {
        *rough = mix(*rough, DULL, gone * gone);
    }
    if let Some(mask) = layers.mask.values.get_mut(place) {
        *mask = mask.max(smooth(MARKED.0, MARKED.1, gone));
    }
}
