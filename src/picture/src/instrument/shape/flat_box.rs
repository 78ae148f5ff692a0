//! A flat box: straight on the left, where its fingerboard lies, swung on the right.

use super::super::part::{Grain, Part, PartKind};
use super::super::path::{Path, Pen, Point};
use super::Side;

const SIZE: Point = (300.0, 446.0);
const TOP: f32 = 14.0;
const LEFT: f32 = 16.0;
const BOTTOM: f32 = 432.0;
/// The fingerboard: left, right, and where it ends.
const BOARD: (f32, f32) = (36.0, 72.0);
const BOARD_END: f32 = 336.0;
/// Where the upper end stops and the swung side begins.
const SHORT: f32 = 124.0;
const HOLE: Point = (172.0, 300.0);
const HOLE_RADIUS: f32 = 26.0;
/// The seat of the bridge.
const SEAT: (Point, Point) = ((98.0, 388.0), (232.0, 372.0));
const SEAT_WIDTH: f32 = 13.0;
const BINDING: f32 = 4.0;
/// Seen from the right: how wide the view is, and from where to where the rim stands.
const EDGE_WIDTH: f32 = 74.0;
const RIM: (f32, f32) = (12.0, 62.0);

pub(super) fn seen(side: Side) -> Option<(Point, Vec<Part>)> {
    match side {
        Side::Front => {
            let board = Path::through(vec![
                (BOARD.0, TOP),
                (BOARD.1, TOP),
                (BOARD.1, BOARD_END),
                (BOARD.0, BOARD_END),
            ]);
            let notched = right_side(
                Pen::at((LEFT, TOP))
                    .line((BOARD.0, TOP))
                    .line((BOARD.0, BOARD_END))
                    .line((BOARD.1, BOARD_END))
                    .line((BOARD.1, TOP)),
            );
            let top = Part::new(PartKind::Top, vec![notched, Path::circle(HOLE, HOLE_RADIUS)], Grain::Up)
                .bound(outline(), BINDING)
                .with_rosette(HOLE, HOLE_RADIUS)
                .with_seat(Path::strip(SEAT.0, SEAT.1, SEAT_WIDTH));
            Some((SIZE, vec![top, Part::new(PartKind::Fingerboard, vec![board], Grain::Up).with_frets()]))
        }
        Side::Back => {
            let turned = outline().mirrored(0.5 * SIZE.0);
            Some((
                SIZE,
                vec![Part::new(PartKind::Back, vec![turned.clone()], Grain::Up).bound(turned, BINDING)],
            ))
        }
        Side::Edge => {
            let rim = Path::through(vec![(RIM.0, TOP), (RIM.1, TOP), (RIM.1, BOTTOM), (RIM.0, BOTTOM)]);
            Some(((EDGE_WIDTH, SIZE.1), vec![Part::new(PartKind::Sides, vec![rim], Grain::Up).bowed(0.0)]))
        }
    }
}

fn outline() -> Path {
    right_side(Pen::at((LEFT, TOP)))
}

/// The upper end, the swung side and the tail.
fn right_side(pen: Pen) -> Path {
    pen.line((SHORT, TOP))
        .curve((136.0, 138.0), (262.0, 214.0), (280.0, 340.0))
        .curve((288.0, 398.0), (262.0, BOTTOM), (206.0, BOTTOM))
        .line((LEFT, BOTTOM))
        .closed()
}
