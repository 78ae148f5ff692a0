//! The grid that film is counted on, and the cells of it that are work.

use super::outline::{Outline, Place};
use crate::quantity::DUST;
use core::ops::Range;

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

/// Sizes of cells that are tried, one cell across the face more each time.
const FITTED: usize = 8;

/// Cells that lie in some columns and some rows.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Window {
    /// The columns.
    pub columns: Range<usize>,
    /// The rows.
    pub rows: Range<usize>,
}

impl Window {
    /// The least one that holds both; one without cells holds nothing.
    #[must_use]
    pub fn with(&self, other: &Self) -> Self {
        if self.is_empty() {
            return other.clone();
        }
        if other.is_empty() {
            return self.clone();
        }
        let both =
            |one: &Range<usize>, other: &Range<usize>| one.start.min(other.start)..one.end.max(other.end);
        Self { columns: both(&self.columns, &other.columns), rows: both(&self.rows, &other.rows) }
    }

    /// The same and so many cells to all sides, as far as the grid goes.
    #[must_use]
    pub fn wider(&self, cells: usize, grid: Grid) -> Self {
        let more = |range: &Range<usize>, count: usize| {
            range.start.saturating_sub(cells)..(range.end + cells).min(count)
        };
        Self { columns: more(&self.columns, grid.columns), rows: more(&self.rows, grid.rows) }
    }

    /// Whether it has no cell.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.columns.is_empty() || self.rows.is_empty()
    }
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
    /// Cells of the grid that screens use: as many as 320 by 240, whatever the form of the work.
    pub const SCREEN: usize = 320 * 240;

    /// A grid of square cells that has so many of them at least over a face and so much on each side. The face begins and ends
    /// on its lines, or as near to them as cells of about that size come.
    #[must_use]
    pub fn over(outline: &Outline, beside: f64, least_count: usize) -> Self {
        let (least, most) = outline.bounds();
        let (wide, high) = (most.0 - least.0, most.1 - least.1);
        let area = (wide + 2.0 * beside) * (high + 2.0 * beside);
        let coarsest = (area / number(least_count.max(1))).sqrt();
        let cell = |more: usize| wide / ((wide / coarsest).ceil() + number(more)).max(1.0);
        let off = |cell: &f64| (high / cell - (high / cell).round()).abs();
        let fits = (0..FITTED).map(cell).min_by(|one, other| off(one).total_cmp(&off(other)));
        let cell = fits.unwrap_or(coarsest);
        let margin = (beside / cell - DUST).ceil().max(0.0);
        let count = |length: f64| cells((length / cell - DUST).ceil() + 2.0 * margin).max(1);
        Self {
            left: least.0 - margin * cell,
            top: least.1 - margin * cell,
            cell,
            columns: count(wide),
            rows: count(high),
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

    /// The cells whose middles lie within the rectangle round two places, wider by so much across and down, mm.
    #[must_use]
    pub fn around(&self, from: Place, to: Place, (across, down): (f64, f64)) -> Window {
        let reach = |from: f64, to: f64, reach: f64| (from.min(to) - reach, from.max(to) + reach);
        Window {
            columns: span(self.left, self.cell, self.columns, reach(from.0, to.0, across)),
            rows: span(self.top, self.cell, self.rows, reach(from.1, to.1, down)),
        }
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

fn span(first: f64, cell: f64, count: usize, (from, to): (f64, f64)) -> Range<usize> {
    let begin = cells(((from - first) / cell - 0.5).ceil()).min(count);
    let end = cells(((to - first) / cell + 0.5).floor()).min(count);
    begin..end.max(begin)
}
