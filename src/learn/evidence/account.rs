//! Which answers and decisions of walks are evidence, and why others are not.

use crate::card::Mark;
use crate::learn::mastery::Guess;
use crate::record::{
    Certainty, Decided, Entry, Exercised, Help, Retold, Stamp, Stray, Voids, Walked, Way, Within,
};
use crate::terms;
use std::collections::BTreeSet;

terms! {
    /// Why an answer does not count for the test. Text: `app.evidence.uncounted.<slug>`.
    Uncounted {
        /// It was given in practice, in a set that is no evidence, or on a guided walk.
        Practice = "practice",
        /// The card had been answered before, or the job walked: what is remembered is no evidence.
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

/// The most that luck can have done for a decision of a walk that is right: a coin's chance. More than two ways are always at
/// hand, so it is an upper bound.
pub const LUCK_MOST: f64 = 0.5;

/// An answer, or what a decision says of a family, that is evidence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Counted<'a> {
    /// Where, when and by whom.
    pub stamp: &'a Stamp,
    /// The card family.
    pub family: &'a str,
    /// Whether it was wholly right; partly is wrong.
    pub right: bool,
    /// Whether it would have been done on the job; a decision of a walk was done.
    pub sure: bool,
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
    /// The decisions of walks that were told.
    told: Retold<'a>,
    /// Job and family of the decisions made on walks.
    walked: BTreeSet<(&'a str, &'a str)>,
    /// Jobs of which somebody else's walk was gone through.
    inspected: BTreeSet<&'a str>,
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
        let sure = entry.certainty == Certainty::OnTheJob;
        let (stamp, family) = (&entry.stamp, entry.family.as_str());
        Ok(Counted { stamp, family, right, sure, guess, attempt, left_out })
    }

    /// Takes a walk of somebody else that was gone through.
    pub(super) fn inspected(&mut self, walked: &'a Walked) {
        self.inspected.insert(&walked.job);
    }

    /// Whether a decision is told for the first time.
    pub(super) fn is_new(&mut self, walked: &'a Walked, decided: &'a Decided) -> bool {
        self.told.is_new(walked, decided)
    }

    /// What a decision of a walk is worth for a family that it exercises.
    ///
    /// Of each job the first decision of a family counts, on a walk that nobody guided. A wrong one after it is told with
    /// [`Uncounted::Repeat`]: the test does not take it, but an error about safety that was made on the work stays one.
    pub(super) fn decided(
        &mut self,
        (walked, decided, one): (&'a Walked, &Decided, &'a Exercised),
        voids: &Voids<'_>,
    ) -> Result<Counted<'a>, Uncounted> {
        let new_job = !self.inspected.contains(walked.job.as_str());
        let first = self.walked.insert((&walked.job, &one.family)) && new_job;
        if decided.way == Way::Guided {
            return Err(Uncounted::Practice);
        }
        if decided.again {
            return Err(Uncounted::Repeat);
        }
        if voids.touches_exercised(one).is_some() {
            return Err(Uncounted::Voided);
        }
        let (right, family) = (one.is_right(), one.family.as_str());
        if right && !first {
            return Err(Uncounted::Repeat);
        }
        let left_out = (!first).then_some(Uncounted::Repeat);
        let guess = Guess::new(LUCK_MOST);
        Ok(Counted { stamp: &walked.stamp, family, right, sure: true, guess, attempt: None, left_out })
    }
}
