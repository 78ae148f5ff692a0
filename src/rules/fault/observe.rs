//! What is observed on the work, and how likely a fault is to look so.
//!
//! A question is put to the work (a probe) and has a closed list of answers. A fault names the answers that fit it.
//! With the share [`MISREAD`] of observations misread, the chance to see answer `a` of a question with `k` answers on
//! fault `f` that names `n` of them is
//!
//! - `(1 - MISREAD) / n` where `f` names `a`,
//! - `MISREAD / (k - n)` where it names others,
//! - `1 / k` where it names none of the question or all of it: then the answer tells nothing about it.

use super::Fault;
use super::probe::Probe;
use std::collections::BTreeMap;

/// Share of observations that are misread or that the fault at hand does not show as described. Our estimate: common
/// practice, no source.
pub const MISREAD: f64 = 0.1;

/// What a fault shows: by the key of the question, the answers that fit it.
pub type Seen = BTreeMap<String, Vec<String>>;

/// One thing observed: a question and what the work answered.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Observation<'a> {
    /// The question.
    pub probe: Probe<'a>,
    /// The answer, one of the question's.
    pub answer: &'a str,
}

/// The answers that a fault names to a question; none where it does not speak of it.
fn named<'a>(fault: &'a Fault, key: &str) -> &'a [String] {
    fault.seen.get(key).map_or(&[], Vec::as_slice)
}

/// Whether a fault speaks of a question.
#[must_use]
pub fn speaks_of(fault: &Fault, key: &str) -> bool {
    !named(fault, key).is_empty()
}

/// Whether a fault names an answer as its own.
#[must_use]
pub fn agrees(fault: &Fault, key: &str, answer: &str) -> bool {
    named(fault, key).iter().any(|one| one == answer)
}

/// A small number of things, exact as a float.
pub(super) fn count(things: usize) -> f64 {
    u32::try_from(things).map_or(f64::INFINITY, f64::from)
}

/// What a fault tells of one question: looked up once for all answers of it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Look<'a> {
    named: &'a [String],
    /// Answers of the question.
    all: usize,
}

impl<'a> Look<'a> {
    pub(super) fn of(fault: &'a Fault, probe: &Probe<'_>) -> Self {
        Self { named: named(fault, probe.key), all: probe.answers.len() }
    }

    /// See [`likelihood`].
    pub(super) fn likelihood(self, answer: &str) -> f64 {
        let (all, fits) = (self.all, self.named.len());
        if fits == 0 || fits >= all {
            1.0 / count(all.max(1))
        } else if self.named.iter().any(|one| one == answer) {
            (1.0 - MISREAD) / count(fits)
        } else {
            MISREAD / count(all - fits)
        }
    }
}

/// Chance, over 0 and up to 1, to see an answer of a question on a fault; over the answers of the question it sums to 1.
#[must_use]
pub fn likelihood(fault: &Fault, probe: &Probe<'_>, answer: &str) -> f64 {
    Look::of(fault, probe).likelihood(answer)
}
