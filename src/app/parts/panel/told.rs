//! What a panel that is drawn tells the bench: where its fault lies, and where the marks of tests do.

use super::place::{Cell, MIDDLE, Part, Place, parts};
use crate::picture::{Outline, Panel};

#[derive(Debug, Clone, PartialEq)]
pub(super) struct Told {
    /// What the fault takes of each cell.
    parts: Vec<Part>,
    /// The place of the fault that lies nearest the middle.
    pub(super) nearest: Option<Place>,
    /// The middle of the mark that a test left, or of the place that it tried.
    pub(super) mark: Option<Place>,
    /// The fault takes most of the face: the rest is hatched, where a line is drawn.
    pub(super) hatched: bool,
}

impl Told {
    pub(super) fn of(panel: &Panel, outline: Option<&Outline>) -> Self {
        let place = |(x, y)| Place { x, y };
        Self {
            parts: parts(panel.grid(), panel.mask()),
            nearest: panel.fault_nearest(MIDDLE.x, MIDDLE.y).map(place),
            mark: panel.mark().map(place),
            hatched: outline.is_some_and(Outline::is_hatched),
        }
    }

    /// What the fault takes of a cell.
    pub(super) fn part(&self, cell: Cell) -> Part {
        self.parts.get(cell.number()).copied().unwrap_or_default()
    }
}
