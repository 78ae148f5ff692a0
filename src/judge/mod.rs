//! A whole job as it was told, judged: what was found, what is excused, what must be seen to, and what it costs.
//!
//! [`told`] reads a description from JSON and names every mistake by its place; [`verdict`] judges it by
//! [`crate::rules::sequence`] and works it by [`crate::process`]; [`coming`] tells what may be done next; [`cost`] is the one place that says how many hours a finding costs.

pub mod coming;
pub mod cost;
pub mod told;
pub mod verdict;

pub(crate) mod document;
mod guess;
mod step;
mod worked;

pub use told::{Account, read};
pub use verdict::{Found, Judgement, judge};
