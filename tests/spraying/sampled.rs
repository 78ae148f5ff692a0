//! The same run comes out the same however often it is looked at and however fine the grid is: differences of under 1 %.

use crate::support::{content, near};
use crate::tries::{along, seen, setup};
use stepboard::spraying::program::path;
use stepboard::spraying::reading::measure;
use stepboard::spraying::{Grid, Path, Reading, Setup, Sprayer, good};

/// All tasks, sprayed as a good run goes.
fn tasks() -> Vec<String> {
    let slugs: Vec<String> = content().sprays.into_iter().map(|task| task.slug).collect();
    assert!(slugs.len() >= 8, "{slugs:?}");
    slugs
}

fn film(setup: &Setup, path: &Path) -> Vec<f64> {
    let grid = Grid::over(&setup.outline, 60.0, 160 * 120);
    Sprayer::spray(setup, grid, path).film().laid().iter().map(|film| f64::from(*film)).collect()
}

/// The way of a good run of a task; along an edge the right side takes longer, so that both sides differ.
fn way(setup: &Setup) -> Path {
    let mut sets = good::run(setup).expect("a good run");
    if setup.task.shade.is_some() {
        sets.iter_mut().skip(1).step_by(2).for_each(|set| set.speed /= 1.4);
    }
    path(&sets, setup).expect("a path")
}

/// The map at 30, 60 and 120 points a second against a fine one: every cell to 1 % of what lies there, or of the mean where
/// less does.
fn is_the_same(slug: &str, fine: &[f64], at: impl Fn(u32) -> Vec<f64>) {
    let mean = fine.iter().sum::<f64>() / fine.len() as f64;
    for a_second in [30, 60, 120] {
        let found = at(a_second);
        let apart = found.iter().zip(fine).map(|(one, other)| (one - other).abs() / other.max(mean));
        let apart = apart.fold(0.0, f64::max);
        assert!(apart < 0.01, "{slug}, {a_second} a second: {apart} of what lies there");
    }
}

#[test]
fn the_map_is_the_same_at_30_60_and_120_points_a_second() {
    let setup = setup("sealer-panel");
    is_the_same("sealer-panel", &film(&setup, &seen(960)), |a_second| film(&setup, &seen(a_second)));
}

#[test]
fn the_map_of_each_kind_of_task_is_the_same_at_30_60_and_120_points_a_second() {
    for slug in tasks() {
        let setup = setup(&slug);
        let way = way(&setup);
        let at = |a_second| film(&setup, &along(&way, a_second));
        is_the_same(&slug, &at(480), at);
    }
}

/// What is read on a grid of so many cells.
fn read(setup: &Setup, path: &Path, cells: usize) -> Reading {
    measure(&Sprayer::spray(setup, Grid::over(&setup.outline, 100.0, cells), path), path)
}

/// Figures of a usual grid and of one twice as fine.
fn is_as_fine(slug: &str, usual: &Reading, fine: &Reading) {
    let share = |one: f64, other: f64, what: &str| near(one, other, 0.01, &format!("{slug}: {what}"));
    let near = |one: f64, other: f64, what: &str| near(one / other, 1.0, 0.01, &format!("{slug}: {what}"));
    near(usual.film.mean, fine.film.mean, "mean");
    near(usual.film.cv, fine.film.cv, "cv");
    near(usual.film.most, fine.film.most, "most");
    near(usual.film.wettest, fine.film.wettest, "wettest");
    share(usual.film.in_window, fine.film.in_window, "in the window");
    near(usual.paint.on_work, fine.paint.on_work, "on the work");
}

#[test]
fn a_finer_grid_changes_nothing() {
    for slug in ["sealer-panel", "horned-body", "cutaway-body"] {
        let (setup, path) = (setup(slug), seen(60));
        is_as_fine(slug, &read(&setup, &path, Grid::SCREEN), &read(&setup, &path, 4 * Grid::SCREEN));
    }
}

#[test]
fn a_finer_grid_changes_nothing_of_each_kind_of_task() {
    for slug in tasks() {
        let setup = setup(&slug);
        let path = along(&way(&setup), 60);
        let (usual, fine) = (read(&setup, &path, Grid::SCREEN), read(&setup, &path, 4 * Grid::SCREEN));
        is_as_fine(&slug, &usual, &fine);
        let (Some(usual), Some(fine)) = (usual.shade, fine.shade) else { continue };
        assert_eq!(usual.zones.len(), fine.zones.len());
        for (usual, fine) in usual.zones.iter().zip(&fine.zones) {
            near(usual.lightness / fine.lightness, 1.0, 0.01, &format!("L* of {:?}", usual.zone));
        }
        assert!(fine.sides > 2.0 && fine.banding > 2.0, "{} and {}", fine.sides, fine.banding);
        near(usual.sides / fine.sides, 1.0, 0.01, "both sides");
        near(usual.banding / fine.banding, 1.0, 0.01, "banding");
    }
}
