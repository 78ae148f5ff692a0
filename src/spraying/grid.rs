//! The grid that film is counted on, and the cells of it that are work.

use super::outline::Outline;

/// Square cells over a face and what lies beside it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grid {
    /// Left edge, mm.
    pub left: f64,
    /// Upper edge, mm.
    pub top: f64,
    /// Side of a cell, mm.
    pub cell: f64,
    /// Cells across.
    pub columns: usize,
    /// Cells down.
    pub rows: usize,
}

pub(super) const fn number(count: usize) -> f64 {
    count as f64
}

/// A whole number of cells, none for less than none.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "cut to a grid")]
pub(super) const fn cells(length: f64) -> usize {
    length.max(0.0) as usize
}

impl Grid {
    /// Cells across and down of the grid that screens use.
    pub const SCREEN: (usize, usize) = (320, 240);

    /// The finest grid of square cells, no more than so many across and down, that holds a face and so much on each side.
    #[must_use]
    pub fn over(outline: &Outline, beside: f64, (columns, rows): (usize, usize)) -> Self {
        let (least, most) = outline.bounds();
        let size = |from: f64, to: f64| to - from + 2.0 * beside;
        let (wide, high) = (size(least.0, most.0), size(least.1, most.1));
        let cell = (wide / number(columns.max(1))).max(high / number(rows.max(1)));
        let count = |length: f64| cells((length / cell).ceil()).max(1);
        let (columns, rows) = (count(wide).min(columns.max(1)), count(high).min(rows.max(1)));
        // What the last cells hold over is shared by both sides.
        let spare = |length: f64, count: usize| (number(count) * cell - length) / 2.0;
        Self {
            left: least.0 - beside - spare(wide, columns),
            top: least.1 - beside - spare(high, rows),
            cell,
            columns,
            rows,
        }
    }

    /// How many cells there are.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.columns * self.rows
    }

    /// The middle of the n-th cell, row by row, mm.
    #[must_use]
    pub const fn middle(&self, cell: usize) -> (f64, f64) {
        (self.across(cell % self.columns), self.down(cell / self.columns))
    }

    /// The middle of a column, mm.
    #[must_use]
    pub const fn across(&self, column: usize) -> f64 {
        self.left + (number(column) + 0.5) * self.cell
    }

    /// The middle of a row, mm.
    #[must_use]
    pub const fn down(&self, row: usize) -> f64 {
        self.top + (number(row) + 0.5) * self.cell
    }

    /// The columns whose middles lie between two places, mm.
    pub(super) fn columns_in(&self, from: f64, to: f64) -> core::ops::Range<usize> {
        span(self.left, self.cell, self.columns, from, to)
    }

    /// The rows whose middles lie between two places, mm.
    pub(super) fn rows_in(&self, from: f64, to: f64) -> core::ops::Range<usize> {
        span(self.top, self.cell, self.rows, from, to)
    }

    /// Columns and rows of the cells within a distance of a place to all sides, mm.
    #[must_use]
    pub fn around(
        &self,
        (x, y): (f64, f64),
        reach: f64,
    ) -> (core::ops::Range<usize>, core::ops::Range<usize>) {
        (self.columns_in(x - reach, x + reach), self.rows_in(y - reach, y + reach))
    }

    /// Area of a cell, mm².
    #[must_use]
    pub const fn area(&self) -> f64 {
        self.cell * self.cell
    }

    /// Which cells are work: those whose middle lies within the outline.
    #[must_use]
    pub fn work(&self, outline: &Outline) -> Vec<bool> {
        let mut work = Vec::with_capacity(self.count());
        for row in 0..self.rows {
            let crossings: Vec<f64> = outline.crossings(self.down(row)).collect();
            work.extend((0..self.columns).map(|column| {
                let x = self.across(column);
                crossings.iter().filter(|crossing| x < **crossing).count() % 2 == 1
            }));
        }
        work
    }
}

fn span(first: f64, cell: f64, count: usize, from: f64, to: f64) -> core::ops::Range<usize> {
    let begin = cells(((from - first) / cell - 0.5).ceil()).min(count);
    let end = cells(((to - first) / cell + 0.5).floor()).min(count);
    begin..end.max(begin)
}
