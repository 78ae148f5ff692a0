//! What an assessor wants to sign, before anybody has looked whether it may be.

use super::{Criterion, ShopNumber, When};
use crate::content::Competency;
use crate::learn::mastery::Call;
use crate::record::{Filed, LocalDate};

/// A heading and what is told under it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// The heading.
    pub name: String,
    /// The text.
    pub narrative: String,
}

/// A competency in words, as they will stand on the sign-off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wording {
    /// Which wording of its criteria, such as `1`.
    pub version: String,
    /// What it is called.
    pub name: String,
    /// What it is.
    pub description: String,
    /// When it is reached.
    pub criteria: String,
}

/// What an assessor wants to sign.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Request<'a> {
    /// Name of the sign-off, see [`super::credential_id`].
    pub id: String,
    /// Whose work.
    pub subject: ShopNumber,
    /// What for; how strictly it is asked is read from here and not from the words.
    pub competency: &'a Competency,
    /// How the competency is worded.
    pub wording: Wording,
    /// Slugs of the competencies that stand signed for this person today.
    pub held: Vec<String>,
    /// Slugs of those whose knowledge evidence is sufficient.
    pub known: Vec<String>,
    /// What the knowledge evidence comes to.
    pub call: Call,
    /// Critical mistakes that are not lifted.
    pub open_critical: u32,
    /// The knowledge evidence in words.
    pub knowledge: Told,
    /// Why it is signed though the knowledge evidence is not sufficient.
    pub reason: Option<Told>,
    /// Every criterion of the competency, judged, in any order. One that is not critical may fail at a demonstration; to be
    /// signed it was seen met at another.
    pub criteria: Vec<Criterion>,
    /// Work that was watched.
    pub observed: Vec<Demonstration>,
    /// Demonstrations on which assessors disagree about a critical criterion: they talk it over before anybody signs.
    pub unsettled: u32,
    /// What the employer has on file for this person. It is asked for and does not stand on the sign-off: it tells of a person's
    /// health.
    pub on_file: Vec<Filed>,
    /// Now.
    pub at: When,
    /// The day in the shop, at most one from that of `at`.
    pub today: LocalDate,
    /// When it runs out, at most the months of the competency later.
    pub until: When,
}

/// A demonstration on real work that was watched.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Demonstration {
    /// The day in the shop.
    pub on: LocalDate,
    /// What was seen.
    pub told: Told,
}

impl Demonstration {
    /// With its day in the heading, as it is signed.
    pub(super) fn dated(self) -> Told {
        Told { name: format!("{}: {}", self.on, self.told.name), ..self.told }
    }
}
