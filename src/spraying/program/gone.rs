//! The way of a gun along passes: with a run-up, the trigger pulled and let go, the fan square to the line.

use super::Passes;
use crate::quantity::MM_A_METRE;
use crate::spraying::outline::{Place, sides};
use crate::spraying::point::Point;

/// Speed at which the gun is carried from pass to pass with the trigger let go, mm/s (an assumption, no source).
const CARRIED: f64 = 600.0;
/// The gun begins to move so far before the trigger is pulled, and moves on so far after it is let go, mm: on the move
/// when it opens, as handbooks ask (a public finishing manual, A-8.3 d).
const RUN_UP: f64 = 30.0;
/// The fan turns within so much before and behind a corner, mm (an assumption, no source).
const BEND: f64 = 20.0;
/// The fan lies square to the line.
const SQUARE: f64 = 90.0;
/// A spot turned half round is the same.
const HALF_TURN: f64 = 180.0;

/// A line moved to its right, seen from its first place to its last.
pub(super) fn beside(line: &[Place], right: f64) -> Vec<Place> {
    let (Some(from), Some(to)) = (line.first(), line.last()) else { return Vec::new() };
    let (dx, dy) = direction(*from, *to);
    line.iter().map(|(x, y)| (x - dy * right, y + dx * right)).collect()
}

/// From a place towards another, with a length of 1; to the right where they are the same.
fn direction(from: Place, to: Place) -> Place {
    let length = libm::hypot(to.0 - from.0, to.1 - from.1);
    if length > 0.0 { ((to.0 - from.0) / length, (to.1 - from.1) / length) } else { (1.0, 0.0) }
}

/// The way of a gun so far.
#[derive(Default)]
pub(super) struct Gone {
    pub(super) points: Vec<Point>,
    /// Waited before the first pass, s.
    waited: f64,
}

impl Gone {
    pub(super) fn wait(&mut self, time: f64) {
        match self.points.last().copied() {
            Some(last) if time > 0.0 => self.points.push(Point { t: last.t + time, ..last }),
            Some(_) => {}
            None => self.waited += time,
        }
    }

    pub(super) fn pass(&mut self, line: &[Place], set: &Passes) {
        let speed = set.speed * MM_A_METRE;
        let lengths: Vec<f64> = sides(line).collect();
        let whole: f64 = lengths.iter().sum();
        // Where something happens, in mm along the line from its beginning.
        let mut stops = vec![-set.lead - RUN_UP, -set.lead, whole + set.lag, whole + set.lag + RUN_UP];
        let mut along = 0.0;
        for length in &lengths {
            // The fan turns at a corner, and not all along the sides that meet there.
            if *length > 2.0 * BEND {
                stops.extend([along + BEND, along + length - BEND]);
            }
            along += length;
            stops.push(along);
        }
        stops.push(0.0);
        let (open, close) = (-set.lead, (whole + set.lag).max(-set.lead));
        let (first, last) = (open - RUN_UP, close + RUN_UP);
        stops.retain(|stop| (first..=last).contains(stop));
        stops.sort_by(f64::total_cmp);
        stops.dedup();
        let mut begun = None;
        for stop in stops {
            let (x, y, turn) = at(line, &lengths, stop);
            let trigger = if (open..close).contains(&stop) { 1.0 } else { 0.0 };
            let start = match begun {
                Some(start) => start,
                None => self.carried((x, y)),
            };
            let fan = self.nearest(turn + SQUARE, begun.is_some());
            begun = Some(start);
            let t = start + (stop - first) / speed;
            if self.points.is_empty() && self.waited > 0.0 {
                self.points.push(Point {
                    t: 0.0,
                    x,
                    y,
                    distance: set.distance,
                    tilt: 0.0,
                    fan,
                    trigger: 0.0,
                    wide: set.fan,
                });
            }
            let (distance, wide) = (set.distance, set.fan);
            self.points.push(Point { t, x, y, distance, tilt: 0.0, fan, trigger, wide });
        }
    }

    /// The moment at which the gun, carried on from its last point, is at a place.
    fn carried(&self, (x, y): Place) -> f64 {
        self.points.last().map_or(self.waited, |last| last.t + libm::hypot(x - last.x, y - last.y) / CARRIED)
    }

    /// The angle of the fan, nearest to that of the last point of the same pass; at the beginning of one the least.
    fn nearest(&self, angle: f64, same: bool) -> f64 {
        let last = self.points.last().filter(|_| same).map_or(0.0, |last| last.fan);
        angle - HALF_TURN * libm::round((angle - last) / HALF_TURN)
    }
}

/// The place so far along a line, straight on before its beginning and behind its end, and the direction there, degrees.
/// At a corner the direction is half way between both sides.
fn at(line: &[Place], lengths: &[f64], along: f64) -> (f64, f64, f64) {
    let mut begins = 0.0;
    let last = lengths.len().saturating_sub(1);
    for (nth, (length, (from, to))) in lengths.iter().zip(line.iter().zip(line.iter().skip(1))).enumerate() {
        let ends = begins + length;
        if along <= ends || nth == last {
            let (dx, dy) = direction(*from, *to);
            let far = along - begins;
            let corner = line.get(nth + 2).filter(|_| along == ends);
            let (tx, ty) = corner.map_or((dx, dy), |next| {
                let (nx, ny) = direction(*to, *next);
                (dx + nx, dy + ny)
            });
            return (from.0 + dx * far, from.1 + dy * far, libm::atan2(ty, tx).to_degrees());
        }
        begins = ends;
    }
    (0.0, 0.0, 0.0)
}
