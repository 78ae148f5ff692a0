//! How far an attempt is, and what is still missing: the evidence explained.

use super::{Attempt, CONFIDENCE, Guess, Stand, lower_bound};
use crate::quantity::{DUST, Fraction};
use std::collections::BTreeMap;

/// Card families seen, of those there are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Covered {
    /// Seen in this attempt.
    pub seen: u32,
    /// In all.
    pub of: u32,
}

impl Covered {
    /// Families still to be seen for a share of all.
    fn missing(self, share: Fraction) -> u32 {
        (0..=self.of)
            .find(|seen| f64::from(*seen) >= share.get() * f64::from(self.of) - DUST)
            .unwrap_or(self.of)
            .saturating_sub(self.seen)
    }
}

/// What is known from elsewhere and must be met beside the test.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Gates {
    /// Card families of the competency.
    pub families: Covered,
    /// Those among them that are about safety: all must be seen.
    pub safety_families: Covered,
    /// Critical errors that are not lifted yet: one wrong answer on a card marked so opens one.
    pub open_critical: u32,
}

/// What an attempt comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Call {
    /// Go on: something is missing.
    GoOn,
    /// Evidence is sufficient and every gate is met. The work must still be seen and signed for by an instructor.
    Sufficient,
    /// Closed by the fail bound: back to study, then a new attempt.
    BackToStudy,
    /// Closed since all its answers are given: not yet, a new attempt.
    NotYet,
}

/// One thing that is missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Missing {
    /// Right answers in a row, each on a variant not answered yet, if all cards are like the next one.
    Answers(u32),
    /// Days with answers enough.
    Days(u32),
    /// Days that the last day must lie later.
    DaysApart(u32),
    /// Card families not seen.
    Families(u32),
    /// Card families about safety not seen.
    SafetyFamilies(u32),
    /// Critical errors that are open.
    CriticalErrors(u32),
}

/// An attempt explained.
#[derive(Debug, Clone, PartialEq)]
pub struct State {
    /// What it comes to.
    pub call: Call,
    /// The evidence S.
    pub evidence: f64,
    /// Evidence that is asked for: A.
    pub asked: f64,
    /// How far the evidence is, 0 to 1; 0 also where it is below where it began.
    pub share: Fraction,
    /// Right answers that counted.
    pub right: u32,
    /// Answers that counted, each on a variant of its own.
    pub answers: u32,
    /// Answers that did not count, since their variant had been answered.
    pub repeats: u32,
    /// Answers that counted, by the day; days are counted from any day.
    pub days: BTreeMap<i32, u32>,
    /// What is known from elsewhere.
    pub gates: Gates,
    /// What is missing, in the order of [`Missing`]; of a closed attempt, what was missing.
    pub missing: Vec<Missing>,
    /// Share of right answers that lies below the true one with [`CONFIDENCE`], for showing. Computed once, when the attempt
    /// has ended: looked at after each answer it would promise too much.
    pub lower: Option<Fraction>,
}

impl Attempt {
    /// How far it is; `next` is the luck at the card that comes next.
    #[must_use]
    pub fn state(&self, gates: Gates, next: Guess) -> State {
        let walk = self.walk();
        let (standard, evidence, asked) = (walk.standard(), walk.evidence(), walk.bounds().pass);
        let by_answers = [
            Missing::Answers(standard.steps(next).run(asked - evidence)),
            Missing::Days(standard.days.saturating_sub(self.full_days())),
            Missing::DaysApart(standard.days_apart.saturating_sub(self.days_apart())),
            Missing::Families(gates.families.missing(standard.coverage)),
            Missing::SafetyFamilies(gates.safety_families.missing(WHOLE)),
        ];
        let mut missing: Vec<Missing> = by_answers.into_iter().filter(|one| one.count() > 0).collect();
        let full = walk.answers() >= standard.most_answers;
        let out_of_answers = full && !missing.is_empty();
        if gates.open_critical > 0 {
            missing.push(Missing::CriticalErrors(gates.open_critical));
        }
        let call = match walk.stand() {
            Stand::BackToStudy => Call::BackToStudy,
            Stand::Enough if missing.is_empty() => Call::Sufficient,
            Stand::NotYet => Call::NotYet,
            Stand::Enough if out_of_answers => Call::NotYet,
            Stand::Open | Stand::Enough => Call::GoOn,
        };
        let (right, answers) = (walk.right(), walk.answers());
        State {
            call,
            evidence,
            asked,
            share: Fraction::saturating(evidence / asked),
            right,
            answers,
            repeats: self.repeats(),
            days: self.days().clone(),
            gates,
            missing,
            lower: (call != Call::GoOn).then(|| lower_bound(right, answers, CONFIDENCE)),
        }
    }
}

/// All of it.
const WHOLE: Fraction = Fraction::saturating(1.0);

impl Missing {
    /// Its name in texts: `app.evidence.missing.<slug>`.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Answers(_) => "answers",
            Self::Days(_) => "days",
            Self::DaysApart(_) => "days-apart",
            Self::Families(_) => "families",
            Self::SafetyFamilies(_) => "safety-families",
            Self::CriticalErrors(_) => "critical-errors",
        }
    }

    /// How many; 0 where nothing is missing.
    #[must_use]
    pub const fn count(self) -> u32 {
        match self {
            Self::Answers(count)
            | Self::Days(count)
            | Self::DaysApart(count)
            | Self::Families(count)
            | Self::SafetyFamilies(count)
            | Self::CriticalErrors(count) => count,
        }
    }
}
