//! A walk as a tablet keeps it: whose it is, since when, and what it takes to walk it again.

use super::decision::Decision;
use super::saved::{Mode, Saved};
use super::story::Walk;
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
    /// Decisions that were taken over from an earlier walk, where it goes on from one of them: what came of that was told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_over: Option<usize>,
    /// Of somebody else's walk that is inspected: the turns that were named, each with the id of a rule.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub named: Vec<(usize, String)>,
    /// Whether what was named was graded.
    #[serde(default)]
    pub graded: bool,
}

impl Kept {
    /// A walk that somebody begins at that moment.
    #[must_use]
    pub fn begun(id: String, person: String, at: String, saved: Saved) -> Self {
        let (taken_over, named, graded) = (None, Vec::new(), false);
        Self { id, person, begun: at.clone(), changed: at, saved, taken_over, named, graded }
    }

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

    /// Another try from a decision on, as a walk of its own: what came of it was told, so it counts for nothing from there.
    /// After somebody else's walk it is one's own.
    #[must_use]
    pub fn another_try(&self, walk: &Walk, id: String, at: String) -> Self {
        let mut saved = walk.saved();
        if saved.mode == Mode::Inspect {
            saved.mode = Mode::Own;
        }
        let taken_over = Some(walk.turns().len());
        Self { taken_over, ..Self::begun(id, self.person.clone(), at, saved) }
    }

    /// Whether the work was handed over, and graded where it is somebody else's.
    #[must_use]
    pub fn is_over(&self) -> bool {
        let inspected = self.saved.mode != Mode::Inspect || self.graded;
        inspected && matches!(self.saved.decisions.last(), Some(Decision::HandOver))
    }
}
