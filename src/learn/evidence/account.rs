//! Which answers are evidence, and why others are not.

use crate::card::Mark;
use crate::learn::mastery::Guess;
use crate::record::{Certainty, Entry, Help, Stray, Voids, Within};
use crate::terms;
use std::collections::BTreeSet;

terms! {
    /// Why an answer does not count for the test. Text: `app.evidence.uncounted.<slug>`.
    Uncounted {
        /// It was given in practice, in a set that is no evidence, or on a guided walk.
        Practice = "practice",
        /// The card had been answered before: what is remembered is no evidence.
        Repeat = "repeat",
        /// Its card or its set was found wrong afterwards.
        Voided = "voided",
        /// It was right with help.
        Helped = "helped",
        /// It was right and the person would have asked first.
        Unsure = "unsure",
        /// It was right and nobody knows how far luck would have done.
        LuckUnknown = "luck-unknown",
        /// The attempt that it names does not stand on this device.
        Stray = "stray",
        /// No attempt at the competency was open.
        NoAttempt = "no-attempt",
        /// The attempt was decided before.
        Decided = "decided",
        /// Another attempt at the competency was begun after the one that it names.
        Superseded = "superseded",
    }
}

/// An answer that is evidence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Counted<'a> {
    /// The answer.
    pub entry: &'a Entry,
    /// Whether it was wholly right; partly is wrong.
    pub right: bool,
    /// Luck at its card; none for a right answer only where that counts for nothing.
    pub guess: Option<Guess>,
    /// The check that it belongs to, by its place; none for a walk.
    pub attempt: Option<usize>,
    /// Why the test does not take it; it may be wrong on a card about safety all the same.
    pub left_out: Option<Uncounted>,
}

/// Reads answers one after another and tells what each is worth.
#[derive(Debug, Default)]
pub(super) struct Account<'a> {
    /// Family, version, seed and sheet of the cards answered.
    seen: BTreeSet<(&'a str, u32, u32, &'a str)>,
}

impl<'a> Account<'a> {
    /// What an answer is worth; `taken` is where its attempt stands.
    ///
    /// A wrong answer is left out for nothing but what was known before it was given; else alpha would not hold.
    pub(super) fn take(
        &mut self,
        entry: &'a Entry,
        taken: Result<Option<usize>, Stray>,
        unsure_counts: bool,
        voids: &Voids<'_>,
    ) -> Result<Counted<'a>, Uncounted> {
        let card = (entry.family.as_str(), entry.version, entry.seed, entry.sheet.hash.as_str());
        let first = self.seen.insert(card);
        let attempt = match (&entry.within, taken) {
            (_, Err(_)) => return Err(Uncounted::Stray),
            (
                Within::Practice
                | Within::Set { .. }
                | Within::Paper { .. }
                | Within::Walk { guided: true, .. },
                _,
            ) => {
                return Err(Uncounted::Practice);
            }
            (Within::Check { .. } | Within::Walk { guided: false, .. }, Ok(attempt)) => attempt,
        };
        if !first {
            return Err(Uncounted::Repeat);
        }
        if voids.touches(entry).is_some() {
            return Err(Uncounted::Voided);
        }
        let right = entry.mark == Mark::Right;
        let guess = entry.guess.and_then(Guess::new);
        let left_out = match () {
            () if !right => None,
            () if entry.help != Help::None => Some(Uncounted::Helped),
            () if entry.certainty == Certainty::AskFirst && !unsure_counts => Some(Uncounted::Unsure),
            () if guess.is_none() => Some(Uncounted::LuckUnknown),
            () => None,
        };
        Ok(Counted { entry, right, guess, attempt, left_out })
    }
}
