//! Competencies: what a person may do alone once it is signed for, and what must be seen before it is.

use crate::rules::term::Stage;
use crate::terms;
use serde::{Deserialize, Serialize};

terms! {
    /// How strictly the knowledge for a competency is asked.
    Profile {
        /// A mistake can hurt people.
        Safety = "safety",
        /// A mistake costs work or time.
        Ordinary = "ordinary",
    }
    /// What an employer must have on file for a person. Text: `on-file.<slug>`.
    OnFile {
        /// A medical clearance to wear a respirator: 29 CFR 1910.134(e)(1).
        MedicalClearance = "medical-clearance",
        /// A fit test of this person with this mask, at least yearly: 29 CFR 1910.134(f)(2).
        FitTest = "fit-test",
        /// A programme for exposure and health that covers the hardener. Common practice, no source.
        ExposureProgramme = "exposure-programme",
    }
}

/// A competency. Texts: `competency.<slug>` its name, `may.<slug>` what the holder may do, and for some
/// `competency-note.<slug>`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Competency {
    /// Slug; card families name the competencies they give knowledge evidence for by it.
    pub slug: String,
    /// How strictly its knowledge is asked.
    pub profile: Profile,
    /// The band of the board it belongs to; a band is stamped once all its competencies are signed for.
    pub band: Stage,
    /// Slugs of those that are signed for before it.
    #[serde(default)]
    pub needs: Vec<String>,
    /// Slugs of those whose knowledge evidence comes before it.
    #[serde(default)]
    pub needs_knowledge: Vec<String>,
    /// What must be on file besides.
    #[serde(default)]
    pub on_file: Vec<OnFile>,
    /// Demonstrations on real work, each by the criteria.
    pub demonstrations: u32,
    /// Separate days on which they lie, at most as many as demonstrations.
    pub days: u32,
    /// Months until it is shown anew.
    pub expires_months: u32,
    /// What is seen at each demonstration, one by one.
    pub criteria: Vec<Criterion>,
}

impl Competency {
    /// Longest time until it is shown anew, months.
    pub const EXPIRES_MOST: u32 = 36;
    /// The same where a mistake can hurt people.
    pub const EXPIRES_MOST_SAFETY: u32 = 24;
    /// Most demonstrations that are asked for.
    pub const DEMONSTRATIONS_MOST: u32 = 10;

    /// Months after which it is shown anew at the latest. Common practice, no source.
    #[must_use]
    pub const fn expires_most(&self) -> u32 {
        match self.profile {
            Profile::Safety => Self::EXPIRES_MOST_SAFETY,
            Profile::Ordinary => Self::EXPIRES_MOST,
        }
    }
}

/// One thing that is seen at a demonstration, answered yes or no. Text: `criterion.<id>`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Criterion {
    /// Id: the slug of the competency and a number.
    pub id: String,
    /// Whether the demonstration fails where it fails.
    pub critical: bool,
}
