//! The outline of the work: a closed line in mm.

use crate::content::WorkOutline;

/// A place, mm to the right of the axis and downwards from the top.
pub type Place = (f64, f64);

/// The lengths of the sides of a line from place to place, mm.
pub(super) fn sides(line: &[Place]) -> impl Iterator<Item = f64> {
    line.iter().zip(line.iter().skip(1)).map(|(from, to)| libm::hypot(to.0 - from.0, to.1 - from.1))
}

/// A closed line through places.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline(Vec<Place>);

/// Places that a curve is drawn by from one of its points to the next.
const STEPS: u32 = 8;

impl Outline {
    /// The line that content tells.
    #[must_use]
    pub fn of(told: &WorkOutline) -> Self {
        let mut points: Vec<Place> = told.points_mm.iter().map(|[x, y]| (*x, *y)).collect();
        if told.mirrored {
            let back: Vec<Place> =
                points.iter().rev().filter(|(x, _)| *x != 0.0).map(|(x, y)| (-x, *y)).collect();
            points.extend(back);
        }
        Self(if told.curved { curved(&points) } else { points })
    }

    /// Its places, one after another along it; the last is joined to the first.
    #[must_use]
    pub fn places(&self) -> &[Place] {
        &self.0
    }

    /// Its least and its greatest coordinates.
    #[must_use]
    pub fn bounds(&self) -> (Place, Place) {
        let none = ((f64::INFINITY, f64::INFINITY), (f64::NEG_INFINITY, f64::NEG_INFINITY));
        self.0.iter().fold(none, |(least, most), (x, y)| {
            ((least.0.min(*x), least.1.min(*y)), (most.0.max(*x), most.1.max(*y)))
        })
    }

    /// Whether a place lies within it: a ray to the right crosses it an odd number of times.
    #[must_use]
    pub fn contains(&self, (x, y): Place) -> bool {
        self.crossings(y).filter(|crossing| x < *crossing).count() % 2 == 1
    }

    /// Where it crosses a level line, mm.
    pub fn crossings(&self, y: f64) -> impl Iterator<Item = f64> + '_ {
        self.sides()
            .filter(move |((_, ay), (_, by))| (*ay > y) != (*by > y))
            .map(move |((ax, ay), (bx, by))| ax + (y - ay) / (by - ay) * (bx - ax))
    }

    /// How far a place is from it, mm.
    #[must_use]
    pub fn distance(&self, at: Place) -> f64 {
        self.sides().map(|side| square_to(side, at)).fold(f64::INFINITY, f64::min).sqrt()
    }

    /// Area within it, mm² (the shoelace sum).
    #[must_use]
    pub fn area(&self) -> f64 {
        let twice: f64 = self.sides().map(|((ax, ay), (bx, by))| ax * by - bx * ay).sum();
        twice.abs() / 2.0
    }

    /// Its sides.
    pub fn sides(&self) -> impl Iterator<Item = (Place, Place)> + '_ {
        let next = self.0.iter().cycle().skip(1);
        self.0.iter().copied().zip(next.copied())
    }
}

/// Square of the distance from a side.
fn square_to(((ax, ay), (bx, by)): (Place, Place), (x, y): Place) -> f64 {
    let (dx, dy) = (bx - ax, by - ay);
    let long = dx * dx + dy * dy;
    let share = if long > 0.0 { (((x - ax) * dx + (y - ay) * dy) / long).clamp(0.0, 1.0) } else { 0.0 };
    let (u, v) = (x - ax - share * dx, y - ay - share * dy);
    u * u + v * v
}

/// A smooth closed line through points: between two of them a cubic whose slopes are those between their neighbours
/// (Catmull and Rom, 1974, uniform).
fn curved(points: &[Place]) -> Vec<Place> {
    let count = points.len();
    let at = |nth: usize| points.get(nth % count.max(1)).copied().unwrap_or_default();
    let mut line = Vec::new();
    for nth in 0..count {
        let (before, from, to, after) = (at(nth + count - 1), at(nth), at(nth + 1), at(nth + 2));
        for step in 0..STEPS {
            let t = f64::from(step) / f64::from(STEPS);
            let mix = |p0: f64, p1: f64, p2: f64, p3: f64| {
                let (slope, other) = ((p2 - p0) / 2.0, (p3 - p1) / 2.0);
                let (square, cube) = (t * t, t * t * t);
                (2.0 * cube - 3.0 * square + 1.0) * p1
                    + (cube - 2.0 * square + t) * slope
                    + (3.0 * square - 2.0 * cube) * p2
                    + (cube - square) * other
            };
            line.push((mix(before.0, from.0, to.0, after.0), mix(before.1, from.1, to.1, after.1)));
        }
    }
    line
}
