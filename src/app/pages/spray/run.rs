//! A run that is done: its path, the film it left, what came of it.

use crate::spraying::{
    Advice, Finding, NoPath, Path, Reading, Setup, Sprayer, better, good, grade, program, reading,
};
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
    pub(super) fn of(path: Path, sprayer: Sprayer) -> Self {
        let reading = reading::measure(&sprayer, &path);
        let findings = grade(&reading, sprayer.setup());
        let advice = better(&reading, &findings, sprayer.setup());
        Self { path, sprayer: Rc::new(sprayer), reading, findings, advice }
    }

    /// Sprays programmed passes.
    pub(super) fn programmed(sets: &[program::Passes], setup: &Setup) -> Result<Self, NoPath> {
        let path = program::path(sets, setup)?;
        let sprayer = Sprayer::spray(setup, setup.grid(), &path);
        Ok(Self::of(path, sprayer))
    }

    /// The run as the model would do it; none where no speed of a gun lays the film.
    pub(super) fn good(setup: &Setup) -> Option<Self> {
        Self::programmed(&good::run(setup)?, setup).ok()
    }

    pub(super) fn passes(&self) -> bool {
        self.findings.is_empty()
    }

    pub(super) fn setup(&self) -> &Setup {
        self.sprayer.setup()
    }
}
