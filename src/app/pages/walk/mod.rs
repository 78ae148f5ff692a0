//! Walk a job: a walk is chosen, walked and told of.

mod about;
mod begin;
mod called;
mod choose;
mod cut;
mod decided;
mod detail;
mod figure;
mod floor;
mod give;
mod inspect;
mod keeping;
mod lines;
mod look;
mod one;
mod out;
mod parts;
mod pictured;
mod pins;
mod report;
mod scrub;
mod sheet;
mod start;
mod ways;
mod words;

pub(in crate::app::pages) use about::about as walk_about;
pub(in crate::app::pages) use begin::{Order, said as begin_said, use_begin};
pub(in crate::app) use choose::Walks;
pub(in crate::app::pages) use choose::row as walk_row;
pub(in crate::app::pages) use decided::{decided_row, decided_told, job as walked_job};
pub(in crate::app) use give::WalkGive;
pub(in crate::app::pages) use look::WalkLooked;
pub(in crate::app) use one::WalkPage;
pub(in crate::app) use out::WalkOut;
pub(in crate::app) use start::WalkStart;
pub(in crate::app::pages) use start::ticket as walk_ticket;
