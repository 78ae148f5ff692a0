//! Spray a panel: a task is chosen, sprayed by hand or in programmed passes, and told of.

mod asked;
mod at_stand;
mod choose;
mod gun;
mod one;
mod outcome;
mod program;
mod run;
mod words;

pub(in crate::app) use asked::{CardStand, Sprayed, asked, setup_of};
pub(in crate::app) use choose::Sprays;
pub(in crate::app) use one::SprayPage;
