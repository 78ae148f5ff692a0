//! A box with a lid that stands a little over its walls, seen from the front and from above: the lid runs away from the eye.

use super::super::part::{Grain, Part, PartKind};
use super::super::path::{Path, Pen, Point};
use super::Side;

const SIZE: Point = (330.0, 272.0);
const AXIS: f32 = 165.0;
/// Where the lid begins, far from the eye, and where it ends over the wall; half of its width there.
const FAR: (f32, f32) = (12.0, 130.0);
const NEAR: (f32, f32) = (110.0, 155.0);
/// How far the corners of the lid are rounded.
const ROUND: f32 = 8.0;
/// Half of the wall's width above and below, and where it ends.
const WALL: (f32, f32) = (150.0, 148.0);
const FOOT: f32 = 262.0;
/// The bottom, seen from below.
const BOTTOM: (Point, Point) = ((16.0, 28.0), (314.0, 244.0));
const BINDING: f32 = 4.0;

pub(super) fn seen(side: Side) -> Option<(Point, Vec<Part>)> {
    match side {
        Side::Front => {
            let lid = Part::new(PartKind::Top, vec![lid()], Grain::Across).bound(lid(), BINDING);
            Some((SIZE, vec![lid, Part::new(PartKind::Sides, vec![wall()], Grain::Across).bowed(0.0)]))
        }
        Side::Back => {
            let ((left, top), (right, bottom)) = BOTTOM;
            let bottom = Path::through(vec![(left, top), (right, top), (right, bottom), (left, bottom)]);
            Some((SIZE, vec![Part::new(PartKind::Back, vec![bottom], Grain::Across).bowed(0.0)]))
        }
        Side::Edge => None,
    }
}

fn lid() -> Path {
    let ((far, narrow), (near, wide)) = (FAR, NEAR);
    let slant = (wide - narrow) / (near - far);
    Pen::at((AXIS, far))
        .line((AXIS + narrow - ROUND, far))
        .curve((AXIS + narrow, far), (AXIS + narrow, far), (AXIS + narrow + slant * ROUND, far + ROUND))
        .line((AXIS + wide - slant * ROUND, near - ROUND))
        .curve((AXIS + wide, near), (AXIS + wide, near), (AXIS + wide - 0.5 * ROUND, near))
        .line((AXIS, near))
        .both_sides(AXIS)
}

fn wall() -> Path {
    Pen::at((AXIS, NEAR.0))
        .line((AXIS + WALL.0, NEAR.0))
        .line((AXIS + WALL.1, FOOT))
        .line((AXIS, FOOT))
        .both_sides(AXIS)
}
