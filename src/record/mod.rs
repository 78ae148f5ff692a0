//! What was answered: the journal, and the card that lies on the desk.

mod draft;
mod journal;

pub use crate::learn::Certainty;
pub use draft::{CardName, Draft};
pub use journal::{Entry, Journal, SheetName};
