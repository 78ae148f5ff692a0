//! A check: which cards it deals, how far it is today, what may be told of it already, and what it says at its end.
//!
//! A check is one attempt at some competencies. It lasts over days, since evidence asks for separate ones: each day it
//! wants some cards, is left and taken up again. Nothing of an answer is told before the cards of its day are done.

mod cards;
mod course;
mod dealt_on;
mod feedback;
mod lost;
mod sealed;
mod sets;
mod sitting;
mod takings;

pub use cards::{APART, Check, Goal, answers_a_day, next_card, order};
pub(crate) use cards::{apart, first_dealt};
pub use course::{Course, SITTING_TIMES};
pub use dealt_on::sheet_of;
pub use feedback::{answers_of, in_order};
pub use lost::lost_sets;
pub use sealed::Sealed;
pub use sets::{COMPETENCIES_MOST, Ready, ready_sets};
pub use sitting::{Ahead, Now, Sitting, open_of};
pub use takings::{Stand, Taken, Takings, takings};
