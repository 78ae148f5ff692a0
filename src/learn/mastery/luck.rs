//! What luck adds to knowing.

use crate::quantity::Fraction;

/// Ways to answer a usual card: four options, and "not enough is told".
const USUAL_WAYS: f64 = 5.0;

/// Chance that somebody who does not know answers a card right, 0 to below 1. It must never be set too low: alpha holds
/// only while the real chance is at most this. A card of which an option can be ruled out without the skill has a higher one.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Guess(f64);

impl Guess {
    /// A number that is typed: nobody hits it by chance, but this is taken as the floor. Common practice, no source.
    pub const NUMBER: Self = Self(0.05);
    /// A card that nobody has seen yet, for telling how many answers are missing.
    pub const USUAL: Self = Self(1.0 / USUAL_WAYS);

    /// A chance told outright; `None` where it is not from 0 to below 1.
    #[must_use]
    pub fn new(chance: f64) -> Option<Self> {
        (0.0..1.0).contains(&chance).then_some(Self(chance))
    }

    /// One of `count` equally attractive options; `None` with fewer than two.
    #[must_use]
    pub fn options(count: u32) -> Option<Self> {
        (count > 1).then(|| Self(1.0 / f64::from(count)))
    }

    /// Things to be put in order, `1/count!`; `None` with fewer than two.
    #[must_use]
    pub fn order(count: u32) -> Option<Self> {
        (count > 1).then(|| Self(libm::exp(-libm::lgamma(f64::from(count) + 1.0))))
    }

    /// The chance, 0 to below 1.
    #[must_use]
    pub const fn chance(self) -> f64 {
        self.0
    }

    /// Chance of a right answer by somebody who knows a share of the situations: `k + (1 - k) g`.
    #[must_use]
    pub const fn right(self, knows: Fraction) -> f64 {
        knows.get() + (1.0 - knows.get()) * self.0
    }

    /// Share known by somebody who answers a share right, for showing: `(P - g) / (1 - g)`, 0 where luck alone does it.
    #[must_use]
    pub const fn known(self, right: Fraction) -> Fraction {
        Fraction::saturating((right.get() - self.0) / (1.0 - self.0))
    }
}

/// Right answers corrected for guessing among equally many options: `R - W / (n - 1)`, the classical formula score. It is
/// below 0 where luck was bad. `None` with fewer than two options.
#[must_use]
pub fn formula_score(right: u32, wrong: u32, options: u32) -> Option<f64> {
    (options > 1).then(|| f64::from(right) - f64::from(wrong) / f64::from(options - 1))
}
