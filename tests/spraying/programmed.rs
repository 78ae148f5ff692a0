//! Programmed passes made into a path, and the edge as a line for them.

use crate::support::near;
use crate::tries::setup;
use stepboard::spraying::edge::{Side, along};
use stepboard::spraying::program::path;
use stepboard::spraying::{Grid, Passes, Point};

/// One pass at 200 mm and 0.4 m/s, trigger pulled and let go at its ends.
fn pass(line: &[(f64, f64)]) -> Passes {
    Passes::of(line.to_vec(), [0.0, 200.0, 0.4, 0.5, 0.0, 0.0, 0.0, 1.0])
}

fn sprayed(sets: &[Passes]) -> Vec<Point> {
    path(sets, &setup("clear-panel")).expect("a path").points().to_vec()
}

/// The fan is 200 mm wide: half an overlap over 280 mm takes three gaps of no more than 100 mm, all alike.
#[test]
fn passes_of_a_set_share_its_width_evenly() {
    let set = Passes { wide: 280.0, ..pass(&[(-180.0, 0.0), (180.0, 0.0)]) };
    let (count, overlap) = set.lie(&setup("clear-panel")).expect("several");
    near(count, 4.0, 0.0, "passes");
    near(overlap, 1.0 - 280.0 / 3.0 / 200.0, 1e-9, "the overlap that they have");
    assert_eq!(pass(&[(0.0, 0.0), (1.0, 0.0)]).lie(&setup("clear-panel")), None, "one pass");
    let mut heights: Vec<f64> =
        sprayed(&[set]).iter().filter(|point| point.trigger > 0.0).map(|point| point.y).collect();
    heights.dedup();
    assert_eq!(heights.len(), 4, "{heights:?}");
    for pair in heights.windows(2) {
        near(pair[1] - pair[0], 280.0 / 3.0, 1e-9, "a gap");
    }
}

#[test]
fn the_fan_turns_at_a_corner_and_stays_square_along_the_sides() {
    let points = sprayed(&[pass(&[(0.0, 0.0), (200.0, 0.0), (200.0, 200.0)])]);
    let at = |x: f64, y: f64| {
        let found = points.windows(2).find(|pair| {
            let inside = |from: f64, to: f64, at: f64| (from.min(to)..=from.max(to)).contains(&at);
            inside(pair[0].x, pair[1].x, x) && inside(pair[0].y, pair[1].y, y)
        });
        let pair = found.expect("it comes by");
        let long = pair[0].apart(&pair[1]).max(f64::MIN_POSITIVE);
        let share = (x - pair[0].x).hypot(y - pair[0].y) / long;
        pair[0].towards(&pair[1], share).fan.rem_euclid(180.0)
    };
    near(at(100.0, 0.0), 90.0, 1e-9, "upright along a level side");
    near(at(170.0, 0.0), 90.0, 1e-9, "and shortly before the corner");
    near(at(200.0, 0.0), 135.0, 1e-9, "half way at the corner");
    near(at(200.0, 100.0), 0.0, 1e-9, "level along an upright side");
}

#[test]
fn a_wait_before_the_first_pass_counts() {
    let line = [(-180.0, 0.0), (180.0, 0.0)];
    let (now, later) = (sprayed(&[pass(&line)]), sprayed(&[Passes { wait: 30.0, ..pass(&line) }]));
    let begins = |points: &[Point]| points.iter().find(|point| point.trigger > 0.0).map(|point| point.t);
    near(begins(&later).expect("sprayed"), begins(&now).expect("sprayed") + 30.0, 1e-9, "begun");
    assert_eq!((later[0].t, later[0].trigger), (0.0, 0.0));
}

/// A lute is alike on both sides: so are its edges, from the axis at the bottom to the axis at the top.
#[test]
fn both_edges_are_alike() {
    let outline = setup("shaded-edge").outline;
    for inward in [-20.0, 0.0, 30.0] {
        let (left, right) = (along(&outline, inward, Side::Left), along(&outline, inward, Side::Right));
        assert_eq!(left.len(), right.len());
        for (left, right) in left.iter().zip(&right) {
            near(left.0, -right.0, 1e-9, "as far to the side");
            near(left.1, right.1, 1e-9, "as high");
        }
        // The curve is drawn by straight stretches, which are what lies so far inwards.
        near(left[0].1, 430.0 - inward, 0.01, "it begins at the bottom");
        assert!(left.iter().all(|(x, _)| *x <= 1e-9), "the left is the left one");
    }
}

/// The edge of a rectangle moved inwards by plane geometry: every side lies that far within, the corners where they meet.
#[test]
fn the_edge_of_a_panel_keeps_its_distance_on_every_side() {
    let outline = setup("sealer-panel").outline;
    let (least, most) = outline.bounds();
    for inward in [-20.0, 0.0, 30.0] {
        let (left, right) = (least.0 + inward, most.0 - inward);
        let (top, bottom) = (least.1 + inward, most.1 - inward);
        let axis = [(0.0, bottom), (0.0, top)];
        for (side, x) in [(Side::Left, left), (Side::Right, right)] {
            let line = along(&outline, inward, side);
            let wanted = [axis[0], (x, bottom), (x, top), axis[1]];
            assert_eq!(line.len(), wanted.len(), "{line:?}");
            for (place, wanted) in line.iter().zip(wanted) {
                near(place.0, wanted.0, 1e-9, "across");
                near(place.1, wanted.1, 1e-9, "down");
            }
        }
    }
}

#[test]
fn the_grid_of_screens_is_fine_enough_and_a_panel_begins_and_ends_on_its_lines() {
    for slug in ["sealer-panel", "clear-panel", "horned-body", "cutaway-body", "shaded-edge"] {
        let setup = setup(slug);
        let grid = setup.grid();
        assert!(
            grid.count() >= Grid::SCREEN && grid.count() < Grid::SCREEN * 6 / 5,
            "{slug}: {}",
            grid.count()
        );
        let (least, most) = setup.outline.bounds();
        let cells = |length: f64| length / grid.cell;
        for (name, length) in [("left", least.0 - grid.left), ("top", least.1 - grid.top)] {
            near(cells(length), cells(length).round(), 1e-6, name);
        }
        near(cells(most.0 - least.0), cells(most.0 - least.0).round(), 1e-6, "across");
        assert!((cells(most.1 - least.1) - cells(most.1 - least.1).round()).abs() < 0.3, "{slug}, down");
    }
}
