//! What one person's answers leave for the board and for the next card, kept going forward answer by answer.

use super::memory::{Answered, Remembered};
use super::{Latest, Past};
use crate::learn::check::Sealed;
use crate::record::{Entry, Event};
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// What a person's answers leave.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Known {
    /// How the latest answers stand.
    pub latest: Latest,
    /// How what was asked is remembered. Decisions of walks are no part of it: nothing was asked, so that none tells whether
    /// it was recalled.
    pub remembered: Remembered,
}

impl Known {
    /// One more answer, later than all before.
    pub fn take(&mut self, entry: &Entry) {
        self.latest.take(&entry.family, Past::of(entry));
        if let Some(answered) = Answered::of(entry) {
            self.remembered.take(&answered);
        }
    }
}

/// One person's answers followed through a journal that grows.
#[derive(Debug, Clone, Default)]
pub struct Followed {
    person: String,
    sealed: Sealed,
    /// Events that were read, and the latest of them.
    read: usize,
    last: Option<Event>,
    answers: u32,
    known: Arc<Known>,
}

impl Followed {
    /// What a person's answers are by now. Where all that was read stands as it did, only what came since is read.
    #[must_use]
    pub fn on(self, events: &[Event], person: &str, sealed: &Sealed) -> Self {
        let mut now = if self.goes_on(events, person, sealed) {
            self
        } else {
            Self { person: person.to_owned(), sealed: sealed.clone(), ..Self::default() }
        };
        let new = events.get(now.read..).unwrap_or_default();
        for entry in new.iter().filter_map(Event::answer).filter(|entry| entry.stamp.person == person) {
            now.answers = now.answers.saturating_add(1);
            if !sealed.hides(entry) {
                Arc::make_mut(&mut now.known).take(entry);
            }
        }
        (now.read, now.last) = (events.len(), events.last().cloned());
        now
    }

    /// What is known of those that may be told.
    #[must_use]
    pub const fn known(&self) -> &Arc<Known> {
        &self.known
    }

    /// How many there are, those that must not be told yet among them.
    #[must_use]
    pub const fn answers(&self) -> u32 {
        self.answers
    }

    /// Whether what was read stands where it stood, for the same person, and may be told as it might. Whatever was erased or
    /// came between moves the events behind it.
    fn goes_on(&self, events: &[Event], person: &str, sealed: &Sealed) -> bool {
        let latest = self.read.checked_sub(1).and_then(|at| events.get(at));
        self.person == person && self.sealed.hides_as(sealed) && latest == self.last.as_ref()
    }
}
