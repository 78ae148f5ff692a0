//! Runs sprayed and measured in slices, so that the page goes on meanwhile.

use crate::device::Slices;
use crate::spraying::reading::Measuring;
use crate::spraying::{NoPath, Outcome, Passes, Path, Setup, Sprayer, good, program};

/// Measures what a path left.
pub(super) async fn measured(path: Path, sprayer: Sprayer, slices: &mut Slices) -> Outcome {
    let mut measuring = Measuring::of(&sprayer);
    while measuring.go_on() {
        slices.rest().await;
    }
    let reading = measuring.done(&path);
    Outcome::of(path, sprayer, reading)
}

/// Sprays programmed passes.
pub(super) async fn programmed(
    sets: &[Passes],
    setup: &Setup,
    slices: &mut Slices,
) -> Result<Outcome, NoPath> {
    Ok(sprayed(program::path(sets, setup)?, setup, slices).await)
}

/// Sprays a path.
pub(super) async fn sprayed(path: Path, setup: &Setup, slices: &mut Slices) -> Outcome {
    let mut sprayer = Sprayer::new(setup.clone(), setup.grid());
    for point in path.points() {
        sprayer.to(*point);
        slices.rest().await;
    }
    measured(path, sprayer, slices).await
}

/// The run as the model would do it; none where no speed of a gun lays the film.
pub(super) async fn good(setup: &Setup, slices: &mut Slices) -> Option<Outcome> {
    programmed(&good::run(setup)?, setup, slices).await.ok()
}
