//! The running evidence of one attempt.

use super::{Bounds, Guess, Standard};

/// Where the evidence stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stand {
    /// Between the bounds: another card.
    Open,
    /// At or above the pass bound, now. Further answers may take it below again.
    Enough,
    /// The fail bound was reached: closed, back to study. No mark against the person.
    BackToStudy,
    /// All answers of the attempt are given and the pass bound is not reached: closed.
    NotYet,
}

/// Answers to cards of the same luck.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Tally {
    guess: Guess,
    right: u32,
    wrong: u32,
}

/// The test over the counted answers of one attempt.
#[derive(Debug, Clone, PartialEq)]
pub struct Walk {
    standard: Standard,
    bounds: Bounds,
    /// By rising luck, so that the sum does not depend on the order of the answers, to the last bit.
    tallies: Vec<Tally>,
    failed: bool,
}

impl Walk {
    /// A test without answers yet, between bounds of its own.
    #[must_use]
    pub const fn new(standard: Standard, bounds: Bounds) -> Self {
        Self { standard, bounds, tallies: Vec::new(), failed: false }
    }

    /// Takes one answer; whether it was taken: a closed attempt takes none. A right answer may be kept from the test (it
    /// only lowers the evidence), a wrong one never.
    pub fn answer(&mut self, guess: Guess, right: bool) -> bool {
        if self.failed || self.answers() >= self.standard.most_answers {
            return false;
        }
        let at = self.tallies.partition_point(|tally| tally.guess < guess);
        if self.tallies.get(at).is_none_or(|tally| tally.guess != guess) {
            self.tallies.insert(at, Tally { guess, right: 0, wrong: 0 });
        }
        if let Some(tally) = self.tallies.get_mut(at) {
            tally.right += u32::from(right);
            tally.wrong += u32::from(!right);
        }
        self.failed = self.bounds.fails(self.evidence());
        true
    }

    /// The evidence S: 0 at first, up a little with a right answer, down a lot with a wrong one.
    #[must_use]
    pub fn evidence(&self) -> f64 {
        let of = |tally: &Tally| {
            let steps = self.standard.steps(tally.guess);
            f64::from(tally.right) * steps.right + f64::from(tally.wrong) * steps.wrong
        };
        self.tallies.iter().map(of).sum()
    }

    /// Right answers that were counted.
    #[must_use]
    pub fn right(&self) -> u32 {
        self.tallies.iter().map(|tally| tally.right).sum()
    }

    /// Answers that were counted.
    #[must_use]
    pub fn answers(&self) -> u32 {
        self.tallies.iter().map(|tally| tally.right + tally.wrong).sum()
    }

    /// What it is held to.
    #[must_use]
    pub const fn standard(&self) -> Standard {
        self.standard
    }

    /// Its bounds.
    #[must_use]
    pub const fn bounds(&self) -> Bounds {
        self.bounds
    }

    /// Where it stands.
    #[must_use]
    pub fn stand(&self) -> Stand {
        if self.failed {
            Stand::BackToStudy
        } else if self.bounds.passes(self.evidence()) {
            Stand::Enough
        } else if self.answers() >= self.standard.most_answers {
            Stand::NotYet
        } else {
            Stand::Open
        }
    }
}
