//! A diagnosis: tests done on a panel one after another, then the fault, its cause and its remedy.

use serde::{Deserialize, Serialize};

/// What a card has at hand: tests that can be done, and what can be named, by slug.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Offered {
    /// Tests: keys of probes.
    pub tests: Vec<String>,
    /// Faults.
    pub faults: Vec<String>,
    /// Causes.
    pub causes: Vec<String>,
    /// Remedies.
    pub remedies: Vec<String>,
}

impl Offered {
    /// The chance to name fault, cause and remedy blindly, "not enough is told" counted as one more of all choices. No
    /// test is done, which is never one too many.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "at most six of each")]
    pub fn guess(&self) -> f64 {
        1.0 / ((self.faults.len() * self.causes.len() * self.remedies.len()) as f64 + 1.0)
    }

    /// Whether a diagnosis holds nothing but what is offered.
    #[must_use]
    pub fn holds(&self, given: &Diagnosis) -> bool {
        given.tests.iter().all(|test| self.tests.contains(test))
            && self.faults.contains(&given.fault)
            && self.causes.contains(&given.cause)
            && self.remedies.contains(&given.remedy)
    }
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Diagnosis {
    /// Tests in the order in which they were done.
    pub tests: Vec<String>,
    /// The fault.
    pub fault: String,
    /// The cause that is looked at first.
    pub cause: String,
    /// What is done about it.
    pub remedy: String,
}

/// What a test was worth to a diagnosis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Worth {
    /// It was done, and the fault is not named without it.
    Needed,
    /// It was done, and the others tell enough.
    Needless,
    /// It was done, and the fault says nothing of it.
    Silent,
    /// It was not done, and without it the fault is not named.
    Missing,
}

/// A test of a diagnosis that was handed in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Weighed {
    /// Its key.
    pub test: String,
    /// What it was worth.
    pub worth: Worth,
}

/// An answer in the making.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Default)]
pub struct Named {
    /// Tests done so far, in their order.
    pub tests: Vec<String>,
    /// The test whose result is looked at.
    #[serde(default)]
    pub shown: Option<String>,
    /// The fault.
    pub fault: Option<String>,
    /// The cause.
    pub cause: Option<String>,
    /// The remedy.
    pub remedy: Option<String>,
}

impl Named {
    /// Whether nothing has been done yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Whether another one has the same tests done and names the same, whatever test is looked at.
    #[must_use]
    pub fn answers_as(&self, other: &Self) -> bool {
        let answer = |named: &Self| Self { shown: None, ..named.clone() };
        answer(self) == answer(other)
    }

    /// A test more, which is looked at. One that was done stays done, and is looked at again or no longer.
    #[must_use]
    pub fn tested(mut self, test: &str) -> Self {
        self.shown = Some(test.to_owned()).filter(|_| self.shown.as_deref() != Some(test));
        if !self.tests.iter().any(|done| done == test) {
            self.tests.push(test.to_owned());
        }
        self
    }

    /// The whole answer, once all is named.
    #[must_use]
    pub fn diagnosis(&self) -> Option<Diagnosis> {
        Some(Diagnosis {
            tests: self.tests.clone(),
            fault: self.fault.clone()?,
            cause: self.cause.clone()?,
            remedy: self.remedy.clone()?,
        })
    }
}
