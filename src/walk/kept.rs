//! A walk as a tablet keeps it: whose it is, since when, and what it takes to walk it again.

use super::decision::Decision;
use super::saved::Saved;
use serde::{Deserialize, Serialize};

/// A walk of a tablet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kept {
    /// Its name on the tablet.
    pub id: String,
    /// Who walks it, as in the journal; empty where no name was given.
    pub person: String,
    /// When it was begun, as ISO 8601 text in universal time.
    pub begun: String,
    /// When it was worked on last.
    pub changed: String,
    /// What it takes to walk it again.
    pub saved: Saved,
}

impl Kept {
    /// Reads what was kept; `None` of what is no walk that this program can read.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        serde_json::from_str(text).ok()
    }

    /// The text to be kept.
    ///
    /// # Errors
    /// Those of writing JSON.
    pub fn write(&self) -> Result<String, serde_json::Error> {
        serde_json::to_string(self)
    }

    /// Whether the work was handed over.
    #[must_use]
    pub fn is_over(&self) -> bool {
        matches!(self.saved.decisions.last(), Some(Decision::HandOver))
    }
}
