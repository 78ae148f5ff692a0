//! What a plane cuts open: pores and gum. Along the grain they are dashes, across it holes.

use super::{Cut, Pores, Species, Wood, year};
use crate::light::screen;
use crate::map::Map;
use crate::noise::Chance;
use crate::number::{coordinate, whole};
use crate::pause::{MANY, pause};

/// Pores end this far beyond the panel, so that its edge cuts some.
const BEYOND: f32 = 4.0;
/// Tries for the place of one pore, where most are refused.
const TRIES: usize = 40;
/// The thinnest vessel, in means.
const THINNEST: f32 = 0.3;
/// How single pores leave the direction of the fibre, and how they bend.
const ASTRAY: f32 = 0.02;
const BEND: f32 = 0.006;
/// Most gum in the wood below it.
const GUM: f32 = 0.9;

/// Bores the pores: adds the share of each pixel that is open.
pub(crate) async fn bore(map: &mut Map, species: &Species, cut: &Cut) {
    for (number, kind) in (0_u32..).zip(&species.pores) {
        let chance = Chance::new(cut.seed(50 + number));
        if cut.is_end() {
            holes(map, species, cut, kind, chance).await;
        } else {
            dashes(map, species, cut, kind, chance).await;
        }
    }
    for share in &mut map.values {
        *share = share.min(1.0);
    }
}

async fn dashes(map: &mut Map, species: &Species, cut: &Cut, kind: &Pores, mut chance: Chance) {
    let grid = map.grid;
    let face = grid.square_centimetres() * (1.0 + 2.0 * BEYOND / grid.width());
    for number in 0..whole(kind.count * face) {
        if number.is_multiple_of(MANY) {
            pause().await;
        }
        let Some((x, y)) = stand(&mut chance, |at| year::crowd(species, cut, kind.stand, at), map) else {
            continue;
        };
        let length = chance.about(kind.length, kind.length_spread);
        // A plane meets a tube at any depth: the groove is a chord of it.
        let off = chance.even();
        let width = vessel(kind, &mut chance) * libm::sqrtf(1.0 - off * off);
        let slope = cut.slope(x, y) + ASTRAY * chance.normal();
        let bend = BEND * chance.normal() / length.max(1.0);
        dash(map, (x, y), length, width, (slope, bend));
    }
}

/// Across the grain as much of the face is open as along it (a section shows the share of the volume, whatever its
/// direction), in round holes.
async fn holes(map: &mut Map, species: &Species, cut: &Cut, kind: &Pores, mut chance: Chance) {
    let grid = map.grid;
    let face = grid.square_centimetres() * (1.0 + 2.0 * BEYOND / grid.width());
    let count = kind.count * kind.length / kind.width;
    for number in 0..whole(count * face) {
        if number.is_multiple_of(MANY) {
            pause().await;
        }
        let Some(at) = stand(&mut chance, |at| year::crowd(species, cut, kind.stand, at), map) else {
            continue;
        };
        map.disc(at, 0.5 * vessel(kind, &mut chance), 1.0);
    }
}

fn vessel(kind: &Pores, chance: &mut Chance) -> f32 {
    (kind.width + kind.width_spread * chance.normal()).max(THINNEST * kind.width)
}

/// A place, the likelier the thicker they stand.
fn stand(chance: &mut Chance, crowd: impl Fn((f32, f32)) -> f32, map: &Map) -> Option<(f32, f32)> {
    (0..TRIES).find_map(|_| {
        let at = (chance.between(-BEYOND, map.grid.width() + BEYOND), chance.even() * map.grid.height());
        (chance.even() < crowd(at)).then_some(at)
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

/// Short dark dashes of gum.
pub(super) fn gum(wood: &mut Wood, species: &Species, cut: &Cut) {
    let Some(gum) = species.gum else { return };
    let grid = wood.pore.grid;
    let mut chance = Chance::new(cut.seed(60));
    let mut cover = Map::of(grid, 0.0);
    for _ in 0..whole(gum.count * grid.square_centimetres()) {
        let (x, y) = (chance.even() * grid.width(), chance.even() * grid.height());
        let length = chance.about(gum.length, 0.4);
        let width = gum.width * chance.between(0.6, 1.2);
        let slope = cut.slope(x, y) + 0.03 * chance.normal();
        if cut.is_end() {
            cover.disc((x, y), width, 1.0);
        } else {
            dash(&mut cover, (x, y), length, width, (slope, 0.0));
        }
    }
    for (map, part) in wood.colour.iter_mut().zip(screen(gum.colour)) {
        for (value, share) in map.values.iter_mut().zip(&cover.values) {
            *value += (part - *value) * (GUM * share.min(1.0));
        }
    }
}
