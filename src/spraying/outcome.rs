//! A run sprayed, measured and graded: all that is told of it.

use super::grade::{Finding, grade};
use super::point::Path;
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
    /// What was measured of what a path left, graded.
    #[must_use]
    pub fn of(path: Path, sprayer: Sprayer, reading: Reading) -> Self {
        let findings = grade(&reading, sprayer.setup());
        let advice = better(&reading, &findings, sprayer.setup());
        Self { path, sprayer: Rc::new(sprayer), reading, findings, advice }
    }

    /// Sprays a path on the grid of its face.
    #[must_use]
    pub fn sprayed(path: Path, setup: &Setup) -> Self {
        let sprayer = Sprayer::spray(setup, setup.grid(), &path);
        let reading = reading::measure(&sprayer, &path);
        Self::of(path, sprayer, reading)
    }

    /// Whether the run passes.
    #[must_use]
    pub const fn passes(&self) -> bool {
        self.findings.is_empty()
    }

    /// The task that was worked on.
    #[must_use]
    pub fn setup(&self) -> &Setup {
        self.sprayer.setup()
    }
}
