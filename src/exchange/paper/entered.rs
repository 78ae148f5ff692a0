//! What of a worksheet was typed in before, so that no answer is entered twice.

use super::PaperCode;
use crate::card::Mark;
use crate::record::{Journal, Within};
use std::collections::BTreeMap;

/// The cards of a worksheet that were typed in before, by family and seed, and the marks they got.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Entered(BTreeMap<(String, u32), Mark>);

impl Entered {
    /// Those of a person's worksheet of a set. Worksheets without a name may share a code, so the person counts too.
    #[must_use]
    pub fn of(journal: &Journal, person: &str, set: &str, code: &PaperCode) -> Self {
        let within = Within::Paper { set: set.to_owned(), code: code.to_string() };
        let of_it = journal.answers().filter(|entry| entry.within == within && entry.stamp.person == person);
        Self(of_it.map(|entry| ((entry.family.clone(), entry.seed), entry.mark)).collect())
    }

    /// How many.
    #[must_use]
    pub fn count(&self) -> usize {
        self.0.len()
    }

    /// How many of them were right.
    #[must_use]
    pub fn right(&self) -> usize {
        self.0.values().filter(|mark| **mark == Mark::Right).count()
    }

    /// The place of the first card, from `from` on, that is not among them; the number of cards where there is none.
    #[must_use]
    pub fn next(&self, cards: &[(String, u32)], from: usize) -> usize {
        let new = |(_, card): &(usize, &(String, u32))| !self.0.contains_key(*card);
        cards.iter().enumerate().skip(from).find(new).map_or(cards.len(), |(place, _)| place)
    }
}
