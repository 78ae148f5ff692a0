//! Strokes: a path taken apart where the trigger is let go and where the gun turns back, and how each was made.

use super::outline::Outline;
use super::point::{Path, Point};
use super::setup::Setup;
use crate::quantity::MM_A_METRE;

/// A gun that came no farther than this has no direction yet, mm.
const STIRS: f64 = 5.0;
/// The direction of a stroke is that of about its last stretch of this length, mm: shorter than a bow that a hand draws along
/// an edge, longer than the bow in which it turns back (an assumption, no source).
const STRETCH: f64 = 60.0;
/// A gun slower than this with the trigger pulled stands still, mm/s: a tenth of a slow hand (1 ft/s by a refinishing
/// textbook, 2022, p. 687).
const STANDS: f64 = 30.0;
/// Two strokes whose directions differ by no more than this lie beside each other, degrees.
const BESIDE: f64 = 20.0;
/// A stroke is straight when it gets so much of its length away.
const STRAIGHT: f64 = 0.95;

/// One stroke of the gun with the trigger pulled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stroke {
    /// Where it begins.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
    /// Its length, mm.
    pub length: f64,
    /// Its mean speed, m/s.
    pub speed: f64,
    /// Standard deviation of the speed over its mean, each time as long as it lasted.
    pub unsteady: f64,
    /// Mean distance of the gun, mm.
    pub distance: f64,
    /// Nearest and farthest it was, mm.
    pub distances: (f64, f64),
    /// Mean width of the fan, over that of the task.
    pub wide: f64,
    /// Greatest tilt, degrees.
    pub tilt: f64,
    /// How long it stood still, s.
    pub stood: f64,
    /// How far before the work it began, mm; below 0: so far inside. `None` where it passes by.
    pub lead: Option<f64>,
    /// How far behind the work it ended, mm; below 0: so far inside.
    pub lag: Option<f64>,
    /// Overlap with the last stroke beside it, of the full width, 0 over a gap; `None` where none lies beside it, or where
    /// it goes back to what was sprayed before.
    pub overlap: Option<f64>,
}

/// The strokes of a path in the order of time.
#[must_use]
pub fn strokes(path: &Path, setup: &Setup) -> Vec<Stroke> {
    let mut all: Vec<Stroke> = Vec::new();
    for run in runs(path) {
        if let Some(mut stroke) = stroke(&run, &setup.outline) {
            // A short way from one pass to the next with the trigger pulled may lie between them.
            let next_to = all.iter().rev().take(2).find_map(|last| overlap(last, &stroke, setup));
            let sprayed = |one: &Stroke| overlap(one, &stroke, setup).is_some_and(|share| share > 0.0);
            stroke.overlap = next_to.filter(|share| *share > 0.0 || !all.iter().any(sprayed));
            all.push(stroke);
        }
    }
    all
}

/// The points of each stroke, the last of which is where it ends.
fn runs(path: &Path) -> Vec<Vec<Point>> {
    let mut all = Vec::new();
    let mut run: Vec<Point> = Vec::new();
    // Where the direction was last taken, and the direction.
    let mut heading: Option<(f64, f64)> = None;
    let mut turned_at = 0;
    for point in path.points() {
        if !run.is_empty() {
            run.push(*point);
            let anchor = run.get(turned_at).copied().unwrap_or(*point);
            if anchor.apart(point) >= STIRS {
                let long = anchor.apart(point);
                let now = ((point.x - anchor.x) / long, (point.y - anchor.y) / long);
                heading = Some(match heading {
                    Some((x, y)) if x * now.0 + y * now.1 < 0.0 => {
                        // The gun turned back: the new stroke begins there.
                        let rest = run.split_off(turned_at);
                        run.extend(rest.first());
                        all.push(core::mem::replace(&mut run, rest));
                        now
                    }
                    Some((x, y)) => {
                        let kept = libm::exp(-long / STRETCH);
                        (x * kept + now.0 * (1.0 - kept), y * kept + now.1 * (1.0 - kept))
                    }
                    None => now,
                });
                turned_at = run.len() - 1;
            }
        }
        if point.trigger > 0.0 && run.is_empty() {
            (run, heading, turned_at) = (vec![*point], None, 0);
        } else if point.trigger == 0.0 && !run.is_empty() {
            all.push(core::mem::take(&mut run));
        }
    }
    if !run.is_empty() {
        all.push(run);
    }
    all
}

fn stroke(run: &[Point], outline: &Outline) -> Option<Stroke> {
    let (from, to) = (*run.first()?, *run.last()?);
    let time = to.t - from.t;
    let pairs = || run.iter().zip(run.iter().skip(1));
    let length: f64 = pairs().map(|(a, b)| a.apart(b)).sum();
    if time <= 0.0 {
        return None;
    }
    let mean = length / time;
    let over = |weigh: &dyn Fn(&Point, &Point, f64) -> f64| {
        pairs().map(|(a, b)| weigh(a, b, b.t - a.t)).sum::<f64>()
    };
    let pace = |a: &Point, b: &Point, time: f64| if time > 0.0 { a.apart(b) / time } else { mean };
    let spread = over(&|a, b, time| time * (pace(a, b, time) - mean) * (pace(a, b, time) - mean)) / time;
    let stood = over(&|a, b, time| if pace(a, b, time) < STANDS { time } else { 0.0 });
    let distance = over(&|a, b, time| time * f64::midpoint(a.distance, b.distance)) / time;
    let wide = over(&|a, b, time| time * f64::midpoint(a.wide, b.wide)) / time;
    let least = run.iter().map(|point| point.distance).fold(f64::INFINITY, f64::min);
    let most = run.iter().map(|point| point.distance).fold(0.0, f64::max);
    let back: Vec<Point> = run.iter().rev().copied().collect();
    Some(Stroke {
        from,
        to,
        length,
        speed: mean / MM_A_METRE,
        unsteady: if mean > 0.0 { spread.sqrt() / mean } else { 0.0 },
        distance,
        distances: (least, most),
        wide,
        tilt: run.iter().map(|point| point.tilt.abs()).fold(0.0, f64::max),
        stood,
        lead: lead(run, outline),
        lag: lead(&back, outline),
        overlap: None,
    })
}

/// How far the gun went before it first aimed at the work; where it began inside, how far inside, below 0.
fn lead(run: &[Point], outline: &Outline) -> Option<f64> {
    let first = run.first()?;
    if outline.contains((first.x, first.y)) {
        return Some(-outline.distance((first.x, first.y)));
    }
    let mut gone = 0.0;
    for (a, b) in run.iter().zip(run.iter().skip(1)) {
        let (long, steps) = (a.apart(b), (a.apart(b) / STIRS).ceil().max(1.0));
        let mut step = 1.0;
        while step <= steps {
            let on = a.towards(b, step / steps);
            if outline.contains((on.x, on.y)) {
                return Some(gone + long * step / steps - outline.distance((on.x, on.y)).min(long / steps));
            }
            step += 1.0;
        }
        gone += long;
    }
    None
}

/// Overlap of two straight strokes side by side: what the pitch between them leaves of the full width, 0 over a gap.
fn overlap(one: &Stroke, other: &Stroke, setup: &Setup) -> Option<f64> {
    let way = |stroke: &Stroke| (stroke.to.x - stroke.from.x, stroke.to.y - stroke.from.y);
    let ((ax, ay), (bx, by)) = (way(one), way(other));
    let (long, next) = (libm::hypot(ax, ay), libm::hypot(bx, by));
    if long < STRAIGHT * one.length || next < STRAIGHT * other.length || long <= 0.0 || next <= 0.0 {
        return None;
    }
    let beside = ((ax * bx + ay * by) / (long * next)).abs() >= libm::cos(BESIDE.to_radians());
    let middle = |stroke: &Stroke| stroke.from.towards(&stroke.to, 0.5);
    let (from, to) = (middle(one), middle(other));
    let pitch = ((to.x - from.x) * ay - (to.y - from.y) * ax).abs() / long;
    let mean = |of: fn(&Stroke) -> f64| f64::midpoint(of(one), of(other));
    let wide = 2.0 * setup.opened(mean(|stroke| stroke.distance), 0.0, mean(|stroke| stroke.wide)).half_fan;
    beside.then(|| (1.0 - pitch / wide).max(0.0))
}

impl Stroke {
    /// Its direction, degrees from the x axis, 0 to under 180: to and fro are the same.
    #[must_use]
    pub fn direction(&self) -> f64 {
        /// A stroke turned half round is the same.
        const HALF_TURN: f64 = 180.0;
        let angle = libm::atan2(self.to.y - self.from.y, self.to.x - self.from.x).to_degrees();
        if angle < 0.0 {
            angle + HALF_TURN
        } else if angle >= HALF_TURN {
            angle - HALF_TURN
        } else {
            angle
        }
    }
}
