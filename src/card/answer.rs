//! What can be answered.

use super::diagnosis::Diagnosis;
use crate::quantity::Measure;
use crate::spraying::Run;
use serde::{Deserialize, Serialize};

/// A place on a panel, mm from its left and its top edge.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// From the left.
    pub x_mm: f32,
    /// From the top.
    pub y_mm: f32,
}

/// An answer to a card.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Answer {
    /// "Not enough is told."
    NotEnough,
    /// One term.
    Term(String),
    /// A number with its unit.
    Number(Measure),
    /// All terms that apply, in no order.
    Terms(Vec<String>),
    /// Terms in order.
    Order(Vec<String>),
    /// A place on a panel, mm from its left and its top edge.
    Place(Place),
    /// Any place on the fault that a panel shows.
    OnTheFault,
    /// Tests done, and the fault, cause and remedy named after them.
    Diagnosis(Diagnosis),
    /// A face sprayed.
    Run(Run),
    /// Any run that passes on the face that a card shows.
    GoodRun,
}

impl Answer {
    /// A term from its slug.
    #[must_use]
    pub fn term(slug: &str) -> Self {
        Self::Term(slug.to_owned())
    }

    /// The place that it points at; `None` for an answer of another kind.
    #[must_use]
    pub const fn place(&self) -> Option<Place> {
        if let Self::Place(place) = self { Some(*place) } else { None }
    }

    /// The run that it is; `None` for an answer of another kind.
    #[must_use]
    pub const fn run(&self) -> Option<&Run> {
        if let Self::Run(run) = self { Some(run) } else { None }
    }

    /// Whether two answers say the same: terms in any order, numbers within the tolerance of their quantity.
    #[must_use]
    pub fn agrees(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Terms(a), Self::Terms(b)) => {
                a.len() == b.len()
                    && a.iter().all(|term| b.contains(term))
                    && b.iter().all(|term| a.contains(term))
            }
            (Self::Number(a), Self::Number(b)) => super::tolerance::agree(*a, *b),
            (a, b) => a == b,
        }
    }
}
