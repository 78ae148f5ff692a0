//! A frame: a body with a soundboard, from which two arms rise that carry a yoke.

use super::super::part::{Grain, Part, PartKind};
use super::super::path::{Path, Pen, Point};
use super::Side;

const SIZE: Point = (320.0, 444.0);
const AXIS: f32 = 160.0;
const TAIL: f32 = 434.0;
/// Where an arm stands on the body, at its inner and its outer side, and below the yoke.
const ROOT: (Point, Point) = ((222.0, 206.0), (262.0, 216.0));
const UNDER_YOKE: f32 = 72.0;
const HEAD: (f32, f32) = (256.0, 288.0);
const HOLE: Point = (AXIS, 308.0);
const HOLE_RADIUS: f32 = 23.0;
/// The seat of the bridge.
const SEAT: (Point, Point) = ((AXIS - 36.0, 382.0), (AXIS + 36.0, 382.0));
const SEAT_WIDTH: f32 = 13.0;
const BINDING: f32 = 4.0;
/// How rounded arms and yoke are against a flat face.
const BOW: f32 = 0.8;

pub(super) fn seen(side: Side) -> Option<(Point, Vec<Part>)> {
    let matched = Grain::Matched { axis: AXIS };
    let arms = vec![arm(), arm().mirrored(AXIS)];
    let frame = [
        Part::new(PartKind::Arms, arms, matched).bowed(BOW),
        Part::new(PartKind::Yoke, vec![yoke()], Grain::Across).bowed(BOW),
    ];
    let face = match side {
        Side::Front => Part::new(PartKind::Top, vec![body(), Path::circle(HOLE, HOLE_RADIUS)], matched)
            .bound(body(), BINDING)
            .with_rosette(HOLE, HOLE_RADIUS)
            .with_seat(Path::strip(SEAT.0, SEAT.1, SEAT_WIDTH)),
        Side::Back => Part::new(PartKind::Back, vec![body()], matched).bound(body(), BINDING),
        Side::Edge => return None,
    };
    Some((SIZE, core::iter::once(face).chain(frame).collect()))
}

fn body() -> Path {
    Pen::at((AXIS, 244.0))
        .curve((190.0, 242.0), (214.0, 228.0), ROOT.0)
        .line(ROOT.1)
        .curve((288.0, 262.0), (286.0, 330.0), (264.0, 370.0))
        .curve((242.0, 410.0), (202.0, TAIL), (AXIS, TAIL))
        .both_sides(AXIS)
}

/// The right arm.
fn arm() -> Path {
    Pen::at(ROOT.0)
        .line(ROOT.1)
        .curve((250.0, 182.0), (312.0, 150.0), (HEAD.1, UNDER_YOKE))
        .line((HEAD.0, UNDER_YOKE))
        .curve((268.0, 122.0), (236.0, 166.0), ROOT.0)
        .closed()
}

fn yoke() -> Path {
    Pen::at((AXIS, 44.0))
        .curve((210.0, 44.0), (258.0, 46.0), (284.0, 30.0))
        .curve((298.0, 20.0), (314.0, 38.0), (306.0, 54.0))
        .curve((302.0, 66.0), (298.0, UNDER_YOKE), (HEAD.1, UNDER_YOKE))
        .line((HEAD.0, UNDER_YOKE))
        .curve((230.0, UNDER_YOKE), (196.0, 68.0), (AXIS, 68.0))
        .both_sides(AXIS)
}
