//! Walk a job: the whole sequence on the model, one decision at a time, with what follows from it.
//!
//! A [`Walk`] begins with what content says of it ([`start`]), takes a [`Decision`] at a time and keeps a [`Turn`] of each.
//! It knows no clock and no chance of its own: the same start and the same decisions are the same walk ([`saved`]).
//!
//! What cannot be done is refused, with what, why and what now ([`impossible`]). What can be done wrongly is done, and
//! has its consequence: the run of [`crate::process`] finds it, [`surface`] says when it shows, [`mend`] whether it was
//! mended. Duties of the room are decisions like any other; leaving one is a lapse ([`lapse`]), however good the work is.

pub mod again;
pub mod air_then;
pub mod at_hand;
pub mod came;
pub mod clock;
pub mod cut;
pub mod decision;
pub mod evidence;
pub mod first;
pub mod guided;
pub mod impossible;
pub mod inspect;
pub mod journalled;
pub mod kept;
pub mod kinds;
pub mod lapse;
pub mod look;
pub mod marks;
pub mod material;
pub mod mend;
pub mod names;
pub mod planted;
pub mod report;
pub mod right;
pub mod room;
pub mod saved;
pub mod start;
pub mod suggest;
pub mod surface;
pub mod turn;
pub mod undone;
pub mod window;

mod acts;
mod asks;
mod brings;
mod carry;
mod families;
mod found;
mod hindered;
mod known;
mod line;
mod purpose;
mod remarks;
mod spent;
mod state;
mod story;
mod values;
mod wait;

pub use crate::rules::fault::STRIP_H;
pub use brings::{Follow, Followed};
pub use came::Came;
pub use decision::{Decision, RoomAct, Wait, Work, Worn};
pub use families::may_break;
pub use first::First;
pub use impossible::{Impossible, Why};
pub use kept::Kept;
pub use lapse::Lapse;
pub use line::Line;
pub use saved::{Mode, NotKept, Saved};
pub use start::Start;
pub use story::Walk;
pub use surface::{Shown, When};
pub use turn::{Read, Turn};
pub use wait::WAIT_MOST;
