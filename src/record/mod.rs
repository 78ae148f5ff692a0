//! What happened, kept: the journal of a device, the attempts it tells, several read as one, and the card that lies on the
//! desk.

mod attempt;
mod certainty;
mod date;
mod draft;
mod entry;
mod event;
mod journal;
mod merge;
mod stamp;

pub use attempt::{Attempt, Attempts, Standing, Stray};
pub use certainty::Certainty;
pub use date::{LocalDate, Moment, NoDate, days_of};
pub use draft::{CardName, Draft};
pub use entry::{Entry, Help, SheetName, Within};
pub use event::{Event, Step, Taught, Turn, UnreadableEvent};
pub use journal::Journal;
pub use merge::{Clash, merge};
pub use stamp::{FORMAT, Stamp};
