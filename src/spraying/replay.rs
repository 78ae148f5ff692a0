//! A run played again in its own time, long rests cut short.

use super::point::{Path, Point};

/// A rest with the trigger let go is played no longer than this, s.
const REST_MOST: f64 = 1.0;

/// A run by the time in which it is played.
#[derive(Debug, Clone, PartialEq)]
pub struct Replay(Vec<(f64, Point)>);

impl Replay {
    /// The replay of a path.
    #[must_use]
    pub fn of(path: &Path) -> Self {
        let mut played: Vec<(f64, Point)> = Vec::with_capacity(path.points().len());
        for point in path.points() {
            let at = played.last().map_or(0.0, |(at, last)| {
                let took = point.t - last.t;
                at + if last.trigger > 0.0 { took } else { took.min(REST_MOST) }
            });
            played.push((at, *point));
        }
        Self(played)
    }

    /// How long it is played, s.
    #[must_use]
    pub fn lasts(&self) -> f64 {
        self.0.last().map_or(0.0, |(at, _)| *at)
    }

    /// The gun at a moment of it, s; at its end from then on.
    #[must_use]
    pub fn at(&self, moment: f64) -> Option<Point> {
        let next = self.0.partition_point(|(at, _)| *at <= moment);
        let (began, from) = self.0.get(next.saturating_sub(1)).copied()?;
        let Some((ends, to)) = self.0.get(next) else { return Some(from) };
        Some(from.towards(to, ((moment - began) / (ends - began)).clamp(0.0, 1.0)))
    }
}
