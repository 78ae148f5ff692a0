//! Who works on this tablet: apprentices by shop number and name, the PIN that keeps two of them apart, what is told of
//! one of them in a file, what is left when one is erased, and how far each is in a competency.
//!
//! A PIN keeps people from answering as each other by mistake. It protects nothing from whoever owns the tablet.

mod crew;
mod erased;
mod file;
mod pin;
mod ready;
mod signing;

pub use crew::{Crew, Member, NAME_MOST, NotTaken};
pub use erased::erased;
pub use file::{FILE_FORMAT, FILE_VERSION, told};
pub use pin::{PIN_LEAST, PIN_MOST, Pin};
pub use ready::{Far, Ready, Source, last_signed};
pub use signing::{Own, Signing};
