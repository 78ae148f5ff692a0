//! What answers say about the cards themselves: how hard each is, whether who knows more gets it right more often, which of
//! its options are taken by whom, and how far a set of them agrees with itself. Classical test theory, as in L. Crocker and
//! J. Algina, *Introduction to Classical and Modern Test Theory* (1986).
//!
//! A shop has 5 to 30 people: nothing here calls a card good or bad. It tells counts and ranges, and which cards to look at
//! first. Where nothing can be told, as with everybody right, it says nothing and never a number that is none.

mod dealt;
mod item;
mod matrix;
mod moments;
mod options;
mod plan;
mod redealt;
mod reliability;
mod report;

pub use dealt::{Dealt, NOT_ENOUGH, RIGHT, card_of, dealt};
pub use item::{ASKED_LEAST, Flag, Item, Range, flags, items};
pub use matrix::{Misshapen, Scores};
pub use options::{OptionUse, Taken, option_uses};
pub use plan::Plan;
pub use redealt::Redealt;
pub use reliability::{Reliability, reliability};
pub use report::{FamilyReport, PersonReport, Report, SetReport, report};
