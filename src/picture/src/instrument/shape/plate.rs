//! A sample board with rounded corners, and a place on it that stays bare.

use super::super::part::{Grain, Part, PartKind};
use super::super::path::{Path, Pen, Point};
use super::Side;

const SIZE: Point = (260.0, 320.0);
const LEFT: f32 = 10.0;
const TOP: f32 = 10.0;
/// How far its corners are rounded, and where the curve is drawn to.
const ROUND: f32 = 9.0;
const DRAWN: f32 = 4.0;
const BINDING: f32 = 4.0;
/// The middle line of what stays bare, and its width.
const SEAT: (Point, Point) = ((86.0, 262.0), (174.0, 262.0));
const SEAT_WIDTH: f32 = 26.0;

pub(super) fn seen(side: Side) -> Option<(Point, Vec<Part>)> {
    let part = Part::new(PartKind::Plate, vec![outline()], Grain::Up).bound(outline(), BINDING);
    match side {
        Side::Front => Some((SIZE, vec![part.with_seat(Path::strip(SEAT.0, SEAT.1, SEAT_WIDTH))])),
        Side::Back => Some((SIZE, vec![part])),
        Side::Edge => None,
    }
}

fn outline() -> Path {
    let (right, bottom) = (SIZE.0 - LEFT, SIZE.1 - TOP);
    let axis = 0.5 * SIZE.0;
    Pen::at((axis, TOP))
        .line((right - ROUND, TOP))
        .curve((right - DRAWN, TOP), (right, TOP + DRAWN), (right, TOP + ROUND))
        .line((right, bottom - ROUND))
        .curve((right, bottom - DRAWN), (right - DRAWN, bottom), (right - ROUND, bottom))
        .line((axis, bottom))
        .both_sides(axis)
}
