//! A run that is done: its path, the film it left, what came of it. It is sprayed and measured in slices, so that the page
//! goes on meanwhile.

use crate::app::hooks::Slices;
use crate::spraying::reading::Measuring;
use crate::spraying::{Advice, Finding, NoPath, Path, Reading, Setup, Sprayer, better, good, grade, program};
use std::rc::Rc;

pub(super) struct Run {
    pub(super) path: Path,
    pub(super) sprayer: Rc<Sprayer>,
    pub(super) reading: Reading,
    pub(super) findings: Vec<Finding>,
    pub(super) advice: Option<Advice>,
}

impl Run {
    /// Measures what a path left.
    pub(super) async fn of(path: Path, sprayer: Sprayer, slices: &mut Slices) -> Self {
        let mut measuring = Measuring::of(&sprayer);
        while measuring.go_on() {
            slices.rest().await;
        }
        let reading = measuring.done(&path);
        let findings = grade(&reading, sprayer.setup());
        let advice = better(&reading, &findings, sprayer.setup());
        Self { path, sprayer: Rc::new(sprayer), reading, findings, advice }
    }

    /// Sprays programmed passes.
    pub(super) async fn programmed(
        sets: &[program::Passes],
        setup: &Setup,
        slices: &mut Slices,
    ) -> Result<Self, NoPath> {
        Ok(Self::sprayed(program::path(sets, setup)?, setup, slices).await)
    }

    /// Sprays a path.
    pub(super) async fn sprayed(path: Path, setup: &Setup, slices: &mut Slices) -> Self {
        let mut sprayer = Sprayer::new(setup.clone(), setup.grid());
        for point in path.points() {
            sprayer.to(*point);
            slices.rest().await;
        }
        Self::of(path, sprayer, slices).await
    }

    /// The run as the model would do it; none where no speed of a gun lays the film.
    pub(super) async fn good(setup: &Setup) -> Option<Self> {
        Self::programmed(&good::run(setup)?, setup, &mut Slices::begin()).await.ok()
    }

    pub(super) fn passes(&self) -> bool {
        self.findings.is_empty()
    }

    pub(super) fn setup(&self) -> &Setup {
        self.sprayer.setup()
    }
}
