//! One answer as learning sees it.

use super::Certainty;

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
    /// Whether the answer holds: right, and not one that had to be asked about first.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.right && self.certainty != Certainty::AskFirst
    }
}
