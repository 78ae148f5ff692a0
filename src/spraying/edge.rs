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

/// A spike moves along its middle, and the sharper it is the farther: it counts as no sharper than this, 1 plus the cosine of
/// the angle that the line turns by.
const SHARPEST: f64 = 0.1;

/// The edge on a side from the bottom to the top, moved inwards by so many mm (below 0: outwards).
#[must_use]
pub fn along(outline: &Outline, inward: f64, side: Side) -> Vec<Place> {
    let places = moved(outline.places(), inward);
    let cuts: Vec<(usize, Place)> =
        (0..places.len()).filter_map(|nth| Some((nth, on_axis(&places, nth)?))).collect();
    let height = |(_, (_, y)): &&(usize, Place)| *y;
    let (Some((from, bottom)), Some((to, top))) = (
        cuts.iter().max_by(|one, other| height(one).total_cmp(&height(other))),
        cuts.iter().min_by(|one, other| height(one).total_cmp(&height(other))),
    ) else {
        return Vec::new();
    };
    // Outlines run down the right side first. A stretch lies between the place of its number and the next.
    let count = places.len();
    let between =
        |from: usize, to: usize| (1..=(to + count - from) % count).map(move |step| (from + step) % count);
    let half: Vec<usize> = match side {
        Side::Left => between(*from, *to).collect(),
        Side::Right => between(*to, *from).collect::<Vec<_>>().into_iter().rev().collect(),
    };
    let mut line = vec![*bottom];
    line.extend(half.into_iter().filter_map(|nth| places.get(nth)));
    line.push(*top);
    line.dedup();
    line
}

/// Where the stretch after a place of a closed line crosses the axis.
fn on_axis(places: &[Place], nth: usize) -> Option<Place> {
    let ((ax, ay), (bx, by)) = (*places.get(nth)?, *places.get((nth + 1) % places.len())?);
    ((ax < 0.0) != (bx < 0.0)).then(|| (0.0, ay + ax / (ax - bx) * (by - ay)))
}

/// A closed line moved inwards: each stretch square to itself, each place to where its two stretches meet then.
fn moved(places: &[Place], inward: f64) -> Vec<Place> {
    let count = places.len();
    // To the right of a line that runs to the right side first: downwards lies inside.
    let square = |(from, to): (Place, Place)| {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = libm::hypot(dx, dy).max(f64::MIN_POSITIVE);
        (-dy / length, dx / length)
    };
    let next = |nth: usize| (nth + 1) % count;
    (0..count)
        .filter_map(|nth| {
            let (before, at, after) =
                (*places.get((nth + count - 1) % count)?, *places.get(nth)?, *places.get(next(nth))?);
            let (one, other) = (square((before, at)), square((at, after)));
            let far = inward / (1.0 + one.0 * other.0 + one.1 * other.1).max(SHARPEST);
            Some((at.0 + (one.0 + other.0) * far, at.1 + (one.1 + other.1) * far))
        })
        .collect()
}
