//! What is held, what was watched, and what to ask next. It sees only what was written down, in the order in which it was.

pub mod agreement;
pub mod calibration;
pub mod check;
pub mod evidence;
mod front;
mod held;
pub mod items;
mod known;
pub mod mastery;
pub mod memory;
pub mod observation;
mod past;
mod round;
mod slip;

pub use front::Front;
pub use held::{Held, held};
pub use known::{Followed, Known};
pub use past::{Latest, Past};
pub use round::{MINUTE_SECONDS, ROUND_MINUTES, Round, minutes, seed};
pub use slip::slip;
