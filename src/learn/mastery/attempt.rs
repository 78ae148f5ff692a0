//! One attempt: which answers count, and on which days.

use super::{Guess, Standard, Walk};
use std::collections::{BTreeMap, BTreeSet};

/// An answer in an attempt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Answer {
    /// Luck at its card.
    pub guess: Guess,
    /// Whether it was right.
    pub right: bool,
    /// Local calendar day, counted from any day; none where it is not known: then the answer makes no day.
    pub day: Option<i32>,
    /// The card variant; the same number is the same variant.
    pub variant: u64,
}

/// The answers of one attempt, taken in the order in which they were given.
#[derive(Debug, Clone, PartialEq)]
pub struct Attempt {
    walk: Walk,
    variants: BTreeSet<u64>,
    /// Counted answers by day.
    days: BTreeMap<i32, u32>,
    repeats: u32,
}

impl Attempt {
    /// An attempt without answers, the first one being 1.
    #[must_use]
    pub fn new(standard: Standard, attempt: u32) -> Self {
        Self {
            walk: Walk::new(standard, standard.attempt(attempt)),
            variants: BTreeSet::new(),
            days: BTreeMap::new(),
            repeats: 0,
        }
    }

    /// The attempt that these answers make, oldest first.
    #[must_use]
    pub fn replayed(standard: Standard, attempt: u32, answers: &[Answer]) -> Self {
        let mut made = Self::new(standard, attempt);
        answers.iter().for_each(|answer| made.answer(*answer));
        made
    }

    /// Takes one answer. Only the first one to a variant counts, right or wrong: what is remembered is not evidence. A day
    /// before the latest so far counts as the latest: a clock set back makes no days. Without a day it counts for the test
    /// and for no day.
    pub fn answer(&mut self, answer: Answer) {
        if !self.variants.insert(answer.variant) {
            self.repeats += 1;
        } else if let (true, Some(day)) = (self.walk.answer(answer.guess, answer.right), answer.day) {
            let latest = self.days.last_key_value().map_or(day, |(latest, _)| *latest);
            *self.days.entry(day.max(latest)).or_insert(0) += 1;
        }
    }

    /// The test over its counted answers.
    #[must_use]
    pub const fn walk(&self) -> &Walk {
        &self.walk
    }

    /// Answers that do not count, since their variant had been answered.
    #[must_use]
    pub const fn repeats(&self) -> u32 {
        self.repeats
    }

    /// Counted answers by day.
    #[must_use]
    pub const fn days(&self) -> &BTreeMap<i32, u32> {
        &self.days
    }

    /// Days with answers enough to count.
    #[must_use]
    pub fn full_days(&self) -> u32 {
        u32::try_from(self.full().count()).unwrap_or(u32::MAX)
    }

    /// Days from the first day with answers enough to the last; 0 where there is none or one.
    #[must_use]
    pub fn days_apart(&self) -> u32 {
        match (self.full().next(), self.full().next_back()) {
            (Some(first), Some(last)) => last.abs_diff(first),
            _ => 0,
        }
    }

    fn full(&self) -> impl DoubleEndedIterator<Item = i32> {
        let least = self.walk.standard().answers_a_day;
        self.days.iter().filter(move |(_, answers)| **answers >= least).map(|(day, _)| *day)
    }
}
