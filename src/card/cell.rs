//! A place on a printed panel: the cell of a grid over it, by column and row.

use super::{Card, Place, scene};
use crate::content::Content;

/// Side of a cell, mm of the panel. Our own choice: on a picture 80 mm wide it is nearly 7 mm, as large as a cross made by
/// hand.
pub const CELL_MM: f32 = 10.0;
/// Columns, from A, and rows, from 1, of a panel.
pub const CELLS: (usize, usize) = (12, 9);
/// Millimetres between the places of a cell that are tried.
const TRIED_EACH: f32 = 2.0;

/// The place that a cell of a card's panel stands for, counted from 0: one on the fault where some of the cell is, so that
/// nobody is wrong who marked the fault; else its middle. `None` outside of the panel, or of a card without one.
#[must_use]
pub fn place_in(card: &Card, content: &Content, (column, row): (usize, usize)) -> Option<Place> {
    let (left, top) = (edge(column, CELLS.0)?, edge(row, CELLS.1)?);
    let recipe = scene::panels(card, content).into_iter().next()?;
    let middle = (left + CELL_MM / 2.0, top + CELL_MM / 2.0);
    let tried = tried((left, top)).collect::<Vec<_>>();
    let (x_mm, y_mm) = scene::on_fault(&recipe, &tried).first().copied().unwrap_or(middle);
    Some(Place { x_mm, y_mm })
}

/// The cells of a card's panel in which some of its fault is, row by row.
#[must_use]
pub fn cells_on_fault(card: &Card, content: &Content) -> Vec<(usize, usize)> {
    let Some(recipe) = scene::panels(card, content).into_iter().next() else { return Vec::new() };
    let cells = (0..CELLS.1).flat_map(|row| (0..CELLS.0).map(move |column| (column, row)));
    let corner = |(column, row)| edge(column, CELLS.0).zip(edge(row, CELLS.1));
    let all: Vec<_> = cells.clone().filter_map(corner).flat_map(tried).collect();
    let on = scene::on_fault(&recipe, &all);
    let in_cell = |at: f32, place: f32| (at..at + CELL_MM).contains(&place);
    let some = |cell: &(usize, usize)| {
        corner(*cell).is_some_and(|(left, top)| on.iter().any(|(x, y)| in_cell(left, *x) && in_cell(top, *y)))
    };
    cells.filter(some).collect()
}

/// The places that are tried of the cell with that corner.
fn tried((left, top): (f32, f32)) -> impl Iterator<Item = (f32, f32)> {
    let along =
        || (0..u16::MAX).map(|nth| (f32::from(nth) + 0.5) * TRIED_EACH).take_while(|at| *at < CELL_MM);
    along().flat_map(move |y| along().map(move |x| (left + x, top + y)))
}

/// Where a column or row begins, mm.
fn edge(at: usize, cells: usize) -> Option<f32> {
    let at = u16::try_from(at).ok().filter(|_| at < cells)?;
    Some(f32::from(at) * CELL_MM)
}
