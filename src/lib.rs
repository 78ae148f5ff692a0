//! Stepboard: trains finishers of wooden stringed instruments.
//!
//! The library is a model of the finishing process and what stands on it: [`rules`] answer, [`process`] works a whole
//! job operation by operation, [`mod@bench`] offers them as a calculator on named facts, [`judge`] judges a whole job as it was
//! told, [`spraying`] sprays a panel, [`card`] asks about all of it and grades, [`learn`] picks what to ask next, [`record`] keeps
//! what was answered, [`signoff`] is the book of what people were signed off for, [`people`] are those who share a
//! tablet, [`walk`] a whole job walked decision by decision,
//! [`exchange`] what travels between tablets. It holds no answer key: every right
//! answer is computed.
//!
//! It is not a data sheet, not a permit and no substitute for an instructor: local code, the data sheet and licensed
//! practice overrule it.

#![warn(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

pub mod bench;
pub mod card;
pub mod content;
mod embedded;
pub mod exchange;
pub mod judge;
pub mod learn;
pub mod people;
pub mod process;
pub mod quantity;
pub mod record;
pub mod rules;
pub mod signoff;
pub mod spraying;
pub mod walk;

pub use stepboard_picture as picture;

#[cfg(feature = "web")]
pub mod app;
#[cfg(feature = "web")]
pub mod device;
