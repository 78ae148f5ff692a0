//! What is asked of a journal, and what it answers.

use super::{Hazard, Uncounted, evidence_among};
use crate::content::{Competency, Content};
use crate::learn::mastery::{Call, Standard, State};
use crate::record::{AssessorName, Event, LocalDate, Placed};
use crate::terms;
use std::collections::BTreeMap;

/// What is asked of the journal.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// The content, for the families of the competency.
    pub content: &'a Content,
    /// Whose evidence.
    pub person: &'a str,
    /// Slug of the competency.
    pub competency: &'a str,
    /// What it is held to.
    pub standard: Standard,
    /// Whether a right answer counts that the person would have asked about first. Leaving it out never weakens alpha.
    pub unsure_counts: bool,
    /// Stored events that could not be read, over all journals that are asked: a wrong answer may be among them.
    pub unreadable: u32,
}

impl<'a> Asked<'a> {
    /// What is usually asked: the standard of the profile; unsure answers do not count, and every event was read.
    #[must_use]
    pub fn usual(content: &'a Content, person: &'a str, competency: &'a Competency) -> Self {
        let standard = Standard::of(competency.profile);
        Self { content, person, competency: &competency.slug, standard, unsure_counts: false, unreadable: 0 }
    }
}

/// An attempt by its name, which means something together with the device that it belongs to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// The device.
    pub device: String,
    /// The name.
    pub attempt: String,
}

/// What a journal proves: the evidence bar explained.
#[derive(Debug, Clone, PartialEq)]
pub struct Evidence {
    /// The attempt that is told of, the one begun last; none where there was none.
    pub taken: Option<Taken>,
    /// Number of that attempt since the evidence last sufficed before it, from 1; 0 where there was none.
    pub attempt: u32,
    /// Whether that attempt is over, so that a new one must be opened for more evidence.
    pub closed: bool,
    /// Who sat beside from its first answer on; none where nobody did.
    pub supervised: Option<AssessorName>,
    /// How far that attempt is and what is missing; before the first one, what will be.
    pub state: State,
    /// The day on which the evidence of the latest attempt sufficed, if it did: from it, months of validity are counted. An
    /// error about safety that was opened later blocks all the same: see `state`.
    pub sufficient_since: Option<LocalDate>,
    /// Errors about safety that are open, by family.
    pub hazards: Vec<Hazard>,
    /// What earlier attempts had come to when the next one was begun, in the order in which they were begun: none changes
    /// any more, and one that an error about safety was blocking is no sufficient one.
    pub earlier: Vec<Call>,
    /// Answers that did not count, by the reason.
    pub uncounted: BTreeMap<Uncounted, u32>,
    /// Stored events that could not be read, whoever they are about: what they say is no part of this.
    pub unreadable: u32,
}

terms! {
    /// What evidence comes to, in one word. Text: `app.evidence.outcome.<slug>`.
    Outcome {
        /// An error about safety is open: nothing else matters before it.
        Blocked = "blocked",
        /// No check was begun.
        NotBegun = "not-begun",
        /// It suffices.
        Suffices = "suffices",
        /// Too much was wrong: back to study, then a new check.
        BackToStudy = "back-to-study",
        /// All answers of the attempt are given and it does not suffice.
        NotYet = "not-yet",
        /// The check was closed before it sufficed.
        ClosedEarly = "closed-early",
        /// A check is being taken.
        GoingOn = "going-on",
    }
}

impl Evidence {
    /// Whether more answers can still make it suffice, without a new check: what is missing means something then.
    #[must_use]
    pub fn goes_on(&self) -> bool {
        self.state.call == Call::GoOn && !self.closed
    }

    /// What it comes to, in one word.
    #[must_use]
    pub fn outcome(&self) -> Outcome {
        match self.state.call {
            _ if !self.hazards.is_empty() => Outcome::Blocked,
            _ if self.attempt == 0 => Outcome::NotBegun,
            Call::Sufficient => Outcome::Suffices,
            Call::BackToStudy => Outcome::BackToStudy,
            Call::NotYet => Outcome::NotYet,
            Call::GoOn if self.closed => Outcome::ClosedEarly,
            Call::GoOn => Outcome::GoingOn,
        }
    }

    /// Whether the knowledge evidence suffices now. The work must still be seen and signed for by an instructor.
    #[must_use]
    pub fn suffices(&self) -> bool {
        self.state.call == Call::Sufficient
    }
}

/// What events prove of each competency, in the order of content; `unreadable` are stored events that could not be read.
#[must_use]
pub fn of_all<'a>(
    content: &'a Content,
    events: &[&Event],
    person: &str,
    unreadable: u32,
) -> Vec<(&'a Competency, Evidence)> {
    let placed = Placed::of(events.iter().copied());
    let of = |competency: &'a Competency| {
        let asked = Asked { unreadable, ..Asked::usual(content, person, competency) };
        (competency, evidence_among(&placed, &asked))
    };
    content.competencies.iter().map(of).collect()
}
