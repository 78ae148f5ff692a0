//! What a journal proves of a competency: which answers are evidence, how far the sequential test over them is, and which
//! errors about safety are open.
//!
//! Evidence are the answers of checks, each the first to its card, and of each job walked without a guide the first decision
//! of a family, before any verdict. Within an
//! attempt the test of [`super::mastery`] runs over them; each new attempt halves alpha. A wrong answer on a card about
//! safety opens an error that must be passed again. What comes out says that the knowledge evidence suffices, never that
//! somebody is competent: that is signed for by a person who saw the work.
//!
//! Everything is worked out anew from the events, in their order: the same journal gives the same answer.

mod account;
mod apart;
mod asked;
mod families;
mod hazard;
mod proof;
mod round;

pub use account::{Counted, LUCK_MOST, Uncounted};
pub use apart::of_walks;
pub use asked::{Asked, Evidence, Outcome, Taken, of_all};
pub use hazard::{Hazard, REST_HOURS, TRIES};
pub use proof::{evidence, evidence_among};
