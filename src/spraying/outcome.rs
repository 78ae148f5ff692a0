//! A run sprayed, measured and graded: all that is told of it.

use super::good;
use super::grade::{Finding, grade};
use super::point::{NoPath, Path};
use super::program::{self, Passes};
use super::reading::{self, Reading};
use super::setup::Setup;
use super::sprayer::Sprayer;
use super::{Advice, better};
use std::rc::Rc;

/// What a run came to.
#[derive(Debug, Clone)]
pub struct Outcome {
    /// The path of the gun.
    pub path: Path,
    /// The gun at its end, with the film that it left.
    pub sprayer: Rc<Sprayer>,
    /// What was measured.
    pub reading: Reading,
    /// Why it does not pass, the gravest first; none for a run that passes.
    pub findings: Vec<Finding>,
    /// The one thing to do better.
    pub advice: Option<Advice>,
}

impl Outcome {
    /// Measures what a path left.
    #[must_use]
    pub fn of(path: Path, sprayer: Sprayer) -> Self {
        let reading = reading::measure(&sprayer, &path);
        let findings = grade(&reading, sprayer.setup());
        let advice = better(&reading, &findings, sprayer.setup());
        Self { path, sprayer: Rc::new(sprayer), reading, findings, advice }
    }

    /// Sprays a path on the grid of its face.
    #[must_use]
    pub fn sprayed(path: Path, setup: &Setup) -> Self {
        let sprayer = Sprayer::spray(setup, setup.grid(), &path);
        Self::of(path, sprayer)
    }

    /// Sprays programmed passes.
    ///
    /// # Errors
    /// [`NoPath`] where they take longer, or go farther, than a path may.
    pub fn programmed(sets: &[Passes], setup: &Setup) -> Result<Self, NoPath> {
        Ok(Self::sprayed(program::path(sets, setup)?, setup))
    }

    /// The run as the model would do it; none where no speed of a gun lays the film.
    #[must_use]
    pub fn good(setup: &Setup) -> Option<Self> {
        Self::programmed(&good::run(setup)?, setup).ok()
    }

    /// Whether the run passes.
    #[must_use]
    pub fn passes(&self) -> bool {
        self.findings.is_empty()
    }

    /// The task on its sheet.
    #[must_use]
    pub fn setup(&self) -> &Setup {
        self.sprayer.setup()
    }
}
