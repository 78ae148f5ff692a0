//! Wet film in time: what flashes off, what runs, what lands dry.

use crate::support::near;
use crate::tries::{at, path, plain, second};
use stepboard::spraying::{Grid, Point, Setup, Sprayer};

/// The middle of the panel, one cell.
fn spot() -> Grid {
    Grid { left: -0.5, top: 149.5, cell: 1.0, columns: 1, rows: 1 }
}

/// A pass through the middle that begins at a time.
fn pass(t: f64) -> [Point; 2] {
    [at(t, -150.0, 150.0), Point { trigger: 0.0, ..at(t + 1.0, 150.0, 150.0) }]
}

fn after(setup: &Setup, times: &[f64]) -> Sprayer {
    let points: Vec<Point> = times.iter().flat_map(|t| pass(*t)).collect();
    Sprayer::spray(setup, spot(), &path(&points))
}

/// Wet film falls to 1/e in the time that the task tells (exponential decay, closed form); what was laid stays.
#[test]
fn wet_film_flashes_off() {
    let mut setup = plain(3.0);
    setup.task.flash_s = second(20.0);
    let once = after(&setup, &[0.0]);
    let wet = |sprayer: &Sprayer, t: f64| f64::from(sprayer.film().wet_at(t).next().expect("a cell"));
    let laid = f64::from(once.film().laid()[0]);
    near(wet(&once, 0.5 + 20.0) / laid, libm::exp(-1.0), 0.01, "after one time");
    near(wet(&once, 0.5 + 40.0) / laid, libm::exp(-2.0), 0.01, "after two");
    // A second pass after 20 s comes upon 1/e of the first.
    let twice = after(&setup, &[0.0, 20.0]);
    near(f64::from(twice.film().laid()[0]) / laid, 2.0, 1e-3, "laid");
    near(f64::from(twice.film().wettest()[0]) / laid, 1.0 + libm::exp(-1.0), 0.01, "wettest");
    // After very long nothing is left of it, and the numbers hold.
    let late = after(&setup, &[0.0, 3_000.0]);
    near(f64::from(late.film().wettest()[0]) / laid, 1.0, 0.01, "wettest of two coats far apart");
    near(wet(&late, 3_000.5 + 20.0) / laid, libm::exp(-1.0), 0.01, "the second alone");
}

/// Within the farthest distance nothing lands dry, beyond it more and more; what lands falls
/// with distance. The distance is the way that droplets fly, whatever the tilt.
#[test]
fn far_spray_lands_dry_and_less() {
    let setup = plain(3.0);
    let (_, far) = setup.distances();
    let square = |distance: f64| setup.held(distance, 0.0);
    assert_eq!(square(far).dry, 0.0);
    assert!(square(1.2 * far).dry > 0.0 && square(1.5 * far).dry > square(1.2 * far).dry);
    near(square(2.0 * far).dry, 1.0, 1e-9, "all of it is dry from twice the farthest distance");
    assert!(square(1.5 * far).landing < square(far).landing);
    let slanting = setup.held(far, 40.0);
    assert_eq!((slanting.dry, slanting.landing), (0.0, square(far).landing), "as far, aslant");
    let lay = |distance: f64| {
        let points: Vec<Point> = pass(0.0).into_iter().map(|point| Point { distance, ..point }).collect();
        let sprayer = Sprayer::spray(&setup, spot(), &path(&points));
        (
            f64::from(sprayer.film().dry()[0]),
            f64::from(sprayer.film().laid()[0]),
            f64::from(sprayer.film().wettest()[0]),
        )
    };
    let (dry, laid, wettest) = lay(1.5 * far);
    near(dry / laid, square(1.5 * far).dry, 1e-4, "share that is dry");
    near(wettest / laid, 1.0 - square(1.5 * far).dry, 0.02, "what is dry does not run");
}
