//! Peeling: film that never held comes off in flakes, down to the wood. What is gone has a torn, bright edge; what is left
//! beside it is lifted, with air below it that looks silver, and here and there a flake is loose and still in its place.
//! Round a cold check the film stays where it is.

use super::field::coarse;
use crate::light::Colour;
use crate::map::{Grid, Map};
use crate::noise::{Chance, cloud};
use crate::number::{coordinate, smooth, whole};
use crate::panel::{Layers, Recipe, Severity};
use crate::pause::pause;
use crate::wood::layer;

/// Size of a flake, and how far from an even pattern they lie, in sizes.
const FLAKE: f32 = 6.8;
const UNEVEN: f32 = 0.46;
/// Flakes are gone about so far round a place on the edge, and each by its own share.
const REACH: [f32; 3] = [13.0, 25.0, 38.0];
const REACH_SHARE: (f32, f32) = (0.6, 1.15);
/// Beyond that, to so many reaches, flakes are loose, and single ones gone.
const BEYOND: f32 = 1.5;
const LOOSE: f32 = 0.30;
const GONE: f32 = 0.06;
/// A torn outline: how far it is moved, and over what length.
const TORN: [(f32, f32); 2] = [(0.80, 9.0), (0.50, 3.0)];
const TORN_FINE: (f32, f32) = (0.10, 0.9);
/// Film that is gone, micrometres.
const FILM: f32 = 40.0;
/// Lift of a rim and of a loose flake, micrometres; how far a rim is lifted, and how unevenly.
const LIFT: f32 = 34.0;
const LOOSE_LIFT: f32 = 15.0;
/// Round its rim a loose flake still lies down over this width, and has this share of the air.
const LOOSE_WIDE: f32 = 2.0;
const LOOSE_LEAST: f32 = 0.4;
const RIM: f32 = 1.5;
const LIFT_WAVE: f32 = 5.0;
/// Film is too stiff to bend over less than this.
const STIFF: f32 = 0.7;
/// Air below the film: what it sends back, and how far in from a rim.
const AIR: f32 = 0.34;
const AIR_WIDE: f32 = 1.1;
const LOOSE_AIR: f32 = 0.17;
/// The torn edge: its colour, how much of it shows, its width.
const EDGE: Colour = [0.80, 0.76, 0.68];
const EDGE_SHARE: f32 = 0.75;
const EDGE_WIDE: f32 = 0.22;
/// Shadow of the edge on the wood, and its width.
const SHADOW: f32 = 0.5;
const SHADOW_WIDE: f32 = 0.45;
/// A crack round a loose flake: what it swallows, and its width.
const CRACK: f32 = 0.55;
const CRACK_WIDE: f32 = 0.12;
/// Air from which a rim is marked.
const MARKED: (f32, f32) = (0.08, 0.2);
/// Where along one of the sides of a panel film comes off, shares of it.
const SIDES: f32 = 4.0;
const START: (f32, f32) = (0.2, 0.8);
/// The first flake lies so many sizes before the panel.
const FIRST: f32 = 1.5;
/// Roughness of the wood below, radians.
const WOOD_ROUGH: f32 = 0.3;

/// Whether a flake holds.
#[derive(Clone, Copy, PartialEq)]
enum Hold {
    Held,
    Loose,
    Gone,
}

/// The flakes of a film, one in each square of a grid that begins a flake outside the panel.
struct Flakes {
    columns: usize,
    /// Where they come off, and how far from there all of them hold.
    start: (f32, f32),
    reach: f32,
    flakes: Vec<(f32, f32, Hold)>,
}

/// A place among the flakes.
struct Place {
    hold: Hold,
    /// Distance to the flake next to it, and to film that is gone, or held where it is gone itself.
    side: f32,
    edge: f32,
}

pub(super) async fn spoil(layers: &mut Layers, recipe: &Recipe, severity: Severity) {
    let grid = layers.grid();
    let flakes = Flakes::broken(grid, recipe.seed, severity.of(REACH));
    let number = |n: u32| layer(recipe.seed, 1_122 + n);
    let torn = |part: u32, layers: &[(f32, f32)], first: u32, x: f32, y: f32| {
        let moved =
            |(n, (far, long)): (u32, &(f32, f32))| far * cloud(number(2 * n + part), x / long, y / long);
        (first..).zip(layers).map(moved).sum::<f32>()
    };
    let wide = [
        coarse(grid, |x, y| torn(0, &TORN, 0, x, y)).await,
        coarse(grid, |x, y| torn(1, &TORN, 0, x, y)).await,
    ];
    let lifts = coarse(grid, |x, y| smooth(-1.0, 1.0, cloud(number(20), x / LIFT_WAVE, y / LIFT_WAVE))).await;
    let mut rise = Map::of(grid, 0.0);
    for row in 0..grid.rows {
        pause().await;
        for column in 0..grid.columns {
            let (x, y) = grid.middle(column, row);
            if flakes.is_whole(x, y) {
                continue;
            }
            let [dx, dy] = [0, 1].map(|part| torn(part, &[TORN_FINE], 2, x, y));
            let [wide_x, wide_y] = wide.each_ref().map(|wide| wide.near(x, y));
            let place = flakes.at(x + wide_x + dx, y + wide_y + dy);
            let lift = lifts.near(x, y);
            rise.add(column, row, place.rise(lift));
            place.tear(layers, (column, row), lift);
        }
    }
    for (height, rise) in layers.film.height.values.iter_mut().zip(&rise.blurred(STIFF).await.values) {
        *height += rise;
    }
}

impl Flakes {
    fn broken(grid: Grid, seed: u32, reach: f32) -> Self {
        let mut chance = Chance::new(layer(seed, 1_121));
        let start = match whole(SIDES * chance.even()) {
            0 => (0.0, chance.between(START.0, START.1) * grid.height()),
            1 => (grid.width(), chance.between(START.0, START.1) * grid.height()),
            2 => (chance.between(START.0, START.1) * grid.width(), grid.height()),
            _ => (chance.between(START.0, START.1) * grid.width(), 0.0),
        };
        let count = |length: f32| whole(length / FLAKE) + 4;
        let (columns, rows) = (count(grid.width()), count(grid.height()));
        let flake = |number: usize| {
            let place = |n: usize, chance: &mut Chance| {
                FLAKE * (coordinate(n) - FIRST + chance.between(-UNEVEN, UNEVEN))
            };
            let (x, y) = (place(number % columns, &mut chance), place(number / columns, &mut chance));
            let far = libm::hypotf(x - start.0, y - start.1) / reach;
            let (own, luck) = (chance.between(REACH_SHARE.0, REACH_SHARE.1), chance.even());
            let hold = match () {
                () if far < own || (far < BEYOND && luck < GONE) => Hold::Gone,
                () if far < BEYOND && luck < GONE + LOOSE => Hold::Loose,
                () => Hold::Held,
            };
            (x, y, hold)
        };
        let reach = BEYOND * reach + 2.0 * FLAKE;
        Self { columns, start, reach, flakes: (0..columns * rows).map(flake).collect() }
    }

    /// Whether a place is so far away that nothing has come off near it.
    fn is_whole(&self, x: f32, y: f32) -> bool {
        libm::hypotf(x - self.start.0, y - self.start.1) > self.reach
    }

    /// Where a place lies among them.
    fn at(&self, x: f32, y: f32) -> Place {
        let square = |at: f32| whole((at / FLAKE + 2.0).max(1.0)) - 1;
        let (left, top) = (square(x), square(y));
        let around = || {
            (top..top + 3)
                .flat_map(move |row| (left..left + 3).map(move |column| row * self.columns + column))
        };
        let flake = |number: usize| self.flakes.get(number).copied();
        // Among flakes of one kind no edge is near.
        let kind = |hold: Hold| around().filter_map(flake).all(|flake| flake.2 == hold);
        if let Some(hold) = [Hold::Gone, Hold::Held].into_iter().find(|hold| kind(*hold)) {
            return Place { hold, side: FLAKE, edge: FLAKE };
        }
        let far = |(fx, fy, _): (f32, f32, Hold)| (fx - x) * (fx - x) + (fy - y) * (fy - y);
        let nearest = around().filter_map(flake).min_by(|a, b| far(*a).total_cmp(&far(*b)));
        let Some(own) = nearest else { return Place { hold: Hold::Held, side: FLAKE, edge: FLAKE } };
        let mut place = Place { hold: own.2, side: FLAKE, edge: FLAKE };
        for other in around().filter_map(flake) {
            let apart = libm::hypotf(other.0 - own.0, other.1 - own.1);
            if apart > 0.0 {
                let to_middle = 0.5 * (far(other) - far(own)) / apart;
                place.side = place.side.min(to_middle);
                if (other.2 == Hold::Gone) != (own.2 == Hold::Gone) {
                    place.edge = place.edge.min(to_middle);
                }
            }
        }
        place
    }
}

impl Place {
    /// Whether film is gone so near that one feels it: 1 at the edge, falling off inward.
    fn near(&self, wide: f32) -> f32 {
        libm::expf(-(self.edge / wide) * (self.edge / wide))
    }

    /// How far the film is lifted, micrometres.
    fn rise(&self, lift: f32) -> f32 {
        match self.hold {
            Hold::Gone => 0.0,
            Hold::Held => lift * LIFT * self.near(RIM),
            Hold::Loose => LOOSE_LIFT * smooth(0.0, LOOSE_WIDE, self.side),
        }
    }

    /// Tears the film at a pixel, and marks it.
    fn tear(&self, layers: &mut Layers, (column, row): (usize, usize), lift: f32) {
        let grid = layers.grid();
        let gone = self.hold == Hold::Gone;
        // Share of the pixel that is bare.
        let bare = (0.5 + if gone { self.edge } else { -self.edge } / grid.scale).clamp(0.0, 1.0);
        let (air, crack) = match self.hold {
            Hold::Gone => (0.0, 0.0),
            Hold::Held => (lift * AIR * self.near(AIR_WIDE), 0.0),
            Hold::Loose => {
                let inside = smooth(0.0, LOOSE_WIDE, self.side);
                let crack = (CRACK_WIDE / grid.scale).min(1.0)
                    * (1.0 - smooth(0.0, 2.0 * CRACK_WIDE.max(0.5 * grid.scale), self.side));
                (LOOSE_AIR * (0.5 + 0.5 * lift) * inside.max(LOOSE_LEAST), crack)
            }
        };
        let mark = if self.hold == Hold::Loose { 1.0 } else { bare.max(smooth(MARKED.0, MARKED.1, air)) };
        put(&mut layers.mask, (column, row), |mask| mask.max(mark));
        let film = &mut layers.film;
        put(&mut film.height, (column, row), |height| height - FILM * bare);
        put(&mut film.there, (column, row), |there| there * (1.0 - bare));
        put(&mut film.rough, (column, row), |rough| rough + (WOOD_ROUGH - rough) * bare);
        put(&mut film.haze, (column, row), |haze| haze + air * (1.0 - bare));
        let shadow = if gone { SHADOW * self.near(SHADOW_WIDE) } else { 0.0 };
        put(&mut film.body, (column, row), |body| body * (1.0 - shadow) * (1.0 - CRACK * crack));
        if !gone {
            let edge = EDGE_SHARE
                * (1.0 - smooth(0.0, EDGE_WIDE.max(grid.scale), self.edge))
                * (EDGE_WIDE / grid.scale).min(1.0);
            let edge = edge * (0.5 + 0.5 * lift);
            film.cover.lay(column, row, EDGE.map(|part| part * edge), edge);
        }
    }
}

fn put(map: &mut Map, (column, row): (usize, usize), change: impl Fn(f32) -> f32) {
    if let Some(value) = map.values.get_mut(row * map.grid.columns + column) {
        *value = change(*value);
    }
}
