//! A round of practice: about ten minutes of cards.

use crate::content::Content;
use crate::rules::term::Stage;
use sha2::{Digest, Sha256};

/// Minutes that a round is meant to take: short enough for a break. Common practice, no source.
pub const ROUND_MINUTES: u32 = 10;
/// Reading one verdict, seconds: our estimate, common practice, no source.
const VERDICT_SECONDS: u32 = 20;
/// Seconds of a minute.
pub const MINUTE_SECONDS: u32 = 60;

/// How long a round is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Round {
    /// Cards, at least one.
    pub cards: u32,
    /// Minutes that they take, to the nearest.
    pub minutes: u32,
}

impl Round {
    /// A round of one stage or of all: as many cards of mean length as come nearest to [`ROUND_MINUTES`].
    #[must_use]
    pub fn of(content: &Content, within: Option<Stage>) -> Self {
        let (mut sum, mut count) = (0, 0);
        for family in
            content.families.iter().filter(|family| within.is_none_or(|stage| family.stage == stage))
        {
            sum += family.seconds + VERDICT_SECONDS;
            count += 1;
        }
        let mean = u32::checked_div(sum, count).unwrap_or(ROUND_MINUTES * MINUTE_SECONDS).max(1);
        let cards = ((ROUND_MINUTES * MINUTE_SECONDS + mean / 2) / mean).max(1);
        Self { cards, minutes: (cards * mean + MINUTE_SECONDS / 2) / MINUTE_SECONDS }
    }

    /// Whether it ends with the card after so many that are done.
    #[must_use]
    pub const fn ends(self, done: u32) -> bool {
        done + 1 >= self.cards
    }
}

/// Minutes that cards take with their verdicts, rounded up; `seconds` are those of each card.
#[must_use]
pub fn minutes(seconds: impl IntoIterator<Item = u32>) -> u32 {
    let all: u32 = seconds.into_iter().map(|card| card + VERDICT_SECONDS).sum();
    all.div_ceil(MINUTE_SECONDS)
}

/// The seed of a person's n-th card: the same person never gets the same run of seeds as another, and none comes back
/// soon.
#[must_use]
pub fn seed(person: &str, counter: u32) -> u32 {
    let digest = Sha256::digest(format!("{person}/{counter}").as_bytes());
    digest.iter().take(4).fold(0, |sum, byte| (sum << 8) | u32::from(*byte))
}
