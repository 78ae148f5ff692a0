//! The rules of the trade: pure functions from what is known to a verdict with its reasons.
//!
//! One family a file. A rule knows no clock, no randomness, no storage, no language and no screen; values on which
//! sources disagree come in with the [`sheet::Sheet`]. Exponentials and logarithms come from `libm`, so that every
//! platform gives the same bits.

pub mod abrasive;
pub mod air;
pub mod binding;
pub mod colouring;
pub mod contamination;
pub mod drying;
pub mod fault;
pub mod filling;
pub mod film;
pub mod hazard;
pub mod inspection;
pub mod job_ticket;
pub mod masking;
pub mod mixing;
pub mod optics;
pub mod pairs;
pub mod sealing;
pub mod sequence;
pub mod shading;
pub mod sheet;
pub mod sorted;
pub mod spray;
pub mod staining;
pub mod term;
pub mod verdict;
pub mod wood;
