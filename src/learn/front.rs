//! What the first screen shows of the journal, kept so that it can be drawn before the journal is read.
//!
//! It is worked out from the journal and stands for nothing by itself: where it does not fit, the journal is read first.

use super::Known;
use super::check::{Sealed, Takings, open_of};
use super::memory::{Answered, Day, Memory, Remembered};
use crate::record::{Certainty, Journal, Within};
use serde::{Deserialize, Serialize};

/// What the answers of one person on one device leave for the first screen.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Front {
    /// The number behind all of the journal.
    next: u64,
    person: String,
    /// How the program that wrote it remembers a fixed run of answers.
    model: Vec<Memory>,
    /// What the answers leave.
    pub known: Known,
    /// How far the sets are.
    pub takings: Takings,
    /// The latest answer in practice, where it was wrong and would have been done on the job.
    pub again: Option<u64>,
}

impl Front {
    /// That of a person at the end of a journal. `None` while a check of theirs is open: what it asks, and what may be told of it,
    /// changes from day to day.
    #[must_use]
    pub fn of(journal: &Journal, person: &str, device: &str, known: &Known) -> Option<Self> {
        let events = journal.events();
        let in_check = open_of(events, person).iter().any(|one| !one.competencies.is_empty());
        let practised = journal.of(person).rfind(|entry| entry.within == Within::Practice);
        (!in_check && !Sealed::may_hide(events, person)).then(|| Self {
            next: journal.next_sequence(),
            person: person.to_owned(),
            model: model(),
            known: known.clone(),
            takings: Takings::of(events, person, device),
            again: practised.filter(|entry| entry.sure_and_wrong()).map(|entry| entry.stamp.sequence),
        })
    }

    /// The number behind all of the journal that it was worked out from.
    #[must_use]
    pub const fn next(&self) -> u64 {
        self.next
    }

    /// Whether it tells of the journal that ends before that number, as this program understands it.
    #[must_use]
    pub fn fits(&self, next: Option<u64>) -> bool {
        next == Some(self.next) && self.model == model()
    }

    /// Whether it tells of that person.
    #[must_use]
    pub fn is_of(&self, person: &str) -> bool {
        self.person == person
    }
}

/// How this program remembers a family after each of a run of answers of every worth: another model remembers another way.
fn model() -> Vec<Memory> {
    const FAMILY: &str = "any";
    let sure = (true, Certainty::OnTheJob, 20);
    let run = [(true, Certainty::AskFirst, 20), sure, sure, (false, Certainty::TestBoard, 20), sure, sure]
        .into_iter()
        .chain([sure, (true, Certainty::TestBoard, 300), sure, (true, Certainty::TestBoard, 20)]);
    let mut remembered = Remembered::default();
    let after = |(day, (right, certainty, seconds))| {
        let (family, active_seconds) = (FAMILY.to_owned(), Some(seconds));
        remembered.take(&Answered { family, day: Day(day), right, certainty, helped: false, active_seconds });
        remembered.memory(FAMILY).copied()
    };
    // Twice on the second day, then days apart.
    [0, 1, 1, 3, 6, 10, 20, 40, 80, 160].into_iter().zip(run).filter_map(after).collect()
}
