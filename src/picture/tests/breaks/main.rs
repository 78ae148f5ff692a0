//! Runs, cracks and what else breaks or thickens a film, measured from heights and pixels. Where no source is named:
//! common practice, no source.

mod measure;

use measure::{brightness, changed, named, panel};
use stepboard_picture::{Lamp, Panel, Severity};

/// Pixels in a row and rows.
fn shape(panel: &Panel) -> (usize, usize) {
    (panel.grid().columns, panel.grid().rows)
}

/// How much a fault raises each pixel, micrometres.
fn raised(slug: &str, severity: Severity, seed: u32) -> (Panel, Vec<f32>) {
    let (with, without) = (panel(Some((named(slug), severity)), seed, 0.5), panel(None, seed, 0.5));
    let rise = with.height().iter().zip(without.height()).map(|(a, b)| a - b).collect();
    (with, rise)
}

/// How strongly the change that a fault makes varies along the grain, against across it.
fn along_against_across(slug: &str, severity: Severity, seed: u32) -> f32 {
    let (with, without) = (panel(Some((named(slug), severity)), seed, 0.25), panel(None, seed, 0.25));
    let lamp = Lamp { x: 500.0, ..Lamp::OVERHEAD };
    let change: Vec<f32> =
        brightness(&with, lamp).iter().zip(brightness(&without, lamp)).map(|(a, b)| a - b).collect();
    let (columns, rows) = shape(&with);
    let (mut along, mut across) = (0.0, 0.0);
    for row in 1..rows {
        for column in 1..columns {
            let here = change[row * columns + column];
            along += (here - change[row * columns + column - 1]).powi(2);
            across += (here - change[(row - 1) * columns + column]).powi(2);
        }
    }
    along / across
}

/// A run hangs down a face (T42; G1 5-30) and is thickest at its lower end.
#[test]
fn a_run_hangs_down_and_is_thickest_at_its_head() {
    for seed in [1, 2, 3] {
        let (panel, rise) = raised("run-sag", Severity::Slight, seed);
        let (columns, _) = shape(&panel);
        let on: Vec<(usize, usize, f32)> = rise
            .iter()
            .enumerate()
            .filter(|(_, rise)| **rise > 3.0)
            .map(|(place, rise)| (place % columns, place / columns, *rise))
            .collect();
        let (top, bottom) = (on.iter().map(|p| p.1).min().unwrap(), on.iter().map(|p| p.1).max().unwrap());
        let (left, right) = (on.iter().map(|p| p.0).min().unwrap(), on.iter().map(|p| p.0).max().unwrap());
        assert!(bottom - top > 2 * (right - left), "longer than wide: {left}-{right}, {top}-{bottom}");
        let most = |from: f32, to: f32| {
            let part = |row: usize| (row - top) as f32 / (bottom - top) as f32;
            on.iter().filter(|p| (from..=to).contains(&part(p.1))).map(|p| p.2).fold(0.0, f32::max)
        };
        assert!(most(0.66, 1.0) > 1.3 * most(0.0, 0.4), "thick at the head");
    }
}

/// Cold checks cross the grain (T3).
#[test]
fn a_cold_check_crosses_the_grain() {
    for seed in [1, 2] {
        let ratio = along_against_across("cold-check", Severity::Slight, seed);
        assert!(ratio > 3.0, "{ratio}");
    }
}

/// Severe checks close into cells: ground that is cut off on every side, as in crazing. A few cracks cut nothing off.
#[test]
fn severe_checks_are_a_net_of_closed_cells() {
    let cells = |severity| closed_cells(&panel(Some((named("cold-check"), severity)), 2, 0.25));
    assert_eq!(cells(Severity::Slight), 0);
    let net = cells(Severity::Severe);
    assert!(net >= 60, "{net} cells");
}

/// Areas of more than 1 square mm that are not marked and do not reach the rim of the panel.
fn closed_cells(panel: &Panel) -> usize {
    let (columns, rows) = shape(panel);
    let pixel = panel.grid().scale * panel.grid().scale;
    let mut seen: Vec<bool> = panel.mask().iter().map(|mask| *mask > 0.05).collect();
    let mut cells = 0;
    for start in 0..seen.len() {
        let (mut open, mut area, mut inside) = (vec![start], 0.0, true);
        while let Some(place) = open.pop() {
            if std::mem::replace(&mut seen[place], true) {
                continue;
            }
            area += pixel;
            let (column, row) = (place % columns, place / columns);
            if column == 0 || row == 0 || column + 1 == columns || row + 1 == rows {
                inside = false;
                continue;
            }
            open.extend([place - 1, place + 1, place - columns, place + columns]);
        }
        cells += usize::from(inside && area >= 1.0);
    }
    cells
}

/// What is slight can be seen, and what is severe is more.
#[test]
fn the_slightest_can_be_seen() {
    for slug in ["run-sag", "cold-check"] {
        let clean = panel(None, 3, 0.25);
        let seen = |severity| changed(&panel(Some((named(slug), severity)), 3, 0.25), &clean, Lamp::OVERHEAD);
        let (slight, severe) = (seen(Severity::Slight), seen(Severity::Severe));
        assert!(slight > 0.003 && severe > 2.0 * slight, "{slug}: {slight}, {severe}");
    }
}
