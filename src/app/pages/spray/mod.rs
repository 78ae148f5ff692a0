//! Spray a panel: a task is chosen, sprayed by hand or in programmed passes, and told of.

mod choose;
mod fields;
mod gun;
mod one;
mod outcome;
mod program;
mod run;
mod words;

pub(in crate::app) use choose::Sprays;
pub(in crate::app) use one::SprayPage;
