//! What the answers to a set come to, by its pass rule.

use super::Set;
use crate::card::Mark;
use crate::content::Content;
use crate::record::Entry;
use crate::rules::term::Severity;

/// What answers come to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outcome<'a> {
    /// Right answers.
    pub right: u32,
    /// Cards that were answered.
    pub answered: u32,
    /// Answers about safety that were wrong and would have been done on the job.
    pub dangerous: Vec<&'a str>,
    /// Whether the set is passed; none where it has no rule.
    pub passed: Option<bool>,
}

/// What the answers of one attempt at a set come to. Partly right is wrong.
#[must_use]
pub fn outcome<'a>(set: &Set, content: &Content, answers: &[&'a Entry]) -> Outcome<'a> {
    let about_safety =
        |entry: &Entry| content.family(&entry.family).is_some_and(|one| one.severity == Severity::Safety);
    let count = |of: usize| u32::try_from(of).unwrap_or(u32::MAX);
    let right = count(answers.iter().filter(|entry| entry.mark == Mark::Right).count());
    let dangerous = answers.iter().filter(|entry| entry.sure_and_wrong() && about_safety(entry));
    let dangerous: Vec<&str> = dangerous.map(|entry| entry.family.as_str()).collect();
    let passed = set.task.pass.map(|rule| right >= rule.right && (!rule.safety || dangerous.is_empty()));
    Outcome { right, answered: count(answers.len()), dangerous, passed }
}
