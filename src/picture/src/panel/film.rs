//! What lies on the wood: heights, roughness, colour, cloud, and what covers it.

use super::recipe::{Finish, Recipe};
use crate::frost::Frost;
use crate::light::Colour;
use crate::map::{Grid, Map};
use crate::noise::{cloud, soft};
use crate::number::{coordinate, whole};
use crate::pause::pause;
use crate::wood::layer;

/// Root mean square slope of the fine roughness, radians (by eye).
const ROUGH_BARE: f32 = 0.3;
const ROUGH_SEALED: f32 = 0.036;
const ROUGH_COLOURED: f32 = 0.009;
const ROUGH_CLEARED: f32 = 0.0022;
const ROUGH_RUBBED: f32 = 0.008;
const ROUGH_BUFFED: f32 = 0.0010;
/// What it is more across a rub: scratches of the last abrasive lie along the grain and scatter to its sides.
const ROUGH_ACROSS: f32 = 0.026;
/// How single strokes of the rub differ in what they mirror.
const RUB: f32 = 0.018;
/// Share of the mirrored light that a dull face keeps near its way; the rest goes everywhere.
const KEEPS_SEALED: f32 = 0.65;
const KEEPS_RUBBED: f32 = 0.6;

/// Unevenness of a good film: waves of so many micrometres and of a size in mm, what is finer than a pixel, and the share of
/// light that it mirrors.
struct Texture {
    waves: [(f32, f32); 2],
    rough: f32,
    keeps: f32,
}

impl Texture {
    /// As a good finisher leaves it. A mirror moves by 0.7 mm on the panel for each 0.001 of slope: sprayed clear has slow
    /// waves, of which a straight lamp edge swings a little, and no texture that would tear it.
    const fn of(finish: Finish) -> Option<Self> {
        let (waves, rough, keeps) = match finish {
            Finish::Bare => return None,
            Finish::Sealed => ([(1.0, 3.0), (1.0, 25.0)], ROUGH_SEALED, KEEPS_SEALED),
            Finish::Coloured => ([(0.9, 5.0), (3.0, 25.0)], ROUGH_COLOURED, 1.0),
            Finish::Cleared => ([(0.42, 5.0), (4.0, 25.0)], ROUGH_CLEARED, 1.0),
            Finish::Rubbed => ([(0.08, 8.0), (3.0, 40.0)], ROUGH_RUBBED, KEEPS_RUBBED),
            Finish::Buffed => ([(0.08, 8.0), (3.0, 40.0)], ROUGH_BUFFED, 1.0),
        };
        Some(Self { waves, rough, keeps })
    }
}

/// A wave along one row, known at some places of the panel and smooth between them.
struct Wave {
    step: f32,
    first: f32,
    known: Vec<f32>,
}

impl Wave {
    fn new(seed: u32, (height, size): (f32, f32), grid: Grid, row: usize) -> Self {
        /// Places for each cell of the noise.
        const PLACES: f32 = 6.0;
        let step = size / PLACES;
        let ((left, y), (right, _)) = (grid.middle(0, row), grid.middle(grid.columns, row));
        let first = libm::floorf(left / step) - 1.0;
        let count = whole(right / step - first) + 4;
        let known =
            (0..count).map(|n| height * soft(seed, size, (first + coordinate(n)) * step, y)).collect();
        Self { step, first, known }
    }

    /// A cubic through the four places about a point.
    fn at(&self, x: f32) -> f32 {
        let place = (x / self.step - self.first).max(1.0);
        let entry = whole(place);
        let t = place - coordinate(entry);
        let Some([a, b, c, d]) = self.known.get(entry - 1..entry + 3) else { return 0.0 };
        let (slope, next) = (0.5 * (c - a), 0.5 * (d - b));
        let (rise, t2) = (c - b, t * t);
        b + slope * t + (3.0 * rise - 2.0 * slope - next) * t2 + (slope + next - 2.0 * rise) * t2 * t
    }
}

/// Depth of an open pore that a raking lamp shows, micrometres: the rest of it lies in the dark.
const OPEN_PORE: f32 = 25.0;

/// A scratch that shows where it is square to a lamp.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Arc {
    /// A point of it, mm.
    pub(crate) x: f32,
    pub(crate) y: f32,
    /// Its direction there, a unit vector.
    pub(crate) along: (f32, f32),
    /// Share of a pixel that this piece fills.
    pub(crate) weight: f32,
}

/// A layer that lies on top and hides what is below.
#[derive(Debug, Clone)]
pub(crate) struct Cover {
    pub(crate) colour: [Map; 3],
    pub(crate) share: Map,
}

impl Cover {
    /// Lays a colour over a pixel.
    pub(crate) fn lay(&mut self, column: usize, row: usize, colour: Colour, share: f32) {
        let place = row * self.share.grid.columns + column;
        if column >= self.share.grid.columns {
            return;
        }
        let Some(laid) = self.share.values.get_mut(place) else { return };
        let share = share.clamp(0.0, 1.0);
        *laid += (1.0 - *laid) * share;
        if *laid <= 0.0 {
            return;
        }
        // Of all that is seen of the cover, the part that is on top.
        let top = share / *laid;
        for (map, part) in self.colour.iter_mut().zip(colour) {
            if let Some(value) = map.values.get_mut(place) {
                *value += (part - *value) * top;
            }
        }
    }
}

/// The film of a panel.
#[derive(Debug, Clone)]
pub(crate) struct Film {
    /// Height of the surface, micrometres.
    pub(crate) height: Map,
    /// Root mean square slope of what is finer than a pixel, radians.
    pub(crate) rough: Map,
    /// What is rougher still across the rub of a satin face, radians; 0 where nothing was rubbed.
    pub(crate) rubbed: f32,
    /// Share of the light that a cloud in or on the film sends back, 0 to 1, and its colour.
    pub(crate) haze: Map,
    pub(crate) haze_colour: Colour,
    /// Share of what is mirrored that is scattered wide, 0 to 1.
    pub(crate) veil: Map,
    /// Gain of what is mirrored.
    pub(crate) mirror: Map,
    /// Build of the film's colour against what was meant: 1 on the mean.
    pub(crate) tint: Map,
    /// Build of the dark shade.
    pub(crate) shade: Map,
    /// Gain of the wood below.
    pub(crate) body: Map,
    /// Share of the film that is there, 0 to 1.
    pub(crate) there: Map,
    /// Share of each pore that is pale, 0 to 1: filler that is white.
    pub(crate) grey: Map,
    /// Pores with air in them, row by row.
    pub(crate) frost: Vec<Frost>,
    /// Colour that ran or bled into the film, build of red-brown.
    pub(crate) bled: Map,
    /// What lies on top.
    pub(crate) cover: Cover,
    /// Fine scratches that follow a lamp.
    pub(crate) arcs: Vec<Arc>,
}

impl Film {
    pub(crate) fn blank(grid: Grid) -> Self {
        let map = |value| Map::of(grid, value);
        Self {
            height: map(0.0),
            rough: map(0.0),
            rubbed: 0.0,
            haze: map(0.0),
            haze_colour: [1.0, 1.0, 1.0],
            veil: map(0.0),
            mirror: map(1.0),
            tint: map(1.0),
            shade: map(0.0),
            body: map(1.0),
            there: map(1.0),
            grey: map(0.0),
            frost: Vec::new(),
            bled: map(0.0),
            cover: Cover { colour: [map(0.0), map(0.0), map(0.0)], share: map(0.0) },
            arcs: Vec::new(),
        }
    }

    /// Lays one row of film as a good finisher leaves it: never quite flat.
    pub(crate) fn lay(&mut self, recipe: &Recipe, row: usize) {
        let grid = self.height.grid;
        let seed = |number: u32| layer(recipe.seed, 200 + number);
        self.rubbed = if recipe.finish == Finish::Rubbed { ROUGH_ACROSS } else { 0.0 };
        let texture = Texture::of(recipe.finish);
        let waves = texture.as_ref().map(|texture| {
            let [short, long] = texture.waves;
            [Wave::new(seed(1), short, grid, row), Wave::new(seed(3), long, grid, row)]
        });
        let (rough, keeps) = texture.map_or((ROUGH_BARE, 1.0), |texture| (texture.rough, texture.keeps));
        for column in 0..grid.columns {
            let (x, y) = grid.middle(column, row);
            let height = waves.as_ref().map_or(0.0, |waves| waves.iter().map(|wave| wave.at(x)).sum());
            let rub = if recipe.finish == Finish::Rubbed {
                RUB * (cloud(seed(4), x / 45.0, y / 0.45) + 0.6 * cloud(seed(5), x / 20.0, y / 0.3))
            } else {
                0.0
            };
            let place = row * grid.columns + column;
            let put = |map: &mut Map, value: f32| {
                if let Some(slot) = map.values.get_mut(place) {
                    *slot = value;
                }
            };
            put(&mut self.height, height);
            put(&mut self.rough, rough);
            put(&mut self.mirror, keeps * (1.0 + rub));
            if recipe.shaded {
                put(&mut self.shade, shade(recipe.seed, grid, x, y));
            }
        }
    }

    /// Lets the pores show in the height, as deep as the finish leaves them.
    pub(crate) async fn sink(&mut self, recipe: &Recipe, pores: &Map) {
        if recipe.filler.is_some() || (recipe.finish.has_film() && !recipe.species.telegraphs) {
            return;
        }
        let (depth, blur) = match recipe.finish {
            Finish::Bare => (OPEN_PORE, 0.0),
            Finish::Sealed | Finish::Coloured => (6.0, 0.22),
            Finish::Cleared => (1.7, 0.16),
            Finish::Rubbed | Finish::Buffed => return,
        };
        for (height, pore) in self.height.values.iter_mut().zip(&pores.blurred(blur).await.values) {
            *height -= depth * pore;
        }
        pause().await;
    }
}

/// Build of the shade at a place of a panel.
fn shade(seed: u32, grid: Grid, x: f32, y: f32) -> f32 {
    let edge = x.min(y).min(grid.width() - x).min(grid.height() - y);
    shaded(edge + 0.7 * soft(layer(seed, 210), 10.0, x, y))
}

/// Build of the shade so many mm from an edge: five passes, each held further from the middle than the one before.
pub(crate) fn shaded(edge: f32) -> f32 {
    /// Where the passes end, mm from the edge, and the build of all together.
    const PASSES: [f32; 5] = [8.0, 12.0, 16.0, 20.0, 24.0];
    const BUILD: f32 = 1.0;
    const FEATHER: f32 = 3.6;
    let pass = |end: &f32| 0.5 * (1.0 - libm::erff((edge - end + 2.2) / (1.1 * FEATHER)));
    BUILD * PASSES.iter().map(pass).sum::<f32>() / coordinate(PASSES.len())
}
