//! One answer as learning sees it.

use crate::card::Mark;
use crate::record::{Certainty, Entry};

/// An answer given earlier.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Past {
    /// Card family.
    pub family: String,
    /// Whether it was wholly right.
    pub right: bool,
    /// How far the person would have gone on it.
    pub certainty: Certainty,
}

impl Past {
    /// An answer of the journal.
    #[must_use]
    pub fn of(entry: &Entry) -> Self {
        Self { family: entry.family.clone(), right: entry.mark == Mark::Right, certainty: entry.certainty }
    }

    /// Whether the answer holds: right, and not one that had to be asked about first.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.right && self.certainty != Certainty::AskFirst
    }
}
