//! What is held, and what to ask next. It sees only what was answered, in the order in which it was answered.

pub mod calibration;
pub mod check;
pub mod evidence;
mod held;
pub mod mastery;
pub mod memory;
mod next;
mod past;

pub use held::{Held, held};
pub use next::{Next, ROUND, Why, ends_round, minutes, next, seed};
pub use past::Past;
