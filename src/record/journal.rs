//! The journal: every answer that was handed in, in order. Entries are added, never changed.
//!
//! A card is named by family, version, seed and shop sheet, so that the situation can be dealt again and is not stored.

use super::Certainty;
use crate::card::{Answer, Card, Mark};
use crate::content::Content;
use crate::rules::sheet::Sheet;
use crate::rules::sorted::sorted;
use crate::rules::term::Stage;
use serde::{Deserialize, Serialize};

/// A shop sheet by name and by its values.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SheetName {
    /// Slug of the sheet.
    pub slug: String,
    /// Hash of its values.
    pub hash: String,
}

impl SheetName {
    /// Names a sheet.
    #[must_use]
    pub fn of(sheet: &Sheet) -> Self {
        Self { slug: sheet.slug.clone(), hash: sheet.hash() }
    }
}

/// One answer handed in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// Place in the journal of this device, from 1, without gaps.
    pub sequence: u64,
    /// Random name of the device.
    pub device: String,
    /// When, as ISO 8601 text in universal time. Order is told by `sequence`, since clocks go wrong.
    pub at: String,
    /// Who; empty where no name was given.
    pub person: String,
    /// Card family.
    pub family: String,
    /// Its version.
    pub version: u32,
    /// Seed of the card.
    pub seed: u32,
    /// Shop sheet it was dealt on.
    pub sheet: SheetName,
    /// What was answered.
    pub answer: Answer,
    /// How far the person would have gone on it.
    pub certainty: Certainty,
    /// The mark it got.
    pub mark: Mark,
}

impl Entry {
    /// Whether it was wrong and would have been done on the job. Whoever says that not enough is told does nothing to
    /// the work.
    #[must_use]
    pub fn sure_and_wrong(&self) -> bool {
        self.mark != Mark::Right && self.certainty == Certainty::OnTheJob && self.answer != Answer::NotEnough
    }

    /// Whether the entry answers that card.
    #[must_use]
    pub fn is_of(&self, card: &Card) -> bool {
        self.family == card.family
            && self.version == card.version
            && self.seed == card.seed
            && self.sheet.hash == card.sheet
    }
}

/// Entries in the order of their sequence numbers.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Journal(Vec<Entry>);

impl Journal {
    /// A journal from stored entries, in any order.
    #[must_use]
    pub fn new(entries: Vec<Entry>) -> Self {
        Self(sorted(entries, |a, b| a.sequence.cmp(&b.sequence)))
    }

    /// The entries, oldest first.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        &self.0
    }

    /// The sequence number that the next entry gets.
    #[must_use]
    pub fn next_sequence(&self) -> u64 {
        self.0.last().map_or(1, |entry| entry.sequence + 1)
    }

    /// The same journal with one more entry.
    #[must_use]
    pub fn with(&self, entry: Entry) -> Self {
        let mut entries = self.0.clone();
        entries.push(entry);
        Self::new(entries)
    }

    /// The entry of that number.
    #[must_use]
    pub fn find(&self, sequence: u64) -> Option<&Entry> {
        self.0.iter().find(|entry| entry.sequence == sequence)
    }

    /// One person's entries, oldest first.
    pub fn of<'a>(&'a self, person: &'a str) -> impl DoubleEndedIterator<Item = &'a Entry> {
        self.0.iter().filter(move |entry| entry.person == person)
    }

    /// One person's entries of a stage, oldest first.
    #[must_use]
    pub fn of_stage<'a>(&'a self, content: &Content, person: &'a str, stage: Stage) -> Vec<&'a Entry> {
        let in_stage = |entry: &&Entry| content.family(&entry.family).is_some_and(|one| one.stage == stage);
        self.of(person).filter(in_stage).collect()
    }

    /// Everyone who answered, each once, in the order of their first answer.
    #[must_use]
    pub fn people(&self) -> Vec<&str> {
        let mut people: Vec<&str> = Vec::new();
        for entry in &self.0 {
            if !entry.person.is_empty() && !people.contains(&entry.person.as_str()) {
                people.push(&entry.person);
            }
        }
        people
    }
}
