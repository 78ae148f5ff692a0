//! The step of the sheet as the boundary between two grades: a jump that just keeps it is none too far.

use crate::support::base;
use stepboard::rules::abrasive::{Grade, skips};
use stepboard::rules::sheet::Setting;

/// P120 and P220 by their published sizes: the ratio itself keeps the step, anything over it does not.
#[test]
fn a_jump_that_just_keeps_the_step_is_allowed() {
    let grade = |number: f64| Grade::p(number).expect("published");
    let (from, to) = (grade(120.0), grade(220.0));
    let ratio = to.median.get() / from.median.get();
    let skipped = |step: f64| {
        let sheet = base().with(Setting::GritStep, step).expect("a step");
        skips(from, to, &sheet).answer
    };
    assert!(!skipped(ratio));
    assert!(skipped(ratio + 0.001) && !skipped(ratio - 0.001));
}
