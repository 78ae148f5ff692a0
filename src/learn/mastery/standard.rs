//! What is asked of a competency, and the steps and bounds of the test that come of it.

use super::Guess;
use crate::content::Profile;
use crate::quantity::{DUST, Fraction};

/// What an attempt is held to. All figures of [`Standard::ORDINARY`] and [`Standard::SAFETY`] are our proposal, common
/// practice, no source; an instructor may agree on others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standard {
    not_enough: Fraction,
    competent: Fraction,
    false_pass: Fraction,
    false_fail: Fraction,
    /// Counted answers after which an attempt ends without a decision.
    pub most_answers: u32,
    /// Separate days that are asked for, each with [`Self::answers_a_day`].
    pub days: u32,
    /// Counted answers that make a day count.
    pub answers_a_day: u32,
    /// Days from the first day that counts to the last.
    pub days_apart: u32,
    /// Share of the card families that must have been seen.
    pub coverage: Fraction,
}

impl Standard {
    /// A mistake costs work or time.
    pub const ORDINARY: Self = Self {
        not_enough: Fraction::saturating(0.70),
        competent: Fraction::saturating(0.95),
        false_pass: Fraction::saturating(0.05),
        false_fail: Fraction::saturating(0.10),
        most_answers: 60,
        days: 3,
        answers_a_day: 5,
        days_apart: 7,
        coverage: Fraction::saturating(0.60),
    };
    /// A mistake can hurt people.
    pub const SAFETY: Self = Self {
        not_enough: Fraction::saturating(0.80),
        competent: Fraction::saturating(0.98),
        false_pass: Fraction::saturating(0.01),
        most_answers: 120,
        ..Self::ORDINARY
    };

    /// The standard of a profile.
    #[must_use]
    pub const fn of(profile: Profile) -> Self {
        match profile {
            Profile::Ordinary => Self::ORDINARY,
            Profile::Safety => Self::SAFETY,
        }
    }

    /// This standard with other hypotheses: the share known that is not acceptable (k0) and the one that is clearly
    /// competent (k1). `None` unless `0 < k0 < k1 < 1`.
    #[must_use]
    pub fn between(self, not_enough: Fraction, competent: Fraction) -> Option<Self> {
        let apart = not_enough.get() > 0.0 && not_enough < competent && competent.get() < 1.0;
        apart.then_some(Self { not_enough, competent, ..self })
    }

    /// This standard with other risks: of passing somebody at k0 (alpha), of sending back somebody at k1 (beta). `None`
    /// unless both are above 0 and together below 1.
    #[must_use]
    pub fn risking(self, false_pass: Fraction, false_fail: Fraction) -> Option<Self> {
        let (alpha, beta) = (false_pass.get(), false_fail.get());
        (alpha > 0.0 && beta > 0.0 && alpha + beta < 1.0).then_some(Self { false_pass, false_fail, ..self })
    }

    /// Share known that is not acceptable: k0.
    #[must_use]
    pub const fn not_enough(self) -> Fraction {
        self.not_enough
    }

    /// Share known that is clearly competent: k1.
    #[must_use]
    pub const fn competent(self) -> Fraction {
        self.competent
    }

    /// Chance of ever passing somebody who is only at k0, over all attempts: alpha.
    #[must_use]
    pub const fn false_pass(self) -> Fraction {
        self.false_pass
    }

    /// What one answer to a card of this luck adds to the evidence.
    #[must_use]
    pub fn steps(self, guess: Guess) -> Steps {
        let known = |share: Fraction| 1.0 - share.get();
        Steps {
            right: libm::log(guess.right(self.competent) / guess.right(self.not_enough)),
            // Luck falls out of (1 - P1) / (1 - P0).
            wrong: libm::log(known(self.competent) / known(self.not_enough)),
        }
    }

    /// Alpha of an attempt, the first one being 1: `alpha / 2^attempt`, so that all attempts ever sum to alpha.
    #[must_use]
    pub fn alpha(self, attempt: u32) -> f64 {
        let halvings = i32::try_from(attempt.max(1)).unwrap_or(i32::MAX);
        libm::ldexp(self.false_pass.get(), -halvings)
    }

    /// Bounds of an attempt, the first one being 1.
    #[must_use]
    pub fn attempt(self, attempt: u32) -> Bounds {
        Bounds::at(self.alpha(attempt), self.false_fail.get())
    }

    /// Bounds of a test that spends all of alpha at once: for comparing, never for an attempt that may be followed by
    /// another.
    #[must_use]
    pub fn undivided(self) -> Bounds {
        Bounds::at(self.false_pass.get(), self.false_fail.get())
    }
}

/// What one answer adds to the evidence, in natural logarithms of a likelihood ratio.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Steps {
    /// A right answer: `ln(P1 / P0)`, above 0, the larger the less luck helps.
    pub right: f64,
    /// A wrong answer: `ln((1 - P1) / (1 - P0))`, below 0, the same whatever the luck.
    pub wrong: f64,
}

impl Steps {
    /// Right answers in a row that lift evidence by so much; 0 where nothing is missing.
    #[must_use]
    pub fn run(self, missing: f64) -> u32 {
        let run = libm::ceil(missing / self.right - DUST).clamp(0.0, f64::from(u32::MAX));
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "clamped to u32 just above"
        )]
        let run = run as u32;
        run
    }
}

/// Evidence at which a test ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bounds {
    /// Evidence is sufficient from here: A.
    pub pass: f64,
    /// The attempt is closed and sent back to study from here down: B. Alpha does not depend on it.
    pub fail: f64,
}

impl Bounds {
    /// The strict pass bound `ln(1 / alpha)` (Ville) and the fail bound `ln(beta / (1 - alpha))` (Wald).
    #[must_use]
    pub fn at(alpha: f64, beta: f64) -> Self {
        Self { pass: -libm::log(alpha), fail: libm::log(beta / (1.0 - alpha)) }
    }

    /// Whether evidence is sufficient.
    #[must_use]
    pub fn passes(self, evidence: f64) -> bool {
        evidence >= self.pass - DUST
    }

    /// Whether evidence sends back to study.
    #[must_use]
    pub fn fails(self, evidence: f64) -> bool {
        evidence <= self.fail + DUST
    }
}
