//! How a critical error is lifted again.

use super::Guess;
use crate::quantity::DUST;

/// Chance at which guessing may lift a critical error in one try. Common practice, no source.
pub const RE_PASS_LUCK: f64 = 0.01;

/// Right answers in a row, on different variants of the same hazard, that lift a critical error: the fewest that guessing
/// gives at most [`RE_PASS_LUCK`] of the time. It means something only with a limit on tries: who may go on guessing for
/// ever gets there.
#[must_use]
pub fn re_pass_run(guess: Guess) -> u32 {
    let run = libm::log(RE_PASS_LUCK) / libm::log(guess.chance());
    let run = libm::ceil(run - DUST).clamp(1.0, f64::from(u32::MAX));
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to u32 just above")]
    let run = run as u32;
    run
}
