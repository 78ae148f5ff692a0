//! A view cut into pixels, with its wood grown: what no finish changes.

use super::field::{Field, touched};
use super::lie::Lie;
use super::part::{Part, PartKind};
use super::path::Point;
use super::shape::View;
use crate::map::{Grid, Map};
use crate::pause::pause;
use crate::wood::{Face, Species, Wood};

/// Less of a pixel is not seen.
const LEAST_COVER: f32 = 0.004;
/// How far from the rim of a face its fall is of interest, and how far from a line its arris, mm.
pub(super) const FALLS_OVER: f32 = 26.0;
const NEAR_LINE: f32 = 3.5;

/// The wood of a part.
#[derive(Debug, Clone, PartialEq)]
pub struct PartWood {
    /// The part.
    pub part: PartKind,
    /// Its wood.
    pub species: Species,
    /// How its face lies in the log.
    pub face: Face,
    /// Which piece of it.
    pub seed: u32,
}

/// A pixel of a part.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cell {
    /// Which pixel of the picture, counted row by row.
    pub(super) pixel: usize,
    /// Share of it that is this part.
    pub(super) cover: f32,
    /// Its middle, mm.
    pub(super) at: Point,
    /// How far inside the part it is, mm.
    pub(super) inside: f32,
    /// How far from the edge that may be bound, mm.
    pub(super) rim: f32,
    /// The way inward from the nearest line of the part, and from the rim of its face; far from these nothing.
    pub(super) inward: Point,
    pub(super) fall: Point,
    /// How far within the place that stays bare, mm; far below 0 where there is none.
    pub(super) seat: f32,
    /// Its pixel of the wood.
    pub(super) wood: usize,
}

/// A part in the white.
#[derive(Debug, Clone)]
pub(super) struct Blank {
    pub(super) part: Part,
    pub(super) wood: Wood,
    pub(super) grown: PartWood,
    pub(super) cells: Vec<Cell>,
}

impl Blank {
    /// Cuts a part of a view into pixels and grows its wood, in turns.
    pub(super) async fn grow(view: &View, part: Part, grown: PartWood, scale: f32) -> Self {
        let grid = view.grid(scale);
        let [columns, rows] = touched(&part.paths, grid);
        let lie = Lie::of(part.grain, columns, rows, scale);
        let mut cells = Vec::new();
        let own = Field::of(&part.paths).await;
        let edge = if part.edge == part.paths { own.clone() } else { Field::of(&part.edge).await };
        let seat = match &part.seat {
            Some(seat) => Some(Field::of(core::slice::from_ref(seat)).await),
            None => None,
        };
        for row in rows.0..rows.1 {
            for column in columns.0..columns.1 {
                let at = grid.middle(column, row);
                let inside = own.at(at);
                let cover = (inside / scale + 0.5).clamp(0.0, 1.0);
                if cover < LEAST_COVER {
                    continue;
                }
                let rim = edge.at(at);
                let way = |near: bool, field: &Field| if near { field.inward(at) } else { (0.0, 0.0) };
                cells.push(Cell {
                    pixel: row * grid.columns + column,
                    cover,
                    at,
                    inside,
                    rim,
                    inward: way(inside < NEAR_LINE, &own),
                    fall: way(rim < FALLS_OVER, &edge),
                    seat: seat.as_ref().map_or(f32::NEG_INFINITY, |seat| seat.at(at)),
                    wood: lie.wood(column, row),
                });
            }
            pause().await;
        }
        let wood = lie.grow(&grown, &cells).await;
        Self { part, wood, grown, cells }
    }
}

impl PartKind {
    /// A number of its own, for chance.
    pub(super) fn number(self) -> u32 {
        (0..).zip(Self::ALL).find(|(_, kind)| *kind == self).map_or(0, |(number, _)| number)
    }
}

impl View {
    /// The pixels of a picture of it.
    pub(super) fn grid(&self, scale: f32) -> Grid {
        Grid::covering(self.size.0, self.size.1, scale)
    }
}

/// A value of the wood at a cell.
pub(super) fn of(map: &Map, cell: &Cell) -> f32 {
    map.values.get(cell.wood).copied().unwrap_or(0.0)
}
