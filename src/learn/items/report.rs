//! What the first answers of checks say of people, of card families and of sets.

use super::{ASKED_LEAST, Flag, Item, OptionUse, Plan, Reliability};
use crate::content::Content;
use crate::record::{Event, EventName};
use std::collections::BTreeMap;

/// Share of right answers that passes, for how sure passing is. Common practice, no source.
pub(super) const CUT_SHARE: f64 = 0.8;

/// What answers say.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// Answers that were read.
    pub answers: usize,
    /// Those that count here: the first of a person to a family in its present version, in a check and without help, unless its
    /// card or its set was found wrong since.
    pub counted: usize,
    /// People, by name.
    pub people: Vec<PersonReport>,
    /// Families, those to look at first: with most flags, then the hardest.
    pub families: Vec<FamilyReport>,
    /// Sets, by name.
    pub sets: Vec<SetReport>,
}

/// What answers say of a person.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PersonReport {
    /// As they stand in the journal.
    pub person: String,
    /// Answers that count.
    pub answers: usize,
    /// Right ones among them.
    pub right: usize,
    /// Those that were wrong and would have been done on the job.
    pub sure_and_wrong: usize,
}

/// What answers say of a card family.
#[derive(Debug, Clone, PartialEq)]
pub struct FamilyReport {
    /// The family.
    pub family: String,
    /// Its version: another one is another item.
    pub version: u32,
    /// How hard it is, and whether it goes with the rest.
    pub item: Item,
    /// Mean luck at the cards that were answered, where it is known.
    pub luck: Option<f64>,
    /// Answers that were wrong and would have been done on the job.
    pub sure_and_wrong: usize,
    /// What was misread, by the slip's id, and how often; told of cards on shop sheets that are known here.
    pub slips: BTreeMap<String, usize>,
    /// Answers whose card cannot be dealt again here: on a shop sheet that is not known, or of a family that has changed.
    pub undealt: usize,
    /// Who takes which option, the right one first; nothing where a card has none.
    pub options: Vec<OptionUse>,
    /// Why to look at it.
    pub flags: Vec<Flag>,
    /// An answer to look at: one that was wrong and sure where there is one, else a wrong one, else any.
    pub example: EventName,
}

impl FamilyReport {
    /// Whether so many were asked that anything is told of it.
    #[must_use]
    pub const fn is_told(&self) -> bool {
        self.item.asked >= ASKED_LEAST
    }

    /// Whether it is to be looked at before others.
    #[must_use]
    pub const fn to_look_at(&self) -> bool {
        self.is_told() && !self.flags.is_empty()
    }
}

/// What answers say of a set.
#[derive(Debug, Clone, PartialEq)]
pub struct SetReport {
    /// The set.
    pub set: String,
    /// How far it agrees with itself, over those who were asked every family of it that anybody was asked.
    pub reliability: Option<Reliability>,
}

/// What events say, those of several tablets as they were merged.
#[must_use]
pub fn report(content: &Content, events: &[Event]) -> Report {
    let plan = Plan::of(events);
    plan.report((0..plan.families()).filter_map(|nth| plan.family(content, nth)).collect())
}
