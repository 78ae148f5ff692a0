//! Walk a job: a walk is chosen, walked and told of.

mod choose;
mod cut;
mod decided;
mod detail;
mod floor;
mod inspect;
mod lines;
mod one;
mod parts;
mod pictured;
mod report;
mod scrub;
mod start;
mod words;

pub(in crate::app) use choose::Walks;
pub(in crate::app::pages) use choose::row as walk_row;
pub(in crate::app::pages) use decided::{decided_row, decided_told, job as walked_job};
pub(in crate::app) use one::WalkPage;
pub(in crate::app) use start::WalkStart;
