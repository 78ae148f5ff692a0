//! Programmed passes: lines with distance, speed, overlap and trigger told, made into a path like one of a hand.

mod gone;

use super::outline::Place;
use super::point::{FAN_SHARE, NoPath, Path, Point};
use super::setup::Setup;
use gone::{Gone, beside};

/// A set of passes beside each other. Each goes back along the one before.
#[derive(Debug, Clone, PartialEq)]
pub struct Passes {
    /// The first pass: two places or more, mm.
    pub line: Vec<Place>,
    /// How far the set reaches to the right of the first pass, seen along it, mm; 0 for one pass.
    pub wide: f64,
    /// Distance of the gun, mm.
    pub distance: f64,
    /// Speed of the gun, m/s.
    pub speed: f64,
    /// Overlap of a pass with the one before, of the full width, at least: passes share the width of the set evenly.
    pub overlap: f64,
    /// How far before the beginning of a pass the trigger is pulled, mm; below 0: after it.
    pub lead: f64,
    /// How far behind its end the trigger is let go, mm; below 0: before it.
    pub lag: f64,
    /// Time that is waited before the set, s.
    pub wait: f64,
    /// How wide the fan is set, over how wide the task sets it.
    pub fan: f64,
}

/// The names of a set's numbers in files, with units and what is allowed.
pub const LIMITS: [(&str, f64, f64); 8] = [
    ("wide_mm", 0.0, Point::PLACE_MOST),
    ("distance_mm", Point::DISTANCE.0, Point::DISTANCE.1),
    ("speed_m_s", 0.02, 3.0),
    ("overlap", 0.0, 0.95),
    ("lead_mm", -200.0, 500.0),
    ("lag_mm", -200.0, 500.0),
    ("wait_s", 0.0, 1_800.0),
    (FAN_SHARE, Point::WIDE.0, Point::WIDE.1),
];

/// The path of a gun that works sets of passes one after another.
///
/// # Errors
/// [`NoPath`] where it takes longer, or goes farther, than a path may.
pub fn path(sets: &[Passes], setup: &Setup) -> Result<Path, NoPath> {
    let mut run = Gone::default();
    for set in sets {
        run.wait(set.wait);
        let (count, pitch) = set.shared(setup);
        let mut nth = 0.0;
        let mut back = false;
        while nth <= count && run.points.len() <= Point::COUNT_MOST {
            let mut line = beside(&set.line, nth * pitch);
            if back {
                line.reverse();
            }
            run.pass(&line, set);
            nth += 1.0;
            back = !back;
        }
    }
    Path::new(run.points)
}

impl Passes {
    /// How many passes follow the first, and how far each lies from the one before, mm: they share the width evenly, so that
    /// none lies closer than the others.
    fn shared(&self, setup: &Setup) -> (f64, f64) {
        let pitch = self.full(setup) * (1.0 - self.overlap);
        let count = (self.wide / pitch - crate::quantity::DUST).ceil().max(0.0);
        (count, self.wide / count.max(1.0))
    }

    /// The full width of its fan, mm.
    fn full(&self, setup: &Setup) -> f64 {
        2.0 * setup.opened(self.distance, 0.0, self.fan).half_fan
    }

    /// How many passes the set has, and the overlap with which they lie, of the full width; none for a single pass.
    #[must_use]
    pub fn lie(&self, setup: &Setup) -> Option<(f64, f64)> {
        let (count, pitch) = self.shared(setup);
        (count > 0.0).then(|| (count + 1.0, 1.0 - pitch / self.full(setup)))
    }

    /// Its numbers in the order of [`LIMITS`].
    #[must_use]
    pub const fn numbers(&self) -> [f64; 8] {
        [self.wide, self.distance, self.speed, self.overlap, self.lead, self.lag, self.wait, self.fan]
    }

    /// The set along a line with those numbers, in the order of [`LIMITS`].
    #[must_use]
    pub const fn of(line: Vec<Place>, numbers: [f64; 8]) -> Self {
        let [wide, distance, speed, overlap, lead, lag, wait, fan] = numbers;
        Self { line, wide, distance, speed, overlap, lead, lag, wait, fan }
    }
}
