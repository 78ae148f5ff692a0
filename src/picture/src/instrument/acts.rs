//! Where an operation acts on a part: dotted lines.

use super::field::Field;
use super::part::{Part, Rosette};
use super::path::Path;
use crate::pause::at_once;

/// How far inside a face the dotted line runs that shows it, mm.
const DOTTED: f32 = 5.0;
/// A dotted line keeps so far from the lines of its part, mm.
const CLEAR_OF_LINES: f32 = 1.5;

/// What an operation acts on, for the dotted line that shows it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Acts {
    /// The whole face.
    Face,
    /// The edge, inward so many mm.
    Edge(f32),
    /// The binding.
    Binding,
    /// What stays bare for glue.
    Seat,
}

impl Part {
    /// The lines along which an operation acts, to be drawn dotted; none where the part has no such place.
    #[must_use]
    pub fn acts(&self, acts: Acts) -> Vec<Path> {
        let field = |paths: &[Path]| at_once(Field::of(paths));
        // A line that an edge is worked to keeps to the part, and does not go round its hole.
        let from_edge = |far: f32| {
            let own = field(&self.paths);
            let mut lines = field(&self.edge).less(far, |at| own.at(at) - CLEAR_OF_LINES).contours(0.0);
            lines.retain(|line| !self.rosette.is_some_and(|rosette| rosette.rings(line)));
            lines
        };
        match acts {
            Acts::Face => field(&self.paths).contours(DOTTED),
            Acts::Edge(far) => from_edge(far),
            Acts::Binding => self.binding.map_or_else(Vec::new, from_edge),
            Acts::Seat => self.seat.iter().cloned().collect(),
        }
    }
}

impl Rosette {
    /// Whether a line goes round it and little else.
    fn rings(&self, line: &Path) -> bool {
        const LITTLE: f32 = 2.0;
        let ((left, _), (right, _)) = line.bounds();
        line.contains(self.middle) && right - left < 2.0 * LITTLE * self.radius
    }
}
