//! What leaves the gun is on the work, beside it or lost: a balance of volumes, exact but for the grid.

use crate::support::{content, near};
use crate::tries::{hand, seen, setup};
use stepboard::spraying::grid::Grid;
use stepboard::spraying::program::path;
use stepboard::spraying::reading::measure;
use stepboard::spraying::setup::FILM_A_ML;
use stepboard::spraying::{Setup, Sprayer, good};

/// A grid so wide that the hand never sprays past it.
const WIDE: Grid = Grid { left: -600.0, top: -300.0, cell: 2.0, columns: 600, rows: 500 };

fn in_all(sprayer: &Sprayer) -> f64 {
    let film = sprayer.film();
    film.laid().iter().map(|film| f64::from(*film)).sum::<f64>() * film.grid().area() / FILM_A_ML
}

/// Sprayed = on the work + beside it + lost, to 0.1 % (balance of volumes): what the cells hold is added up and not inferred.
#[test]
fn nothing_is_lost_and_nothing_comes_from_nowhere() {
    let setup: Setup = setup("sealer-panel");
    let path = seen(60);
    let sprayer = Sprayer::spray(&setup, WIDE, &path);
    let paint = sprayer.paint();
    let flow = setup.task.gun.flow_ml_min.get() / 60.0;
    // The valve opens and closes over the same time, so that the trigger's 7.6 s count whole.
    near(paint.sprayed, 7.6 * flow, 1e-3 * 7.6 * flow, "what the trigger let out");
    near(in_all(&sprayer) + paint.lost, paint.sprayed, 1e-3 * paint.sprayed, "in all cells, and lost");
    let reading = measure(&sprayer, &path);
    let work = sprayer.film().grid().work(&setup.outline);
    let cells = sprayer.film().laid().iter().zip(&work);
    let beside: f64 = cells.filter(|(_, work)| !**work).map(|(film, _)| f64::from(*film)).sum();
    let beside = beside * sprayer.film().grid().area() / FILM_A_ML;
    near(reading.paint.beside, beside, 1e-3 * paint.sprayed, "beside the work");
    assert!(reading.paint.on_work > 0.0 && reading.paint.beside > 0.0 && reading.paint.lost > 0.0);
    assert!((0.0..1.0).contains(&reading.paint.wasted()));
}

/// The same for a good run of every task: what all cells hold and what is lost is what left the gun.
#[test]
fn every_task_keeps_the_balance() {
    for task in content().sprays {
        let setup = setup(&task.slug);
        let run = path(&good::run(&setup).expect("a good run"), &setup).expect("a path");
        let sprayer = Sprayer::spray(&setup, WIDE, &run);
        let paint = sprayer.paint();
        assert!(paint.sprayed > 0.0 && paint.lost > 0.0, "{}", task.slug);
        near(in_all(&sprayer) + paint.lost, paint.sprayed, 1e-3 * paint.sprayed, &task.slug);
    }
}

/// On the grid that screens use what flies past its edges is beside the work too.
#[test]
fn what_passes_the_grid_counts_as_beside_the_work() {
    let setup = setup("sealer-panel");
    let path = seen(60);
    let narrow = Grid::over(&setup.outline, 10.0, Grid::SCREEN);
    let (near_by, all) = (
        measure(&Sprayer::spray(&setup, narrow, &path), &path),
        measure(&Sprayer::spray(&setup, WIDE, &path), &path),
    );
    near(near_by.paint.on_work, all.paint.on_work, 0.01 * all.paint.on_work, "on the work");
    near(near_by.paint.beside, all.paint.beside, 0.01 * all.paint.sprayed, "beside it");
}

/// A gun that is closed lays nothing, and a path that goes on with it closed changes nothing.
#[test]
fn a_closed_gun_lays_nothing() {
    let setup = setup("sealer-panel");
    let mut sprayer = Sprayer::new(setup, WIDE);
    for nth in 0..100 {
        sprayer.to(stepboard::spraying::Point { trigger: 0.0, ..hand(f64::from(nth) / 30.0) });
    }
    assert!(sprayer.film().laid().iter().all(|film| *film == 0.0));
    assert_eq!(sprayer.paint().sprayed, 0.0);
}
