//! An apprentice of the tablet that made the file.

use crate::people::Member;
use serde::{Deserialize, Serialize};

/// By which number and name the tablet knows whose events stand under a name in its journal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Named {
    /// What the events stand under.
    pub journal: String,
    /// Shop number.
    pub number: String,
    /// Name.
    pub name: String,
}

impl From<&Member> for Named {
    fn from(member: &Member) -> Self {
        Self {
            journal: member.journal.clone(),
            number: member.number.text().to_owned(),
            name: member.name.clone(),
        }
    }
}
