//! The exact operating characteristic of the test: what becomes of somebody who answers right with a given chance.

use super::{Bounds, Steps};
use crate::quantity::Fraction;

/// What becomes of a test: three chances that sum to 1, and its mean length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Characteristic {
    /// Chance that the pass bound is reached first.
    pub pass: f64,
    /// Chance that the fail bound is reached first.
    pub fail: f64,
    /// Chance that all answers are given without either.
    pub undecided: f64,
    /// Mean number of answers.
    pub answers: f64,
}

/// Forward over (answers so far, wrong ones so far), without approximation, for cards that are all of the same luck.
/// `most` answers at most; `right` is the chance of a right answer.
#[must_use]
pub fn characteristic(steps: Steps, bounds: Bounds, most: u32, right: Fraction) -> Characteristic {
    let right = right.get();
    let mut sum = Characteristic { pass: 0.0, fail: 0.0, undecided: 0.0, answers: 0.0 };
    // Chance of being there undecided, by the number of wrong answers.
    let mut here = vec![1.0];
    for answers in 1..=most {
        let by_right = here.iter().map(|chance| chance * right).chain([0.0]);
        let by_wrong = [0.0].into_iter().chain(here.iter().map(|chance| chance * (1.0 - right)));
        let mut next = Vec::with_capacity(here.len() + 1);
        for (wrong, chance) in (0..).zip(by_right.zip(by_wrong).map(|(one, other)| one + other)) {
            let evidence = f64::from(answers - wrong) * steps.right + f64::from(wrong) * steps.wrong;
            let ends = if bounds.passes(evidence) {
                &mut sum.pass
            } else if bounds.fails(evidence) {
                &mut sum.fail
            } else {
                next.push(chance);
                continue;
            };
            *ends += chance;
            sum.answers += f64::from(answers) * chance;
            next.push(0.0);
        }
        here = next;
    }
    sum.undecided = here.iter().sum();
    sum.answers += f64::from(most) * sum.undecided;
    sum
}
