//! What is known of one memory: how long it lasts and how hard it is.

use super::Grade;
use super::parameters as p;
use crate::quantity::Fraction;
use serde::{Deserialize, Serialize};

/// Chance of recall that defines stability: after so many days it has fallen to this.
const RECALL_AT_STABILITY: f64 = 0.9;
/// Least stability, days: the model's own floor.
const STABILITY_LEAST: f64 = 0.001;
/// Least and greatest difficulty, without unit: the model's own scale.
const DIFFICULTY: (f64, f64) = (1.0, 10.0);
/// Number of the grade at which difficulty keeps still.
const STILL: f64 = 3.0;
/// Difficulty above which a right answer would add nothing; one more than the greatest.
const NO_GROWTH: f64 = 11.0;

/// One memory.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct State {
    stability: f64,
    difficulty: f64,
}

impl State {
    /// A state from bare numbers, each brought into its range; not-a-number gives the least.
    #[must_use]
    pub const fn new(stability_days: f64, difficulty: f64) -> Self {
        Self {
            stability: stability_days.max(STABILITY_LEAST),
            difficulty: difficulty.max(DIFFICULTY.0).min(DIFFICULTY.1),
        }
    }

    /// The state after the first answer.
    #[must_use]
    pub fn first(grade: Grade) -> Self {
        Self::new(p::first_stability(grade), first_difficulty(grade))
    }

    /// Days until the chance of recall has fallen to 0.9; from 0.001.
    #[must_use]
    pub const fn stability_days(self) -> f64 {
        self.stability
    }

    /// How hard it is to make it last, 1 (easy) to 10.
    #[must_use]
    pub const fn difficulty(self) -> f64 {
        self.difficulty
    }

    /// Chance of recall after so many days, 0 to 1.
    #[must_use]
    pub fn recall(self, days: f64) -> f64 {
        libm::pow(1.0 + forgetting() * days.max(0.0) / self.stability, -p::DECAY)
    }

    /// Whole days until the chance of recall has fallen to a target, at least 1 and at most `cap_days`.
    #[must_use]
    pub fn interval_days(self, target: Fraction, cap_days: u32) -> u32 {
        let days = self.stability / forgetting() * (libm::pow(target.get(), -1.0 / p::DECAY) - 1.0);
        let whole = libm::round(days).min(f64::from(cap_days)).max(1.0);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "whole, from 1 to the cap"
        )]
        let days = whole as u32;
        days
    }

    /// The state after one more answer, so many whole days after the last one.
    #[must_use]
    pub fn after(self, days: u32, grade: Grade) -> Self {
        let stability = match (days, grade) {
            (0, _) => self.within_a_day(grade),
            (_, Grade::Missed) => self.missed(self.recall(f64::from(days))),
            _ => self.grown(self.recall(f64::from(days)), grade),
        };
        Self::new(stability, self.next_difficulty(grade))
    }

    fn next_difficulty(self, grade: Grade) -> f64 {
        let (least, greatest) = DIFFICULTY;
        let room = (greatest - self.difficulty) / (greatest - least);
        let moved = self.difficulty - p::DIFFICULTY_STEP * (grade.number() - STILL) * room;
        p::DIFFICULTY_RETURN * first_difficulty(Grade::Solid) + (1.0 - p::DIFFICULTY_RETURN) * moved
    }

    /// Stability, days, after a right answer at that chance of recall.
    fn grown(self, recall: f64, grade: Grade) -> f64 {
        let earned = match grade {
            Grade::Missed | Grade::Steady => 1.0,
            Grade::Shaky => p::SHAKY_SHARE,
            Grade::Solid => p::SOLID_TIMES,
        };
        let forgotten = libm::exp(p::GROWTH_BY_FORGETTING * (1.0 - recall)) - 1.0;
        let slowed = libm::pow(self.stability, -p::GROWTH_SATURATION);
        let growth = libm::exp(p::GROWTH) * (NO_GROWTH - self.difficulty) * slowed * forgotten;
        self.stability * (1.0 + growth * earned)
    }

    /// Stability, days, after a miss at that chance of recall.
    fn missed(self, recall: f64) -> f64 {
        let left = p::MISS_SCALE
            * libm::pow(self.difficulty, -p::MISS_BY_DIFFICULTY)
            * (libm::pow(self.stability + 1.0, p::MISS_BY_STABILITY) - 1.0)
            * libm::exp(p::MISS_BY_FORGETTING * (1.0 - recall));
        left.min(self.stability / libm::exp(p::SAME_DAY_RATE * p::SAME_DAY_SHIFT))
    }

    /// Stability, days, after an answer on the day of the last one.
    fn within_a_day(self, grade: Grade) -> f64 {
        let times = libm::exp(p::SAME_DAY_RATE * (grade.number() - STILL + p::SAME_DAY_SHIFT))
            * libm::pow(self.stability, -p::SAME_DAY_SATURATION);
        self.stability * if grade == Grade::Missed { times } else { times.max(1.0) }
    }
}

/// How fast the curve of forgetting falls, so that recall is 0.9 when as many days have passed as stability says.
fn forgetting() -> f64 {
    libm::pow(RECALL_AT_STABILITY, -1.0 / p::DECAY) - 1.0
}

/// Difficulty after a first answer, not yet brought into its range.
fn first_difficulty(grade: Grade) -> f64 {
    p::FIRST_DIFFICULTY - libm::exp(p::FIRST_DIFFICULTY_RATE * (grade.number() - 1.0)) + 1.0
}
