//! What changes slowly along the grain is known at every mm of it and mixed between.

use super::{Cut, Place};
use crate::map::Grid;
use crate::number::{coordinate, mix, whole};
use core::ops::Range;

/// What is known of a place.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Slow {
    pub(crate) place: Place,
    pub(crate) streak: f32,
    pub(crate) drift: f32,
    pub(crate) ribbon: f32,
}

impl Slow {
    pub(crate) fn at(cut: &Cut, x: f32, y: f32) -> Self {
        let place = cut.place(x, y);
        Self { place, streak: cut.streak(x, y), drift: cut.drift(x, y), ribbon: cut.ribbon(&place) }
    }

    fn toward(&self, next: &Self, share: f32) -> Self {
        let (from, to) = (&self.place, &next.place);
        let between = |part: fn(&Place) -> f32| mix(part(from), part(to), share);
        Self {
            place: Place {
                along: between(|place| place.along),
                radius: between(|place| place.radius),
                round: between(|place| place.round),
                years: between(|place| place.years),
                crossing: between(|place| place.crossing),
                pace: between(|place| place.pace),
                pace_round: between(|place| place.pace_round),
            },
            streak: mix(self.streak, next.streak, share),
            drift: mix(self.drift, next.drift, share),
            ribbon: mix(self.ribbon, next.ribbon, share),
        }
    }
}

/// The same along one row of pixels.
pub(super) struct Row {
    first: f32,
    pairs: Vec<(Slow, Slow)>,
}

impl Row {
    pub(super) fn new(cut: &Cut, grid: Grid, row: usize, columns: &Range<usize>) -> Self {
        let ((left, y), (right, _)) = (grid.middle(columns.start, row), grid.middle(columns.end, row));
        let first = libm::floorf(left);
        let count = whole(right - first) + 2;
        let known: Vec<Slow> = (0..=count).map(|n| Slow::at(cut, first + coordinate(n), y)).collect();
        Self { first, pairs: known.iter().copied().zip(known.iter().copied().skip(1)).collect() }
    }

    /// At a place along it, mm.
    pub(super) fn at(&self, x: f32) -> Option<Slow> {
        let off = (x - self.first).max(0.0);
        let entry = whole(off);
        self.pairs.get(entry).map(|(from, to)| from.toward(to, off - coordinate(entry)))
    }
}
