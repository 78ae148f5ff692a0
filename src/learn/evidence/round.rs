//! One attempt at one competency: the test over its answers, and the gates beside it.

use super::families::Families;
use super::{Counted, Uncounted};
use crate::learn::mastery::{Answer, Attempt, Call, Covered, Gates, Guess, Stand, Standard, State};
use crate::record::LocalDate;
use std::collections::BTreeSet;

/// An attempt at a competency.
#[derive(Debug)]
pub(super) struct Round<'a> {
    /// Its number since the evidence last sufficed, from 1: it sets alpha. 0 where there was none.
    pub(super) number: u32,
    test: Attempt,
    seen: BTreeSet<&'a str>,
    latest: Guess,
    /// The day on which everything was met at once. From then on it stands still.
    pub(super) sufficient: Option<Option<LocalDate>>,
}

impl<'a> Round<'a> {
    pub(super) fn new(standard: Standard, number: u32, latest: Guess) -> Self {
        let test = Attempt::new(standard, number);
        Self { number, test, seen: BTreeSet::new(), latest, sufficient: None }
    }

    /// Takes an answer to a card that nobody answered before; `nth` tells it from all others of the person.
    pub(super) fn answer(&mut self, answer: &Counted<'a>, nth: u64) -> Result<(), Uncounted> {
        if self.is_decided() {
            return Err(Uncounted::Decided);
        }
        if let Some(why) = answer.left_out {
            return Err(why);
        }
        self.seen.insert(answer.family);
        // The step of a wrong answer does not depend on luck.
        let guess = answer.guess.unwrap_or(self.latest);
        self.latest = guess;
        let day = answer.stamp.day().map(LocalDate::number);
        self.test.answer(Answer { guess, right: answer.right, day, variant: nth });
        Ok(())
    }

    /// Notes the day on which everything is met; whether it was met only now.
    pub(super) fn look(&mut self, families: &Families<'_>, open: u32, day: Option<LocalDate>) -> bool {
        let may = self.sufficient.is_none() && self.test.walk().stand() == Stand::Enough;
        let met = may && self.state(families, open).call == Call::Sufficient;
        if met {
            self.sufficient = Some(day);
        }
        met
    }

    /// What it has come to, with so many errors about safety open; once sufficient it stays so.
    pub(super) fn came_to(&self, families: &Families<'_>, open: u32) -> Call {
        if self.sufficient.is_some() { Call::Sufficient } else { self.state(families, open).call }
    }

    /// Whether it takes no more answers.
    pub(super) fn is_decided(&self) -> bool {
        let walk = self.test.walk();
        self.sufficient.is_some()
            || walk.stand() == Stand::BackToStudy
            || walk.answers() >= walk.standard().most_answers
    }

    /// How far it is, with so many errors about safety open.
    pub(super) fn state(&self, families: &Families<'_>, open: u32) -> State {
        let covered =
            |of: &BTreeSet<&str>| Covered { seen: count(of.intersection(&self.seen)), of: count(of.iter()) };
        let gates = Gates {
            families: covered(&families.all),
            safety_families: covered(&families.safety),
            open_critical: open,
        };
        self.test.state(gates, self.latest)
    }
}

fn count<T>(of: impl Iterator<Item = T>) -> u32 {
    u32::try_from(of.count()).unwrap_or(u32::MAX)
}
