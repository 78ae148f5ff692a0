//! Seeded randomness that gives the same draws on every platform: only 32-bit draws, no `usize`, no floats.

use crate::quantity::DUST;
use rand::rngs::ChaCha8Rng;
use rand::{Rng, SeedableRng};
use sha2::{Digest, Sha256};

/// A seeded source of draws.
#[derive(Debug)]
pub struct Dice(ChaCha8Rng);

impl Dice {
    /// Dice for one name: the same name gives the same draws, another name others.
    #[must_use]
    pub fn new(name: &str) -> Self {
        Self(ChaCha8Rng::from_seed(Sha256::digest(name.as_bytes()).into()))
    }

    /// A number from 0 to below `n`, each equally likely; 0 when `n` is 0.
    pub fn below(&mut self, n: u32) -> u32 {
        if n == 0 {
            return 0;
        }
        // Draws above the last whole multiple of n are thrown again, so that no number is favoured.
        let limit = u32::MAX - u32::MAX % n;
        loop {
            let draw = self.0.next_u32();
            if draw < limit {
                return draw % n;
            }
        }
    }

    /// True once in `n` draws on average.
    pub fn one_in(&mut self, n: u32) -> bool {
        self.below(n) == 0
    }

    /// One entry of a list.
    pub fn pick<'a, T>(&mut self, list: &'a [T]) -> Option<&'a T> {
        list.get(self.index(list.len()))
    }

    /// Puts a list into a random order.
    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for last in (1..list.len()).rev() {
            list.swap(last, self.index(last + 1));
        }
    }

    /// A number on the grid `from`, `from + step` … up to `to`.
    pub fn on_grid(&mut self, from: f64, to: f64, step: f64) -> f64 {
        let steps = libm::floor((to - from) / step + DUST).clamp(0.0, f64::from(u32::MAX - 1));
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "clamped to u32 just above"
        )]
        let count = steps as u32 + 1;
        let value = from + f64::from(self.below(count)) * step;
        // Steps such as 0.1 leave dust in the last bits; a situation shows at most four decimals.
        libm::round(value * 1e4) / 1e4
    }

    /// A place in a list of that length, 0 when it is empty.
    pub fn index(&mut self, len: usize) -> usize {
        self.below(u32::try_from(len).unwrap_or(u32::MAX)) as usize
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_name_gives_the_same_draws() {
        let draws = |name| {
            let mut dice = Dice::new(name);
            (0..8).map(|_| dice.below(1000)).collect::<Vec<_>>()
        };
        assert_eq!(draws("a"), draws("a"));
        assert_ne!(draws("a"), draws("b"));
    }

    #[test]
    fn grid_values_stay_on_the_grid() {
        let mut dice = Dice::new("grid");
        for _ in 0..1000 {
            let value = dice.on_grid(0.5, 2.0, 0.1);
            assert!((0.5..=2.0).contains(&value) && (value * 10.0).fract() == 0.0, "{value}");
        }
    }
}
