//! How long a spraying gun takes on the grid of the screens: a second of a hand at 60 points a second, and what came of it.
//!
//! A frame at 30 a second has 33 ms; two points come in it. With the processor four times slower and single precision in
//! WebAssembly twice as slow, a frame of these benches has to stay under some 4 ms.
#![allow(missing_docs, reason = "a benchmark is no interface")]

use divan::{Bencher, black_box};
use stepboard::content::Content;
use stepboard::spraying::program::path;
use stepboard::spraying::reading::measure;
use stepboard::spraying::{Grid, Path, Point, Setup, Sprayer, good};

fn main() {
    divan::main();
}

fn setup(slug: &str) -> Setup {
    let content = Content::embedded().expect("the build script checked it");
    let task = content.sprays.iter().find(|task| task.slug == slug).expect("the task ships");
    Setup::of(task, &content).expect("its sheet ships")
}

/// Two points of a pass that runs on, from a frame to the next, at a distance.
fn frame(sprayer: &mut Sprayer, distance: f64) {
    let at =
        |t: f64, x: f64| Point { t, x, y: 150.0, distance, tilt: 5.0, fan: 80.0, trigger: 1.0, wide: 1.0 };
    for point in [at(1.0, -5.0), at(1.0 + 1.0 / 60.0, 0.0), at(1.0 + 2.0 / 60.0, 5.0)] {
        sprayer.to(point);
    }
}

/// One frame on the whole grid of a panel: the gun near, and so far that its spot takes in most of it.
#[divan::bench(args = [180.0, 450.0])]
fn spray_for_a_frame(bencher: Bencher<'_, '_>, distance: f64) {
    let setup = setup("sealer-panel");
    let grid = Grid::over(&setup.outline, 60.0, Grid::SCREEN);
    bencher
        .with_inputs(|| Sprayer::new(setup.clone(), grid))
        .bench_local_refs(|sprayer| frame(black_box(sprayer), distance));
}

fn run(slug: &str) -> (Setup, Path) {
    let setup = setup(slug);
    let sets = good::run(&setup).expect("a good run");
    let path = path(&sets, &setup).expect("a path");
    (setup, path)
}

#[divan::bench(args = ["clear-panel", "shaded-edge"])]
fn measure_a_good_run(bencher: Bencher<'_, '_>, slug: &str) {
    let (setup, path) = run(slug);
    let sprayer = Sprayer::spray(&setup, Grid::over(&setup.outline, 90.0, Grid::SCREEN), &path);
    bencher.bench(|| measure(black_box(&sprayer), &path));
}
