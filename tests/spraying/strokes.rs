//! A path taken apart into strokes.

use crate::support::near;
use crate::tries::{at, path, plain};
use stepboard::spraying::Point;
use stepboard::spraying::strokes::strokes;

fn off(point: Point) -> Point {
    Point { trigger: 0.0, ..point }
}

/// The panel is 400 mm wide: -200 to 200.
#[test]
fn a_stroke_tells_speed_lead_and_overlap() {
    let run = path(&[
        at(0.0, -260.0, 100.0),
        off(at(2.0, 240.0, 100.0)),
        off(at(3.0, 240.0, 180.0)),
        at(3.0, 240.0, 180.0),
        off(at(4.0, -150.0, 180.0)),
    ]);
    let found = strokes(&run, &plain(3.0));
    assert_eq!(found.len(), 2);
    near(found[0].speed, 0.25, 1e-9, "500 mm in 2 s");
    near(found[0].unsteady, 0.0, 1e-9, "one speed");
    near(found[0].lead.expect("it crosses the work"), 60.0, 0.5, "lead");
    near(found[0].lag.expect("it crosses the work"), 40.0, 0.5, "lag");
    near(found[1].lag.expect("it crosses the work"), -50.0, 0.5, "let go inside");
    near(found[1].overlap.expect("side by side"), 1.0 - 80.0 / 200.0, 1e-9, "80 mm of 200");
    near(found[0].direction(), 0.0, 1e-9, "to");
    near(found[1].direction(), 0.0, 1e-9, "fro");
}

/// A hand that turns back with the trigger pulled makes two strokes; one that stands still is found out.
#[test]
fn turning_back_and_standing_still_are_told() {
    let mut points = vec![at(0.0, -260.0, 100.0), at(1.0, 240.0, 100.0), at(1.2, 240.0, 190.0)];
    points.extend([at(2.2, -100.0, 190.0), at(2.9, -100.0, 190.0), off(at(3.5, -260.0, 190.0))]);
    let found = strokes(&path(&points), &plain(3.0));
    assert_eq!(found.len(), 2, "{found:?}");
    near(found[1].stood, 0.7, 1e-9, "stood");
    assert_eq!(found[0].stood, 0.0);
    assert!(found[1].unsteady > 0.2);
}
