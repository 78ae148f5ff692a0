//! What mends a fault on the work, as operations.

use crate::rules::fault::Rework;
use crate::rules::sequence::operation::Operation;
use serde::{Deserialize, Serialize};

/// Operations that mend a fault, in their order. Other work may lie between them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mend {
    /// Name of the entry.
    pub slug: String,
    /// The faults it is for; with none, all of that rework which no other entry names.
    #[serde(default)]
    pub faults: Vec<String>,
    /// The rework it is for, 1 to 4 as in the faults.
    #[serde(default)]
    pub rework: Option<Rework>,
    /// What is done.
    pub steps: Vec<MendStep>,
}

/// A step of mending.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MendStep {
    /// The part is stripped to the wood.
    Strip,
    /// The operation that made the fault is done again.
    Again,
    /// That operation.
    Do(Operation),
}
