//! The latest answers as learning sees them.

use crate::card::Mark;
use crate::record::{Certainty, Entry};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// An answer given earlier.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Past {
    /// Whether it was wholly right.
    pub right: bool,
    /// How far the person would have gone on it.
    pub certainty: Certainty,
}

impl Past {
    /// An answer of the journal.
    #[must_use]
    pub fn of(entry: &Entry) -> Self {
        Self { right: entry.mark == Mark::Right, certainty: entry.certainty }
    }

    /// Whether the answer holds: right, and not one that had to be asked about first.
    #[must_use]
    pub fn holds(self) -> bool {
        self.right && self.certainty != Certainty::AskFirst
    }
}

/// The latest answer of each card family that a person answered.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Latest(BTreeMap<String, Past>);

impl Latest {
    /// One more answer, later than all before.
    pub fn take(&mut self, family: &str, answer: Past) {
        if let Some(latest) = self.0.get_mut(family) {
            *latest = answer;
        } else {
            self.0.insert(family.to_owned(), answer);
        }
    }

    /// That of a family; `None` where it was never answered.
    #[must_use]
    pub fn of(&self, family: &str) -> Option<Past> {
        self.0.get(family).copied()
    }

    /// Whether nothing was answered.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}
