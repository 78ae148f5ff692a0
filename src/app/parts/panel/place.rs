//! Places on a panel, and the cells that it is told in.

use crate::card::scene::PANEL_MM;
use crate::picture::{Grid, Panel};

/// The panel, mm along the grain and across it.
pub(super) const WIDTH: f32 = PANEL_MM.0;
pub(super) const HEIGHT: f32 = PANEL_MM.1;
/// Cells along and across: on a phone each is still as large as a fingertip.
pub(in crate::app) const COLUMNS: u8 = 6;
pub(in crate::app) const ROWS: u8 = 4;

/// A place on the panel, mm from its left and from its top.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::app) struct Place {
    pub(in crate::app) x: f32,
    pub(in crate::app) y: f32,
}

pub(super) const MIDDLE: Place = Place { x: 0.5 * WIDTH, y: 0.5 * HEIGHT };

/// The same place, or the nearest one on the panel.
pub(super) const fn held(place: Place) -> Place {
    Place { x: place.x.clamp(0.0, WIDTH), y: place.y.clamp(0.0, HEIGHT) }
}

/// A length on the panel as a share of it, as drawings take it.
pub(super) fn percent(at: f32, of: f32) -> String {
    format!("{}%", 100.0 * at / of)
}

/// A part of the panel that is told in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(in crate::app) struct Cell {
    pub(in crate::app) column: u8,
    pub(in crate::app) row: u8,
}

impl Cell {
    /// Every cell, row by row.
    pub(super) fn all() -> impl Iterator<Item = Self> {
        (0..ROWS).flat_map(|row| (0..COLUMNS).map(move |column| Self { column, row }))
    }

    /// Its place among all.
    pub(super) const fn number(self) -> usize {
        self.row as usize * COLUMNS as usize + self.column as usize
    }

    pub(super) fn middle(self) -> Place {
        let along = |n: u8, count: u8, length: f32| (f32::from(n) + 0.5) / f32::from(count) * length;
        Place { x: along(self.column, COLUMNS, WIDTH), y: along(self.row, ROWS, HEIGHT) }
    }

    /// The cell that a place lies in.
    pub(super) fn of(place: Place) -> Self {
        let nearest = Self::all().min_by(|a, b| far(a.middle(), place).total_cmp(&far(b.middle(), place)));
        nearest.unwrap_or_default()
    }

    /// The cell that a key leads to; `None` where the key is not for us.
    pub(super) fn walked(self, key: &str) -> Option<Self> {
        let (last_column, last_row) = (COLUMNS - 1, ROWS - 1);
        Some(match key {
            "ArrowLeft" => Self { column: self.column.saturating_sub(1), ..self },
            "ArrowRight" => Self { column: (self.column + 1).min(last_column), ..self },
            "ArrowUp" => Self { row: self.row.saturating_sub(1), ..self },
            "ArrowDown" => Self { row: (self.row + 1).min(last_row), ..self },
            "Home" => Self { column: 0, ..self },
            "End" => Self { column: last_column, ..self },
            "PageUp" => Self { row: 0, ..self },
            "PageDown" => Self { row: last_row, ..self },
            _ => return None,
        })
    }
}

/// How far apart two places are in cells, squared: all cells are alike in size.
fn far(a: Place, b: Place) -> f32 {
    let across = (a.y - b.y) / HEIGHT * f32::from(ROWS);
    let along = (a.x - b.x) / WIDTH * f32::from(COLUMNS);
    along.abs().max(across.abs())
}

/// What the fault takes of a cell.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Part {
    /// Its share of the cell, 0 to 1.
    pub(super) share: f32,
    /// The place on it that lies nearest the middle of the cell.
    pub(super) at: Option<Place>,
}

/// What the fault takes of each cell, from its share of each pixel.
pub(super) fn parts(grid: Grid, mask: &[f32]) -> Vec<Part> {
    let middles: Vec<Place> = Cell::all().map(Cell::middle).collect();
    let mut sums = vec![(0.0_f32, 0.0_f32, None::<(f32, Place)>); middles.len()];
    for (pixel, share) in mask.iter().enumerate() {
        let (column, row) = (pixel % grid.columns, pixel / grid.columns);
        let cell = row * usize::from(ROWS) / grid.rows * usize::from(COLUMNS)
            + column * usize::from(COLUMNS) / grid.columns;
        let (Some((sum, count, nearest)), Some(middle)) = (sums.get_mut(cell), middles.get(cell)) else {
            continue;
        };
        *sum += share;
        *count += 1.0;
        if *share > Panel::TOUCHED {
            let (x, y) = grid.middle(column, row);
            let off = (x - middle.x) * (x - middle.x) + (y - middle.y) * (y - middle.y);
            if nearest.is_none_or(|(least, _)| off < least) {
                *nearest = Some((off, held(Place { x, y })));
            }
        }
    }
    let part = |(sum, count, nearest): (f32, f32, Option<(f32, Place)>)| Part {
        share: sum / count.max(1.0),
        at: nearest.map(|(_, place)| place),
    };
    sums.into_iter().map(part).collect()
}
