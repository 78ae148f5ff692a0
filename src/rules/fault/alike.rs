//! Look-alikes: two faults that are taken for each other, and the probe that decides between them.

use super::Fault;
use super::observe::{agrees, speaks_of};
use crate::rules::term::Provenance;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use serde::{Deserialize, Serialize};

/// Two faults that look alike. What each of them shows stands with the fault; so the probe decides where both speak of it
/// and share no answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pair {
    /// Id.
    pub id: String,
    /// One fault.
    pub a: String,
    /// The other fault.
    pub b: String,
    /// Keys of the questions that decide, the first one before all others.
    pub probes: Vec<String>,
    /// Whether what decides was read in the sources, or is common practice.
    pub provenance: Provenance,
    /// Codes of the sources, listed at the head of the file of faults.
    pub source: String,
}

impl Pair {
    /// The other fault of the pair, where one of it is given.
    #[must_use]
    pub fn other(&self, fault: &str) -> Option<&str> {
        match fault {
            one if one == self.a => Some(&self.b),
            one if one == self.b => Some(&self.a),
            _ => None,
        }
    }
}

/// Whether a question tells two faults apart: both name answers and no answer is named by both.
#[must_use]
pub fn separates(a: &Fault, b: &Fault, key: &str) -> bool {
    let apart = |of_a: &Vec<String>| speaks_of(b, key) && !of_a.iter().any(|answer| agrees(b, key, answer));
    speaks_of(a, key) && a.seen.get(key).is_some_and(apart)
}

/// The probe that decides between two faults that are taken for each other.
///
/// # Errors
/// [`CannotJudge`] when no such pair is known.
pub fn deciding_probe(pairs: &[Pair], a: &str, b: &str) -> Judged<String> {
    let pair = pairs.iter().find(|pair| pair.other(a) == Some(b));
    let probe = pair.and_then(|pair| pair.probes.first()).ok_or_else(|| CannotJudge::without("probe"))?;
    Ok(Ruling::by("fault.probe-decides-look-alikes", probe.clone()))
}
