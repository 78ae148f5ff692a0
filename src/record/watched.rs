//! What an assessor writes down of a person: work that was watched, papers on file, and what of it was entered wrongly.

use super::{LocalDate, Stamp};
use crate::content::OnFile;
use crate::terms;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

terms! {
    /// How a criterion was judged at a demonstration. Text: `app.assess.judged.<slug>`.
    Judged {
        /// It was seen, and met.
        Met = "met",
        /// It was seen, and not met yet.
        NotYet = "not-yet",
        /// It was not seen this time.
        NotSeen = "not-seen",
    }
}

/// An assessor by the number and the name that the shop's trust list had for them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AssessorName {
    /// Shop number.
    pub number: String,
    /// Name.
    pub name: String,
}

/// Work that an assessor watched, criterion by criterion.
///
/// An assessor who has talked a demonstration over with the other one may write it down again under the same occasion: their
/// first judgement tells how assessors agree, their last one counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Observed {
    /// Where and when it was written down, and whose work it was.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// Shop number of whoever did the work; `stamp.person` is what their events stand under on this tablet.
    pub subject: String,
    /// Slug of the competency.
    pub competency: String,
    /// Random name of the demonstration; two assessors who watched the same one share it.
    pub occasion: String,
    /// The day of the work in the shop.
    pub on: LocalDate,
    /// Whether it was written on paper then and is typed in now.
    #[serde(default, skip_serializing_if = "is_false")]
    pub paper: bool,
    /// Which work it was, such as a job ticket.
    pub work: String,
    /// Whether it was done alone; work that was prompted or helped with does not count.
    pub alone: bool,
    /// Each criterion by its id; one that is missing was not seen.
    pub judged: BTreeMap<String, Judged>,
    /// What else was seen.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Seconds on the stopwatch; none where it was not used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seconds: Option<u32>,
    /// Who watched.
    pub by: AssessorName,
}

#[allow(clippy::trivially_copy_pass_by_ref, reason = "serde hands a reference")]
const fn is_false(value: &bool) -> bool {
    !*value
}

impl Observed {
    /// How a criterion was judged.
    #[must_use]
    pub fn of(&self, criterion: &str) -> Judged {
        self.judged.get(criterion).copied().unwrap_or(Judged::NotSeen)
    }
}

/// A paper that the employer has on file. What it says of a person's health is no part of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Filed {
    /// What.
    pub what: OnFile,
    /// Its day.
    pub on: LocalDate,
    /// From this day on it no longer holds.
    pub until: LocalDate,
}

/// Months after which a fit test is made anew at the latest: 29 CFR 1910.134(f)(2).
const FIT_TEST_MONTHS: u32 = 12;

impl Filed {
    /// Whether it is in force on a day.
    #[must_use]
    pub fn in_force(&self, day: LocalDate) -> bool {
        let last = match self.what {
            OnFile::FitTest => self.on.plus_months(FIT_TEST_MONTHS),
            OnFile::MedicalClearance | OnFile::ExposureProgramme => None,
        };
        self.on <= day && day < self.until && last.is_none_or(|last| day < last)
    }
}

/// An assessor saw a paper that the employer has on file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Filing {
    /// Where and when it was written down, and about whom.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// Shop number of whom it is about.
    pub subject: String,
    /// The paper.
    #[serde(flatten)]
    pub filed: Filed,
    /// Who saw it.
    pub by: AssessorName,
}

/// An event by its name among those of all devices.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EventName {
    /// Random name of the device.
    pub device: String,
    /// Its number there.
    pub sequence: u64,
}

/// An observation or a filing was entered wrongly and is struck out; it stays stored and is shown as struck out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Struck {
    /// Where, when and about whom.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// Shop number of whom it is about.
    pub subject: String,
    /// What is struck out.
    pub strikes: EventName,
    /// Why.
    pub reason: String,
    /// Who strikes it out.
    pub by: AssessorName,
}
