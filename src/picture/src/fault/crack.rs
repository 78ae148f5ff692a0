//! Cracks: hairlines that wander on from a place, stop where they meet an older one, and break the mirror. How they run
//! is each fault's own; how a break in hard film looks is the same for all.

use crate::light::Colour;
use crate::map::{Grid, Map};
use crate::noise::Chance;
use crate::number::whole;
use crate::panel::{Layers, Recipe};
use crate::pause::pause;

/// Length of a step of a walk, and of the squares in which cracks meet.
pub(super) const STEP: f32 = 0.25;
const SQUARE: f32 = 0.4;
/// Share of a turn that a crack takes back at each step: it keeps about its way.
const HOLDS_ON: f32 = 0.1;
/// A branch may touch the crack that it leaves for so many steps.
const LEAVES: usize = 6;
/// A free end thins over this length, at most over all of it.
const THINS: f32 = 5.0;

/// The light that falls into a crack and does not come back, at full cover.
const SWALLOWED: f32 = 0.75;
/// A broken edge scatters light: a grey that is paler than dark wood and darker than pale wood. How much of it shows and at
/// most, and how far beside the crack.
const EDGE_LIGHT: Colour = [0.40, 0.34, 0.25];
const EDGE_SHARE: f32 = 1.25;
const EDGE_MOST: f32 = 0.75;
const EDGE_ASIDE: f32 = 0.15;
/// A crack in opaque colour is a dark line: light falls in between its walls.
const DARK: Colour = [0.050, 0.042, 0.034];
/// The mirror ends at a crack.
const BLIND: f32 = 0.85;
/// Film curls up a little along a crack, micrometres, over this length; sharp to the lamp, nothing to the finger.
const CURL: f32 = 5.0;
const CURL_WIDE: f32 = 0.3;
/// Share of a pixel that is marked for each share that is cracked: what is thinner than a pixel is still there.
const MARKED: f32 = 4.0;

/// One crack, a point every step.
pub(super) struct Crack {
    pub(super) points: Vec<(f32, f32)>,
    /// Its width where it is widest.
    pub(super) width: f32,
    /// Whether it begins, and ends, at another crack or beyond the panel: there it does not thin.
    pub(super) held: (bool, bool),
}

/// How a crack goes on: its heading in radians, how much it turns at a step, how often it kinks and by how much, and how
/// far it may go.
pub(super) struct Way {
    pub(super) heading: f32,
    pub(super) jitter: f32,
    pub(super) kink: (f32, f32),
    pub(super) length: f32,
}

/// A family of cracks that know of each other.
pub(super) struct Family {
    squares: Map,
    pub(super) cracks: Vec<Crack>,
}

impl Family {
    pub(super) fn on(grid: Grid) -> Self {
        Self {
            squares: Map::of(Grid::covering(grid.width(), grid.height(), SQUARE), 0.0),
            cracks: Vec::new(),
        }
    }

    /// Whether some crack passes within a reach of a place.
    pub(super) fn passes(&self, (x, y): (f32, f32), reach: f32) -> bool {
        crate::map::near(self.squares.grid, x, y, reach)
            .any(|(column, row, ..)| self.squares.at(column, row) > 0.0)
    }

    /// Lets a crack walk until its length is gone or it meets another. It is kept, unless it is shorter than `least`.
    pub(super) fn walk(&mut self, chance: &mut Chance, from: (f32, f32), way: &Way, width: f32, least: f32) {
        let leaves = self.taken(from);
        let (mut place, mut heading) = (from, way.heading);
        let mut points = vec![from];
        let mut meets = false;
        for step in 0..whole(way.length / STEP) {
            heading += way.jitter * chance.normal() + HOLDS_ON * (way.heading - heading);
            if chance.even() < way.kink.0 * STEP {
                heading += way.kink.1 * chance.normal();
            }
            place = (place.0 + STEP * libm::cosf(heading), place.1 + STEP * libm::sinf(heading));
            points.push(place);
            meets = self.is_outside(place) || ((!leaves || step > LEAVES) && self.taken(place));
            if meets {
                break;
            }
        }
        if STEP * crate::number::coordinate(points.len()) >= least {
            for &(x, y) in &points {
                self.squares.within(x, y, 0.5 * SQUARE, |value, _, _| *value = 1.0);
            }
            self.cracks.push(Crack { points, width, held: (leaves || self.is_outside(from), meets) });
        }
    }

    /// Makes the last cracks meet at the point that they began from: there they do not thin.
    pub(super) fn point(&mut self, count: usize) {
        for crack in self.cracks.iter_mut().rev().take(count) {
            crack.held.0 = true;
        }
    }

    fn is_outside(&self, (x, y): (f32, f32)) -> bool {
        let grid = self.squares.grid;
        x < 0.0 || y < 0.0 || x >= grid.width() || y >= grid.height()
    }

    fn taken(&self, (x, y): (f32, f32)) -> bool {
        let grid = self.squares.grid;
        !self.is_outside((x, y)) && self.squares.at(whole(x / grid.scale), whole(y / grid.scale)) > 0.0
    }

    /// Share of each pixel that is cracked, moved aside by some mm.
    pub(super) async fn drawn(&self, grid: Grid, aside: (f32, f32)) -> Map {
        let mut map = Map::of(grid, 0.0);
        for crack in &self.cracks {
            pause().await;
            let last = crack.points.len();
            let thin = |number: usize, held: bool| {
                let off = STEP * crate::number::coordinate(number);
                if held { 1.0 } else { (off / THINS.min(STEP * crate::number::coordinate(last))).min(1.0) }
            };
            for ((number, from), to) in crack.points.iter().enumerate().zip(crack.points.iter().skip(1)) {
                let width = crack.width * thin(number, crack.held.0) * thin(last - number, crack.held.1);
                let moved = |place: &(f32, f32)| (place.0 + aside.0, place.1 + aside.1);
                map.stroke(moved(from), moved(to), width, 1.0);
            }
        }
        map
    }
}

/// Breaks the film along cracks and marks them.
pub(super) async fn lay(layers: &mut Layers, recipe: &Recipe, family: &Family) {
    let grid = layers.grid();
    let cracked = family.drawn(grid, (0.0, 0.0)).await;
    for (mask, share) in layers.mask.values.iter_mut().zip(&cracked.values) {
        *mask = mask.max((MARKED * share).min(1.0));
    }
    pause().await;
    let film = &mut layers.film;
    let edges = family.drawn(grid, (EDGE_ASIDE, EDGE_ASIDE)).await;
    for row in 0..grid.rows {
        pause().await;
        for column in 0..grid.columns {
            let edge = (EDGE_SHARE * edges.at(column, row)).min(EDGE_MOST);
            film.cover.lay(column, row, EDGE_LIGHT, edge);
            if recipe.opaque.is_some() {
                film.cover.lay(column, row, DARK, SWALLOWED * cracked.at(column, row));
            }
        }
    }
    let curls = cracked.blurred(CURL_WIDE).await;
    let maps = film.body.values.iter_mut().zip(&mut film.mirror.values).zip(&mut film.height.values);
    for (((body, mirror), height), (share, curl)) in maps.zip(cracked.values.iter().zip(&curls.values)) {
        let share = share.min(1.0);
        *body *= 1.0 - SWALLOWED * share;
        *mirror *= 1.0 - BLIND * share;
        *height += CURL * curl;
    }
}
