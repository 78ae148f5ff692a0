//! Sets that ship and fit a check.

use crate::content::{Competency, Content, ScenarioSet};

/// Competencies that one check takes at most: with more, a day asks for too many cards. Common practice, no source.
pub const COMPETENCIES_MOST: usize = 5;

/// A set and the competencies of its bands.
#[derive(Debug, Clone, PartialEq)]
pub struct Ready<'a> {
    /// The set.
    pub set: &'a ScenarioSet,
    /// What it checks.
    pub competencies: Vec<&'a Competency>,
}

/// The sets whose bands have competencies, and no more than one check takes.
#[must_use]
pub fn ready_sets(content: &Content) -> Vec<Ready<'_>> {
    let mut ready = Vec::new();
    for set in &content.sets {
        let of_set = content.competencies.iter().filter(|one| set.stages.contains(&one.band));
        ready.push(Ready { set, competencies: of_set.collect() });
    }
    ready.retain(|ready| (1..=COMPETENCIES_MOST).contains(&ready.competencies.len()));
    ready
}
