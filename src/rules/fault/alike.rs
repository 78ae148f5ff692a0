//! Look-alikes: two faults that are taken for each other, and the probe that decides between them.

use super::Fault;
use super::observe::{Observation, agrees, speaks_of};
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

/// What one observation says of two faults that are taken for each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reading<'a> {
    /// It is this one: it shows this, the other one does not.
    Is(&'a Fault),
    /// Either still: both show this, or one of them may show anything there.
    Either,
    /// Neither: both show something else there.
    Neither,
}

/// Reads an observation on a work that has one of two faults.
#[must_use]
pub fn read<'a>(a: &'a Fault, b: &'a Fault, observed: &Observation<'_>) -> Ruling<Reading<'a>> {
    let key = observed.probe.key;
    let shows = |fault| speaks_of(fault, key).then(|| agrees(fault, key, observed.answer));
    let reading = match (shows(a), shows(b)) {
        (Some(true), Some(false)) => Reading::Is(a),
        (Some(false), Some(true)) => Reading::Is(b),
        (Some(false), Some(false)) => Reading::Neither,
        _ => Reading::Either,
    };
    Ruling::by("fault.probe-decides-look-alikes", reading)
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
