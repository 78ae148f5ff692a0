//! For which competencies the answers to a set count as evidence.

use super::Set;
use crate::content::{Competency, Content, Hard, Purpose};
use crate::learn::check::COMPETENCIES_MOST;
use std::collections::BTreeSet;

/// The competencies for which answers to a set count: those that all families which bear on them are drawn from.
///
/// None for practice, since answers are told at once; for the same cards for all, since people tell each other; for easy
/// cards and for some tickets alone, since somebody who knows those situations and no others would pass more often than the
/// test allows. A part of the families is left out for the same reason: what is asked must not be picked by what is known.
/// None either where they are more than one check takes.
#[must_use]
pub fn counts_for<'a>(set: &Set, content: &'a Content) -> Vec<&'a Competency> {
    let mut all = bears_on(set, content);
    if all.len() > COMPETENCIES_MOST {
        all.clear();
    }
    all
}

/// The same, however many they are.
pub(super) fn bears_on<'a>(set: &Set, content: &'a Content) -> Vec<&'a Competency> {
    let task = &set.task;
    let may = task.purpose == Purpose::Check
        && task.same_seed.is_none()
        && task.hard != Hard::Easy
        && task.tickets.is_empty();
    if !may {
        return Vec::new();
    }
    let drawn: BTreeSet<&str> = task.families_of(content).iter().map(|family| family.id.as_str()).collect();
    let whole = |one: &&Competency| {
        let mut families = content.evidence_for(&one.slug).peekable();
        families.peek().is_some() && families.all(|family| drawn.contains(family.id.as_str()))
    };
    content.competencies.iter().filter(whole).collect()
}
