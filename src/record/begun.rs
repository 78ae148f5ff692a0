//! An observation that is being made. It is kept at every touch, so that nothing is lost when the tablet dies.

use super::{AssessorName, Judged, LocalDate, Observed, Stamp, plain};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// An observation that is being made, as far as it is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Begun {
    /// Shop number of whoever watches.
    pub by: String,
    /// Shop number of whoever does the work.
    pub subject: String,
    /// Slug of the competency.
    pub competency: String,
    /// Name of the demonstration.
    pub occasion: String,
    /// Whether another assessor, or this one before it was talked over, wrote it down already.
    pub joined: bool,
    /// The day of the work as it was typed.
    pub on: String,
    /// Whether it is typed in from paper.
    pub paper: bool,
    /// Which work.
    pub work: String,
    /// Whether it was done alone; none until that is said.
    pub alone: Option<bool>,
    /// What was judged so far.
    pub judged: BTreeMap<String, Judged>,
    /// What else was seen.
    pub note: String,
    /// The stopwatch.
    pub stopwatch: Stopwatch,
}

/// A stopwatch that goes on while the page is closed.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Stopwatch {
    /// Whole seconds until it was last stopped.
    pub seconds: u32,
    /// Since when it runs, as ISO 8601 text in universal time; none while it stands.
    pub since: Option<String>,
}

impl Begun {
    /// Whether it is of that work, by that assessor.
    #[must_use]
    pub fn is_of(&self, by: &str, subject: &str, competency: &str) -> bool {
        self.by == by && self.subject == subject && self.competency == competency
    }

    /// What is written down of it: every criterion, those that were not judged as not seen, and texts as they can be signed.
    /// `None` where the day is none, or nobody said whether it was done alone.
    #[must_use]
    pub fn observed<'a>(
        &self,
        stamp: Stamp,
        criteria: impl Iterator<Item = &'a str>,
        seconds: u32,
        by: AssessorName,
    ) -> Option<Observed> {
        let judged = |id: &str| self.judged.get(id).copied().unwrap_or(Judged::NotSeen);
        Some(Observed {
            stamp,
            subject: self.subject.clone(),
            competency: self.competency.clone(),
            occasion: self.occasion.clone(),
            on: self.day()?,
            paper: self.paper,
            work: plain(&self.work),
            alone: self.alone?,
            judged: criteria.map(|id| (id.to_owned(), judged(id))).collect(),
            note: plain(&self.note),
            seconds: (seconds > 0).then_some(seconds),
            by,
        })
    }

    /// The day of the work; `None` where what was typed is none.
    #[must_use]
    pub fn day(&self) -> Option<LocalDate> {
        self.on.parse().ok()
    }
}

impl Stopwatch {
    /// Started or stopped at a moment at which it has run so many seconds in all.
    #[must_use]
    pub fn pressed(&self, now: String, ran: u32) -> Self {
        let since = self.since.is_none().then_some(now);
        Self { seconds: ran, since }
    }
}
