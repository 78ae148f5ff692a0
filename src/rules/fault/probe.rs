//! A probe: a look, a question or a test done on the work that tells faults apart.

use serde::{Deserialize, Serialize};

/// What a probe costs. Our estimates: common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Effort {
    /// Minutes that it takes, over 0.
    pub minutes: f64,
    /// Minutes that mending its mark takes; 0 where it leaves none.
    #[serde(default)]
    pub mend_minutes: f64,
}

impl Effort {
    /// Whether it leaves a mark on the work.
    #[must_use]
    pub fn marks_the_work(self) -> bool {
        self.mend_minutes > 0.0
    }

    /// Minutes for the probe and for mending its mark.
    #[must_use]
    pub fn all_minutes(self) -> f64 {
        self.minutes + self.mend_minutes
    }
}

/// A question that the work can be asked. Texts: `fact.<key>` what is observed, `probe.<key>` how it is done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Probe<'a> {
    /// Key of the question, a fact of `content/facts/`.
    pub key: &'a str,
    /// The answers it can have, at least two.
    pub answers: &'a [String],
    /// What it costs.
    pub effort: Effort,
}
