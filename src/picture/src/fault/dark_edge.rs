//! A shaded edge that went wrong: too dark, too wide, and ending in a line one can see instead of a fade. The field inside is
//! right, which it is not where the whole colour is off; and it is at the edge alone, where lap stripes are not.

use crate::noise::{cloud, soft};
use crate::number::{mix, smooth};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Width of the shade to the middle of its end; over how many mm it ends.
const WIDTH: [f32; 3] = [19.0, 19.5, 21.0];
const ENDS: [f32; 3] = [5.0, 2.6, 1.4];
/// Build at the line and at the very edge.
const AT_LINE: [f32; 3] = [0.30, 0.38, 0.48];
const AT_EDGE: [f32; 3] = [1.10, 1.25, 1.4];
/// How far the line wavers as the hand does, over which length; each blow of the gun is a shallow bow.
const WAVERS: f32 = 0.5;
const WAVER_LENGTH: f32 = 34.0;
/// Corners of a hand-shaded edge are round.
const CORNER: f32 = 11.0;
/// Uneven within: strength and size.
const UNEVEN: f32 = 0.07;
const UNEVEN_SIZE: f32 = 16.0;
/// Build more than a good shade from which a place counts as the fault.
const MARKED: (f32, f32) = (0.10, 0.28);

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let (width, ends) = (severity.of(WIDTH), severity.of(ENDS));
    let middle = (0.5 * grid.width(), 0.5 * grid.height());
    for place in 0..grid.len() {
        if grid.begins_row(place) {
            pause().await;
        }
        let (x, y) = grid.middle(place % grid.columns, place / grid.columns);
        // Distance from the edge, its corners rounded from within.
        let (u, v) = (
            ((x - middle.0).abs() - middle.0 + width + CORNER).max(0.0),
            ((y - middle.1).abs() - middle.1 + width + CORNER).max(0.0),
        );
        let off = width + CORNER - libm::hypotf(u, v);
        if off > width + 2.0 * ends + 2.0 * WAVERS {
            continue;
        }
        let off = off + WAVERS * cloud(layer(recipe.seed, 1_347), x / WAVER_LENGTH, y / WAVER_LENGTH);
        let inner = 1.0 - smooth(width - 0.5 * ends, width + 0.5 * ends, off);
        let deep = smooth(0.0, 1.0, 1.0 - off / width);
        let uneven = 1.0 + UNEVEN * soft(layer(recipe.seed, 1_348), UNEVEN_SIZE, x, y);
        let build = inner * mix(severity.of(AT_LINE), severity.of(AT_EDGE), deep) * uneven;
        if let Some(shade) = layers.film.shade.values.get_mut(place) {
            let more = build - *shade;
            *shade = shade.max(build);
            if let Some(mask) = layers.mask.values.get_mut(place) {
                *mask = mask.max(smooth(MARKED.0, MARKED.1, more));
            }
        }
    }
}
