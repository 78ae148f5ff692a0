//! How a part lies on its piece of wood.

use super::blank::{Cell, PartWood};
use super::part::Grain;
use crate::map::Grid;
use crate::number::{coordinate, whole};
use crate::pause::pause;
use crate::wood::{Cut, Wood, layer};

/// Wood is shown so many times as coarse as it is: a pore is a fifth of a mm wide, and a picture of a whole instrument has
/// a pixel for each mm (by eye).
const COARSER: f32 = 2.8;

/// How the pixels of a part lie on its piece of wood.
pub(super) struct Lie {
    grain: Grain,
    columns: (usize, usize),
    rows: (usize, usize),
    /// The joint of two halves, in pixels.
    axis: f32,
    wood: Grid,
}

impl Lie {
    pub(super) fn of(grain: Grain, columns: (usize, usize), rows: (usize, usize), scale: f32) -> Self {
        let (wide, tall) = (columns.1 - columns.0, rows.1 - rows.0);
        let axis = if let Grain::Matched { axis } = grain { axis / scale } else { 0.0 };
        let (along, across) = match grain {
            Grain::Up => (tall, wide),
            Grain::Across => (wide, tall),
            Grain::Matched { .. } => {
                let half = (axis - coordinate(columns.0)).max(coordinate(columns.1) - axis);
                (tall, whole(half.max(0.0)) + 1)
            }
        };
        let fine = scale / COARSER;
        let wood = Grid::covering(coordinate(along.max(1)) * fine, coordinate(across.max(1)) * fine, fine);
        Self { grain, columns, rows, axis, wood }
    }

    /// The pixel of the wood that a pixel of the picture shows.
    pub(super) fn wood(&self, column: usize, row: usize) -> usize {
        let (from_left, from_top) = (column - self.columns.0, row - self.rows.0);
        let (along, across) = match self.grain {
            Grain::Up => (from_top, from_left),
            Grain::Across => (from_left, from_top),
            Grain::Matched { .. } => (from_top, whole((coordinate(column) + 0.5 - self.axis).abs())),
        };
        let last = |count: usize| count.saturating_sub(1);
        across.min(last(self.wood.rows)) * self.wood.columns + along.min(last(self.wood.columns))
    }

    /// Grows the wood where it is seen: of each row from the first to the last pixel that is.
    pub(super) async fn grow(&self, grown: &PartWood, cells: &[Cell]) -> Wood {
        let columns = self.wood.columns;
        let mut spans = vec![columns..0; self.wood.rows];
        for cell in cells {
            if let Some(span) = spans.get_mut(cell.wood / columns) {
                let column = cell.wood % columns;
                *span = span.start.min(column)..span.end.max(column + 1);
            }
        }
        let seed = layer(grown.seed, grown.part.number());
        let cut = Cut::new(&grown.species, grown.face, seed, self.wood.height());
        let mut wood = Wood::blank(self.wood);
        pause().await;
        for (row, span) in spans.into_iter().enumerate().filter(|(_, span)| !span.is_empty()) {
            wood.grow_span(&grown.species, &cut, row, span);
            pause().await;
        }
        wood.open(&grown.species, &cut).await;
        wood
    }
}
