//! What a plane cuts open: pores, ray ends and gum, broad rays.

use super::{Cut, Species, Wood};
use crate::light::screen;
use crate::map::{Map, near};
use crate::noise::Chance;
use crate::number::{coordinate, whole};

/// Mean of the chord of a circle that is cut at random, in diameters.
const CHORD: f32 = core::f32::consts::FRAC_PI_4;
/// Pores end this far beyond the panel, so that its edge cuts some.
const BEYOND: f32 = 4.0;
/// Tries for the place of one pore, where most are refused.
const TRIES: usize = 40;

/// Bores the pores: dashes along the fibre, cut at a random depth, their ends tapered.
pub(super) fn bore(wood: &mut Wood, species: &Species, cut: &Cut) {
    let grid = wood.pore.grid;
    for (number, kind) in (0_u32..).zip(&species.pores) {
        let mut chance = Chance::new(cut.seed(50 + number));
        let face = grid.square_centimetres() * (1.0 + 2.0 * BEYOND / grid.width());
        for _ in 0..whole(kind.count * face) {
            let Some((x, y)) =
                stand(&mut chance, |x, y| cut.crowd(kind.stand, x, y), grid.width(), grid.height())
            else {
                continue;
            };
            let length = chance.about(kind.length, kind.length_spread);
            let vessel = (kind.width + kind.width_spread * chance.normal()).max(0.3 * kind.width);
            let width = vessel * CHORD * libm::powf(chance.even(), 0.3);
            let slope = cut.slope(x, y) + 0.02 * chance.normal();
            let bend = 0.006 * chance.normal() / length.max(1.0);
            dash(&mut wood.pore, (x, y), length, width, (slope, bend));
        }
    }
    for share in &mut wood.pore.values {
        *share = share.min(1.0);
    }
}

/// A place, the likelier the thicker they stand.
fn stand(
    chance: &mut Chance,
    crowd: impl Fn(f32, f32) -> f32,
    width: f32,
    height: f32,
) -> Option<(f32, f32)> {
    (0..TRIES).find_map(|_| {
        let (x, y) = (chance.between(-BEYOND, width + BEYOND), chance.even() * height);
        (chance.even() < crowd(x, y)).then_some((x, y))
    })
}

/// Adds the share of each pixel that a tapered dash covers.
fn dash(map: &mut Map, (x, y): (f32, f32), length: f32, width: f32, (slope, bend): (f32, f32)) {
    let grid = map.grid;
    let step = grid.scale.min(0.5 * length);
    let (left, top) = grid.inside(x, y);
    let long = (0.5 * length + width) / grid.scale;
    let (last_column, last_row) = (coordinate(grid.columns), coordinate(grid.rows));
    if left + long < 0.0 || left - long > last_column || top + long < 0.0 || top - long > last_row {
        return;
    }
    let mut off = -0.5 * length + 0.5 * step;
    while off < 0.5 * length {
        let end = (2.0 * off / length).abs();
        let wide = width * (1.0 - end * end * end).max(0.0);
        let middle = top + (slope * off + bend * off * off) / grid.scale;
        let (from, to) = (middle - 0.5 * wide / grid.scale, middle + 0.5 * wide / grid.scale);
        let along = left + off / grid.scale;
        let share = step / grid.scale;
        if along >= 0.0 && to >= 0.0 {
            let column = whole(along);
            for row in whole(from.max(0.0))..=whole(to) {
                let edge = coordinate(row);
                let cover = to.min(edge + 1.0) - from.max(edge);
                map.add(column, row, cover.max(0.0) * share);
            }
        }
        off += step;
    }
}

/// Short dashes of another colour: ray ends and gum.
pub(super) fn fleck(wood: &mut Wood, species: &Species, cut: &Cut) {
    let grid = wood.pore.grid;
    for (number, kind) in (0_u32..).zip(&species.flecks) {
        let mut chance = Chance::new(cut.seed(60 + number));
        let mut cover = Map::of(grid, 0.0);
        for _ in 0..whole(kind.count * grid.square_centimetres()) {
            let (x, y) = (chance.even() * grid.width(), chance.even() * grid.height());
            let length = chance.about(kind.length, 0.4);
            let width = kind.width * chance.between(0.6, 1.2);
            let slope = cut.slope(x, y) + 0.03 * chance.normal();
            dash(&mut cover, (x, y), length, width, (slope, 0.0));
        }
        paint(wood, &cover, screen(kind.colour), kind.cover);
    }
}

/// Broad rays: ribbons that cross the grain, lighter or darker than it, with no pores under them.
pub(super) fn cross(wood: &mut Wood, species: &Species, cut: &Cut) {
    /// Angle of the ribbons to the grain, and its drift, radians.
    const ANGLE: f32 = 1.27;
    const DRIFT: f32 = 0.12;
    /// Longest against the median.
    const LONGEST: f32 = 6.0;
    let Some(rays) = species.rays else { return };
    let grid = wood.pore.grid;
    let mut chance = Chance::new(cut.seed(70));
    let mut cover = Map::of(grid, 0.0);
    for _ in 0..whole(rays.count * grid.square_centimetres()) {
        let (x, y) = (chance.even() * grid.width(), chance.even() * grid.height());
        let half = 0.5 * chance.about(rays.length, 0.75).min(LONGEST * rays.length);
        let wide = 0.5 * rays.width * (0.7 + 0.3 * half / rays.length) * chance.between(0.7, 1.3);
        let angle = ANGLE + DRIFT * crate::noise::cloud(cut.seed(71), x / 40.0, y / 40.0);
        let (sine, cosine) = (libm::sinf(angle), libm::cosf(angle));
        for (column, row, dx, dy) in near(grid, x, y, half + wide) {
            let (along, off) = (dx * cosine + dy * sine, dy * cosine - dx * sine);
            let warp = 0.25 * wide * crate::noise::cloud(cut.seed(72), (x + dx) / 0.7, (y + dy) / 0.7);
            let end = along / half;
            let edge = wide * (1.0 - end * end).max(0.0) + warp - off.abs();
            let share = (edge / grid.scale + 0.5).clamp(0.0, 1.0);
            if share > 0.0 && end.abs() < 1.0 {
                cover.add(column, row, share);
            }
        }
    }
    paint(wood, &cover, screen(rays.colour), 0.62);
    for ((pore, tilt), share) in wood.pore.values.iter_mut().zip(&mut wood.tilt.values).zip(&cover.values) {
        let share = share.min(1.0);
        *pore *= 1.0 - share;
        *tilt += 0.55 * share;
    }
}

fn paint(wood: &mut Wood, cover: &Map, colour: [f32; 3], most: f32) {
    for (map, part) in wood.colour.iter_mut().zip(colour) {
        for (value, share) in map.values.iter_mut().zip(&cover.values) {
            *value += (part - *value) * (most * share.min(1.0));
        }
    }
}
