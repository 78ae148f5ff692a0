//! The answers of one family so far, summed up: how many, and the usual time of the right ones.

use super::Answered;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// Longest active time that counts, seconds: who takes longer was away (common practice, no source).
pub(super) const SECONDS_MOST: u32 = 600;
/// Right answers of a family from which its usual time is known (common practice, no source).
const TIMED_LEAST: usize = 5;

/// What is known of a person's earlier answers of one family.
#[derive(Debug, Clone, Default)]
pub struct Earlier {
    answers: usize,
    /// Times of right answers: the shorter half, and as many or one fewer of the longer ones.
    shorter: BinaryHeap<u32>,
    longer: BinaryHeap<Reverse<u32>>,
}

impl Earlier {
    /// Those of one family, in any order.
    #[must_use]
    pub fn of<'a>(answers: impl IntoIterator<Item = &'a Answered>) -> Self {
        let mut earlier = Self::default();
        answers.into_iter().for_each(|answer| earlier.take(answer));
        earlier
    }

    /// One more answer.
    pub fn take(&mut self, answer: &Answered) {
        self.answers += 1;
        let Some(seconds) = answer.active_seconds.filter(|_| answer.right) else { return };
        self.shorter.push(seconds.min(SECONDS_MOST));
        self.longer.extend(self.shorter.pop().map(Reverse));
        if self.longer.len() > self.shorter.len() {
            self.shorter.extend(self.longer.pop().map(|Reverse(seconds)| seconds));
        }
    }

    /// How many there are.
    #[must_use]
    pub const fn answers(&self) -> usize {
        self.answers
    }

    /// Twice the usual time of a right answer, seconds: the sum of the two in the middle, which are one and the same of an odd
    /// number. `None` where too few were timed.
    #[must_use]
    pub fn twice_usual_seconds(&self) -> Option<u32> {
        let (low, high) = (self.shorter.peek()?, self.longer.peek().map(|Reverse(seconds)| seconds));
        let even = self.shorter.len() == self.longer.len();
        let timed = self.shorter.len() + self.longer.len();
        (timed >= TIMED_LEAST).then(|| low + high.filter(|_| even).unwrap_or(low))
    }
}
