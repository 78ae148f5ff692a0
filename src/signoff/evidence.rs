//! What a sign-off rests on.

use crate::terms;

terms! {
    /// Kinds of evidence; the slug is the `genre` of Open Badges.
    Genre {
        /// What the cards showed, in words.
        Knowledge = "Knowledge evidence",
        /// Why it was signed though the cards did not show enough.
        Reason = "Reason for signing without it",
        /// Work that an assessor watched.
        Observation = "Direct observation",
    }
    /// Whether the knowledge evidence was sufficient; the slug is the result status of Open Badges.
    Knowledge {
        /// It was.
        Sufficient = "Completed",
        /// It was not: signed all the same, for a reason that stands in the evidence.
        Insufficient = "InProgress",
    }
}

/// A piece of evidence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Evidence {
    /// Which kind.
    pub genre: Genre,
    /// A heading.
    pub name: String,
    /// What was seen.
    pub narrative: String,
}

/// A criterion that the assessor judged, yes or no.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Criterion {
    /// Its id in the competency.
    pub id: String,
    /// What was asked for.
    pub text: String,
    /// Whether it was seen.
    pub met: bool,
}
