//! The work turned on its stand by quarters, and where a place of it is seen then.

use crate::spraying::Grid;
use crate::spraying::grid::Window;
use stepboard_picture::Seen;

/// Quarters of a turn to the right.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(in crate::app) struct Turn(u8);

/// Degrees of a quarter.
const QUARTER: f64 = 90.0;
/// Quarters of a whole turn.
const WHOLE: u8 = 4;

impl Turn {
    /// A quarter on.
    pub(in crate::app) const fn on(self) -> Self {
        Self((self.0 + 1) % WHOLE)
    }

    /// Degrees by which a direction on the screen is more than on the work.
    pub(in crate::app) fn degrees(self) -> f64 {
        f64::from(self.0) * QUARTER
    }

    /// Columns and rows of a grid as it is seen.
    pub(super) const fn size(self, grid: Grid) -> (usize, usize) {
        if self.0.is_multiple_of(2) { (grid.columns, grid.rows) } else { (grid.rows, grid.columns) }
    }

    /// The same as numbers.
    pub(super) fn cells(self, grid: Grid) -> (f64, f64) {
        let (wide, high) = lengths(grid);
        let (wide, high) = (wide / grid.cell, high / grid.cell);
        if self.0.is_multiple_of(2) { (wide, high) } else { (high, wide) }
    }

    /// Where cells are seen, counted from the left and from above, and how one comes after another there.
    pub(super) fn window(self, grid: Grid, Window { columns, rows }: &Window) -> ((usize, usize), Seen) {
        let (last_column, last_row) = (columns.end.saturating_sub(1), rows.end.saturating_sub(1));
        let row = grid.columns.cast_signed();
        let (wide, high) = (columns.len(), rows.len());
        // The cell at the upper left as it is seen, and the steps to the right and down.
        let ((column, line), (right, below), (wide, high)) = match self.0 {
            0 => ((columns.start, rows.start), (1, row), (wide, high)),
            1 => ((columns.start, last_row), (-row, 1), (high, wide)),
            2 => ((last_column, last_row), (-1, -row), (wide, high)),
            _ => ((last_column, rows.start), (row, -1), (high, wide)),
        };
        let place = match self.0 {
            0 => (column, line),
            1 => (from_end(grid.rows, line), column),
            2 => (from_end(grid.columns, column), from_end(grid.rows, line)),
            _ => (line, from_end(grid.columns, column)),
        };
        (place, Seen { first: line * grid.columns + column, right, below, wide, high })
    }

    /// The place on the work, mm, that is seen at shares of width and height.
    pub(super) fn place(self, grid: Grid, (u, v): (f64, f64)) -> (f64, f64) {
        let (along, down) = match self.0 {
            0 => (u, v),
            1 => (v, 1.0 - u),
            2 => (1.0 - u, 1.0 - v),
            _ => (1.0 - v, u),
        };
        let (wide, high) = lengths(grid);
        (grid.left + along * wide, grid.top + down * high)
    }

    /// What an SVG shows a grid by, and what turns places of the work, mm, into it.
    pub(in crate::app) fn drawn(self, grid: Grid) -> (String, String) {
        let (wide, high) = lengths(grid);
        let (across, down) = if self.0.is_multiple_of(2) { (wide, high) } else { (high, wide) };
        let turned = match self.0 {
            0 => "matrix(1 0 0 1 0 0)".to_owned(),
            1 => format!("matrix(0 1 -1 0 {high:.2} 0)"),
            2 => format!("matrix(-1 0 0 -1 {wide:.2} {high:.2})"),
            _ => format!("matrix(0 -1 1 0 0 {wide:.2})"),
        };
        (
            format!("0 0 {across:.2} {down:.2}"),
            format!("{turned} translate({:.2} {:.2})", -grid.left, -grid.top),
        )
    }
}

/// A place counted from the other end.
const fn from_end(count: usize, at: usize) -> usize {
    count.saturating_sub(at + 1)
}

/// Width and height of a grid, mm.
fn lengths(grid: Grid) -> (f64, f64) {
    (grid.across(grid.columns) - grid.across(0), grid.down(grid.rows) - grid.down(0))
}
