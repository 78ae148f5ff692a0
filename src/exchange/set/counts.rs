//! For which competencies the answers to a set count as evidence, and why for none.

use super::Set;
use crate::content::{Competency, Content, Hard, Purpose, Task};
use crate::learn::check::COMPETENCIES_MOST;
use crate::terms;
use std::collections::BTreeSet;

terms! {
    /// Why answers to a set count for nothing. Text: `app.sets.counts-not.<slug>`.
    CountsNot {
        /// It is practice: answers are told at once.
        Practice = "practice",
        /// All get the same cards, and people tell each other.
        SameCards = "same-cards",
        /// Its cards are easy ones: somebody who knows those would pass more often than the test allows.
        Easy = "easy",
        /// It asks about some tickets alone, for the same reason.
        Tickets = "tickets",
        /// No competency has all families in it that bear on it: what is asked must not be picked by what is known.
        Part = "part",
        /// It bears on more competencies than one check takes.
        TooMany = "too-many",
    }
}

/// The competencies for which answers to a set count: those that all families which bear on them are drawn from.
///
/// None where [`counts_not`] has a reason.
#[must_use]
pub fn counts_for<'a>(set: &Set, content: &'a Content) -> Vec<&'a Competency> {
    if counts_not(set, content).is_empty() { whole(&set.task, content) } else { Vec::new() }
}

/// All reasons why answers to a set count for nothing; empty where they count.
#[must_use]
pub fn counts_not(set: &Set, content: &Content) -> Vec<CountsNot> {
    let whole = whole(&set.task, content).len();
    let mut reasons = barred(&set.task);
    reasons.extend((whole == 0).then_some(CountsNot::Part));
    reasons.extend((whole > COMPETENCIES_MOST).then_some(CountsNot::TooMany));
    reasons
}

/// The competencies for which answers would count, were they not too many.
pub(super) fn bears_on<'a>(set: &Set, content: &'a Content) -> Vec<&'a Competency> {
    if barred(&set.task).is_empty() { whole(&set.task, content) } else { Vec::new() }
}

/// What keeps answers from counting, whichever families are drawn.
fn barred(task: &Task) -> Vec<CountsNot> {
    let bars = [
        (task.purpose != Purpose::Check, CountsNot::Practice),
        (task.same_seed.is_some(), CountsNot::SameCards),
        (task.hard == Hard::Easy, CountsNot::Easy),
        (!task.tickets.is_empty(), CountsNot::Tickets),
    ];
    bars.into_iter().filter_map(|(is_so, why)| is_so.then_some(why)).collect()
}

/// The competencies that all families which bear on them are drawn from.
fn whole<'a>(task: &Task, content: &'a Content) -> Vec<&'a Competency> {
    let drawn: BTreeSet<&str> = task.families_of(content).iter().map(|family| family.id.as_str()).collect();
    let whole = |one: &&Competency| {
        let mut families = content.evidence_for(&one.slug).peekable();
        families.peek().is_some() && families.all(|family| drawn.contains(family.id.as_str()))
    };
    content.competencies.iter().filter(whole).collect()
}
