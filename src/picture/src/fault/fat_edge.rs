//! Fat edges: a bead of film along an arris, even from end to end, with its crest near the arris, so that a
//! lamp bends toward it and runs off the edge. A run hangs down the face
//! instead and ends in a head; an edge that the film drew back from is thin, not thick.

use super::thick;
use crate::map::Map;
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, smooth, whole};
use crate::panel::{Layers, Recipe, Severity};
use crate::wood::layer;

/// Edges that have a bead, and how thick it is, micrometres.
const EDGES: [usize; 3] = [1, 2, 3];
const THICK: [f32; 3] = [26.0, 38.0, 52.0];
/// From the arris to the crest, and to the inner foot.
const CREST: f32 = 0.7;
const FOOT: [f32; 3] = [5.4, 6.6, 8.0];
/// Film at the arris itself against the crest: it is rounded over it, so that a lamp bends one way and runs off the edge.
const ARRIS: f32 = 0.75;
/// Unevenness along the edge: share, and over what length.
const UNEVEN: f32 = 0.09;
const UNEVEN_LONG: f32 = 26.0;

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let edges = edges(&mut Chance::new(layer(recipe.seed, 1_151)), severity.of(EDGES));
    let mut extra = Map::of(grid, 0.0);
    extra
        .fill(|x, y, _| {
            let bead = |edge: &Edge| {
                let (off, along) = edge.of((x, y), (grid.width(), grid.height()));
                let wave = cloud(layer(recipe.seed, 1_152), along / UNEVEN_LONG, edge.number());
                let (thick, foot) =
                    (severity.of(THICK) * (1.0 + UNEVEN * wave), severity.of(FOOT) * (1.0 + UNEVEN * wave));
                let outer = ARRIS + (1.0 - ARRIS) * smooth(0.0, CREST, off);
                thick * outer * (1.0 - smooth(CREST, foot, off))
            };
            // Where two beads meet they flow into one.
            libm::sqrtf(edges.iter().map(bead).map(|bead| bead * bead).sum())
        })
        .await;
    thick::lay(layers, &extra).await;
}

/// An edge of the panel.
#[derive(Clone, Copy)]
pub(super) enum Edge {
    Top,
    Right,
    Bottom,
    Left,
}

impl Edge {
    /// Distance of a place from it, and how far along it that is.
    pub(super) fn of(self, (x, y): (f32, f32), (width, height): (f32, f32)) -> (f32, f32) {
        match self {
            Self::Top => (y, x),
            Self::Right => (width - x, y),
            Self::Bottom => (height - y, x),
            Self::Left => (x, y),
        }
    }

    /// A number of its own.
    pub(super) const fn number(self) -> f32 {
        match self {
            Self::Top => 0.5,
            Self::Right => 5.5,
            Self::Bottom => 10.5,
            Self::Left => 15.5,
        }
    }
}

/// So many edges that meet, beginning with any.
pub(super) fn edges(chance: &mut Chance, count: usize) -> Vec<Edge> {
    const ROUND: [Edge; 4] = [Edge::Bottom, Edge::Right, Edge::Top, Edge::Left];
    let first = whole(chance.even() * coordinate(ROUND.len()));
    ROUND.into_iter().cycle().skip(first).take(count).collect()
}
