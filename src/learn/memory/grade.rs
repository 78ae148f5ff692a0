//! What an answer is worth to memory. Nobody rates himself: it follows from whether the answer was right, how certain it
//! was and how long it took.

use super::earlier::SECONDS_MOST;
use super::{Answered, Earlier};
use crate::record::Certainty;
use serde::{Deserialize, Serialize};

/// Times the usual time above which an answer was slow (common practice, no source).
const SLOW_TIMES: u32 = 2;
/// Answers of a family before one may be solid: a first one would earn eight days untested (common practice, no source).
const TRIED_LEAST: usize = 2;

/// The worth of an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Grade {
    /// Wrong: comes back tomorrow.
    Missed,
    /// Right, but not sure, slow or with help: soon again.
    Shaky,
    /// Right: on course.
    Steady,
    /// Right, sure and not slow, and not for the first time: later.
    Solid,
}

impl Grade {
    /// The number that the model reckons with, 1 to 4.
    #[must_use]
    pub const fn number(self) -> f64 {
        match self {
            Self::Missed => 1.0,
            Self::Shaky => 2.0,
            Self::Steady => 3.0,
            Self::Solid => 4.0,
        }
    }
}

/// The grade of an answer; `earlier` are the same person's answers of the same family before it.
///
/// A lucky answer earns no long interval, so low certainty is never more than shaky. Haste earns nothing; only slowness
/// counts, and only where the usual time is known.
#[must_use]
pub fn graded(answer: &Answered, earlier: &Earlier) -> Grade {
    let slow = is_slow(answer, earlier);
    match answer.certainty {
        _ if !answer.right => Grade::Missed,
        _ if answer.helped => Grade::Shaky,
        Certainty::AskFirst => Grade::Shaky,
        Certainty::TestBoard if slow => Grade::Shaky,
        Certainty::OnTheJob if !slow && earlier.answers() >= TRIED_LEAST => Grade::Solid,
        Certainty::TestBoard | Certainty::OnTheJob => Grade::Steady,
    }
}

/// Whether it took more than twice the median of the right answers before it.
fn is_slow(answer: &Answered, earlier: &Earlier) -> bool {
    let usual = answer.active_seconds.zip(earlier.twice_usual_seconds());
    usual.is_some_and(|(seconds, twice)| 2 * seconds.min(SECONDS_MOST) > SLOW_TIMES * twice)
}
