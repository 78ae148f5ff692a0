//! Sets that ship and fit a check.

use crate::content::{Competency, Content, ScenarioSet, Task};

/// Competencies that one check takes at most: with more, a day asks for too many cards. Common practice, no source.
pub const COMPETENCIES_MOST: usize = 5;

/// A set and the competencies that it names, itself or by their bands.
#[derive(Debug, Clone, PartialEq)]
pub struct Ready<'a> {
    /// The set.
    pub set: &'a ScenarioSet,
    /// What it checks.
    pub competencies: Vec<&'a Competency>,
}

/// The sets that name competencies, and no more than one check takes.
#[must_use]
pub fn ready_sets(content: &Content) -> Vec<Ready<'_>> {
    let mut ready = Vec::new();
    for set in &content.sets {
        let Task { stages, competencies, .. } = &set.task;
        let named = |one: &&Competency| stages.contains(&one.band) || competencies.contains(&one.slug);
        ready.push(Ready { set, competencies: content.competencies.iter().filter(named).collect() });
    }
    ready.retain(|ready| (1..=COMPETENCIES_MOST).contains(&ready.competencies.len()));
    ready
}
