//! Whether the knowledge evidence for a competency is sufficient, with a bounded chance of being wrong.
//!
//! A sequential likelihood-ratio test over the answers of one attempt (A. Wald, "Sequential tests of statistical
//! hypotheses", Annals of Mathematical Statistics 16, 1945), with two deviations: the pass bound is the strict
//! `ln(1/alpha)`, and luck is part of both hypotheses, card by card. While the chance of a right answer, given all before
//! it, is at most that of the lower standard, `e^S` is a supermartingale, so that it ever reaches `1/alpha` with a chance
//! of at most `alpha` (inequality of Ville): whichever cards are picked, however often one looks, whenever one stops.
//! Each new attempt halves alpha, so that all attempts ever together keep within it.
//!
//! Around the test stand gates that are no statistics ([`Gates`], separate days). Sufficient evidence is no sign-off: that
//! is an instructor's act after seeing the work. Nothing here reads a clock, stores or shows anything.

mod attempt;
mod beta;
mod bound;
mod characteristic;
mod critical;
mod luck;
mod standard;
mod state;
mod walk;

pub use attempt::{Answer, Attempt};
pub use beta::{beta_below, beta_quantile};
pub use bound::{CONFIDENCE, lower_bound};
pub use characteristic::{Characteristic, characteristic};
pub use critical::{RE_PASS_LUCK, re_pass_run};
pub use luck::{Guess, formula_score};
pub use standard::{Bounds, Standard, Steps};
pub use state::{Call, Covered, Gates, Missing, State};
pub use walk::{Stand, Walk};
