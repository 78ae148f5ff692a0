//! What is held, what was watched, and what to ask next. It sees only what was written down, in the order in which it was.

pub mod agreement;
pub mod calibration;
pub mod check;
pub mod evidence;
mod held;
pub mod items;
pub mod mastery;
pub mod memory;
mod next;
pub mod observation;
mod past;

pub use held::{Held, held};
pub use next::{Next, ROUND, Why, ends_round, minutes, next, seed};
pub use past::Past;
