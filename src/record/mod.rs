//! What was answered: the journal, and the card that lies on the desk.

mod certainty;
mod draft;
mod journal;

pub use certainty::Certainty;
pub use draft::{CardName, Draft};
pub use journal::{Entry, Journal, SheetName};
