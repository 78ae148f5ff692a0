//! A pear with a neck: one swing from the neck to the tail on either side, without a waist.

use super::super::part::{Grain, Part, PartKind};
use super::super::path::{Path, Pen, Point};
use super::Side;

const SIZE: Point = (270.0, 544.0);
const AXIS: f32 = 135.0;
/// Where the head begins, where the nut, the body and its tail are, and where the fingerboard ends over the body.
const HEAD: f32 = 10.0;
const NUT: f32 = 74.0;
const JOINT: f32 = 192.0;
const TAIL: f32 = 534.0;
const BOARD_END: f32 = 252.0;
/// Half of the fingerboard's width at the nut and at its end.
const HALF: (f32, f32) = (17.0, 23.0);
/// How far the heel of the neck reaches over the back.
const HEEL: f32 = 22.0;
/// The widest place of the body.
const WIDEST: Point = (256.0, 428.0);
const HOLE: Point = (AXIS, 326.0);
const HOLE_RADIUS: f32 = 29.0;
/// The seat of the bridge.
const SEAT: (Point, Point) = ((AXIS - 50.0, 446.0), (AXIS + 50.0, 446.0));
const SEAT_WIDTH: f32 = 14.0;
const BINDING: f32 = 4.0;
/// How rounded a neck is against a flat face.
const NECK_BOW: f32 = 1.0;
/// Seen from the right.
const EDGE_WIDTH: f32 = 92.0;

pub(super) fn seen(side: Side) -> Option<(Point, Vec<Part>)> {
    let matched = Grain::Matched { axis: AXIS };
    match side {
        Side::Front => {
            let notched = Pen::at((AXIS, BOARD_END)).line((AXIS + HALF.1, BOARD_END)).line(at_joint());
            let top = Part::new(PartKind::Top, vec![pear(notched), Path::circle(HOLE, HOLE_RADIUS)], matched)
                .bound(outline(), BINDING)
                .with_rosette(HOLE, HOLE_RADIUS)
                .with_seat(Path::strip(SEAT.0, SEAT.1, SEAT_WIDTH));
            let board = Pen::at((AXIS, NUT))
                .line((AXIS + HALF.0, NUT))
                .line(at_joint())
                .line((AXIS + HALF.1, BOARD_END))
                .line((AXIS, BOARD_END))
                .both_sides(AXIS);
            let head = head(Pen::at((AXIS, HEAD))).line((AXIS, NUT)).both_sides(AXIS);
            Some((
                SIZE,
                vec![
                    top,
                    Part::new(PartKind::Fingerboard, vec![board], Grain::Up).with_frets(),
                    Part::new(PartKind::Neck, vec![head], Grain::Up),
                ],
            ))
        }
        Side::Back => {
            let (joint, foot) = (at_joint(), (AXIS, JOINT + HEEL));
            let (upper, lower) = ((joint.0, JOINT + 0.6 * HEEL), (AXIS + 0.5 * HALF.1, foot.1));
            let back = pear(Pen::at(foot).curve(lower, upper, joint));
            let neck = head(Pen::at((AXIS, HEAD))).line(joint).curve(upper, lower, foot).both_sides(AXIS);
            Some((
                SIZE,
                vec![
                    Part::new(PartKind::Back, vec![back], matched).bound(outline(), BINDING),
                    Part::new(PartKind::Neck, vec![neck], Grain::Up).bowed(NECK_BOW),
                ],
            ))
        }
        Side::Edge => {
            let rim = Pen::at((22.0, JOINT))
                .line((64.0, JOINT))
                .curve((72.0, 300.0), (80.0, 420.0), (80.0, TAIL - 10.0))
                .line((76.0, TAIL))
                .line((22.0, TAIL))
                .closed();
            let neck = Pen::at((24.0, HEAD))
                .line((40.0, HEAD + 8.0))
                .line((38.0, NUT))
                .curve((42.0, 130.0), (40.0, 160.0), (58.0, JOINT))
                .line((22.0, JOINT))
                .line((22.0, NUT))
                .closed();
            Some((
                (EDGE_WIDTH, SIZE.1),
                vec![
                    Part::new(PartKind::Sides, vec![rim], Grain::Up).bowed(0.0),
                    Part::new(PartKind::Neck, vec![neck], Grain::Up).bowed(NECK_BOW),
                ],
            ))
        }
    }
}

/// Where the edge of the fingerboard comes to the body, on the right.
fn at_joint() -> Point {
    let share = (JOINT - NUT) / (BOARD_END - NUT);
    (AXIS + HALF.0 + (HALF.1 - HALF.0) * share, JOINT)
}

fn outline() -> Path {
    pear(Pen::at((AXIS, JOINT)).line(at_joint()))
}

/// The body, right of the neck and down to the tail.
fn pear(pen: Pen) -> Path {
    pen.curve((AXIS + 28.0, 262.0), (WIDEST.0, 330.0), WIDEST)
        .curve((WIDEST.0, 494.0), (206.0, TAIL), (AXIS, TAIL))
        .both_sides(AXIS)
}

/// The head, right of its middle and down to the nut.
fn head(pen: Pen) -> Pen {
    pen.curve((AXIS + 12.0, HEAD), (AXIS + 26.0, HEAD + 4.0), (AXIS + 25.0, HEAD + 16.0)).curve(
        (AXIS + 24.0, HEAD + 34.0),
        (AXIS + HALF.0, NUT - 20.0),
        (AXIS + HALF.0, NUT),
    )
}
