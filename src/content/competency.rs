//! Competencies: what a person may do alone once it is signed for.

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
}

/// A competency. Text: `competency.<slug>`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Competency {
    /// Slug; card families name the competencies they give knowledge evidence for by it.
    pub slug: String,
    /// How strictly its knowledge is asked.
    pub profile: Profile,
}
