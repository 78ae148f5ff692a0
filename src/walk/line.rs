//! The ticket as it is written while a job is walked: a line for each operation that was done.

use crate::quantity::Micrometres;
use crate::rules::sequence::operation::Operation;

/// A line of the ticket: an operation that was done.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What was done.
    pub operation: Operation,
    /// To which parts, by place on the ticket.
    pub parts: Vec<usize>,
    /// The turn that wrote it.
    pub turn: usize,
    /// Begin, in hours after the first midnight.
    pub begun: f64,
    /// End.
    pub ended: f64,
    /// Wet film of its coat.
    pub wet: Option<Micrometres>,
}

impl Line {
    /// Whether it was done to a part.
    #[must_use]
    pub fn touches(&self, part: usize) -> bool {
        self.parts.contains(&part)
    }
}
