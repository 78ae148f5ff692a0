//! The same run comes out the same however often it is looked at and however fine the grid is: differences of under 1 %.

use crate::support::near;
use crate::tries::{seen, setup};
use stepboard::spraying::reading::measure;
use stepboard::spraying::{Grid, Path, Setup, Sprayer};

fn film(setup: &Setup, path: &Path) -> Vec<f64> {
    let grid = Grid::over(&setup.outline, 60.0, 160 * 120);
    Sprayer::spray(setup, grid, path).film().laid().iter().map(|film| f64::from(*film)).collect()
}

/// The hand at 30, 60 and 120 points a second, against 960: every cell to 1 % of what lies there, or of the mean where less
/// does.
#[test]
fn the_map_is_the_same_at_30_60_and_120_points_a_second() {
    let setup = setup("sealer-panel");
    let fine = film(&setup, &seen(960));
    let mean = fine.iter().sum::<f64>() / fine.len() as f64;
    for a_second in [30, 60, 120] {
        let found = film(&setup, &seen(a_second));
        let apart = found.iter().zip(&fine).map(|(one, other)| (one - other).abs() / other.max(mean));
        let apart = apart.fold(0.0, f64::max);
        assert!(apart < 0.01, "{a_second} a second: {apart} of what lies there");
    }
}

/// A grid twice as fine changes no figure by 1 %.
#[test]
fn a_finer_grid_changes_nothing() {
    for slug in ["sealer-panel", "horned-body", "cutaway-body"] {
        let setup = setup(slug);
        let path = seen(60);
        let read = |cells: usize| {
            measure(&Sprayer::spray(&setup, Grid::over(&setup.outline, 100.0, cells), &path), &path)
        };
        let usual = read(Grid::SCREEN);
        let fine = read(4 * Grid::SCREEN);
        near(usual.film.mean / fine.film.mean, 1.0, 0.01, "mean");
        near(usual.film.cv / fine.film.cv, 1.0, 0.01, "cv");
        near(usual.film.most / fine.film.most, 1.0, 0.01, "most");
        near(usual.film.wettest / fine.film.wettest, 1.0, 0.01, "wettest");
        near(usual.film.in_window, fine.film.in_window, 0.01, "in the window");
        near(usual.paint.on_work / fine.paint.on_work, 1.0, 0.01, "on the work");
    }
}
