//! The edge of the work as a line to spray along: from its axis at the bottom to its axis at the top, on either side.

use super::outline::{Outline, Place};
use crate::terms;

terms! {
    /// A side of the work, as it is seen with its top up.
    Side {
        /// The left one.
        Left = "side-left",
        /// The right one.
        Right = "side-right",
    }
}

/// The edge on a side from the bottom to the top, moved inwards by so many mm (below 0: outwards).
#[must_use]
pub fn along(outline: &Outline, inward: f64, side: Side) -> Vec<Place> {
    let places = outline.places();
    let (least, most) = outline.bounds();
    let middle = f64::midpoint(least.1, most.1);
    let (Some(bottom), Some(top)) = (nearest(places, |y| y > middle), nearest(places, |y| y < middle)) else {
        return Vec::new();
    };
    // Outlines run down the right side first.
    let way = match side {
        Side::Left => 1,
        Side::Right => -1,
    };
    let mut half = Vec::new();
    let mut nth = bottom;
    loop {
        half.extend(inside(places, nth, inward));
        if nth == top || half.len() > places.len() {
            return half;
        }
        nth = (nth + places.len()).wrapping_add_signed(way) % places.len();
    }
}

/// Which of the places at some heights is nearest to the axis.
fn nearest(places: &[Place], height: impl Fn(f64) -> bool) -> Option<usize> {
    let there = places.iter().enumerate().filter(|(_, (_, y))| height(*y));
    there.min_by(|(_, one), (_, other)| one.0.abs().total_cmp(&other.0.abs())).map(|(nth, _)| nth)
}

/// A place of a closed line moved square to it, inwards.
fn inside(places: &[Place], nth: usize, inward: f64) -> Option<Place> {
    let count = places.len();
    let (x, y) = *places.get(nth)?;
    let (before, after) = (*places.get((nth + count - 1) % count)?, *places.get((nth + 1) % count)?);
    let (dx, dy) = (after.0 - before.0, after.1 - before.1);
    let length = libm::hypot(dx, dy).max(f64::MIN_POSITIVE);
    // To the right of a line that runs to the right side first: downwards lies inside.
    Some((x - dy / length * inward, y + dx / length * inward))
}
