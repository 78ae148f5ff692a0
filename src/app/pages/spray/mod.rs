//! Spray a panel: a task is chosen, sprayed by hand or in programmed passes, and told of.

mod asked;
mod at_stand;
mod came;
mod choose;
mod gun;
mod one;
mod outcome;
mod program;
mod run;
mod words;

pub(in crate::app) use asked::{CardStand, asked, setup_of};
pub(in crate::app) use came::{Came, told as told_of_run, use_came};
pub(in crate::app) use choose::Sprays;
pub(in crate::app) use one::SprayPage;
