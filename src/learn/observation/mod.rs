//! What the journal says of work that assessors watched: which demonstrations count, which criteria are still to be seen, what
//! is on file, and how far assessors agree.
//!
//! A critical criterion that is not met yet fails its demonstration; one that was not seen must be seen at another. What two
//! assessors watched together is one demonstration, and where they disagree on a critical criterion it counts for nothing until
//! they have talked it over and say the same. Work that was helped with does not count, nor what lies before the last
//! sign-off or longer ago than the competency may go without being shown. What was struck out is left out, and stays to be read.
//!
//! Everything is worked out anew from the events: the same journal gives the same answer.

mod agree;
mod demonstration;
mod file;
mod history;
mod shown;
mod strikes;

pub use agree::{FIRST_OF_NEW, SECOND_EVERY, Seconded, agreement, seconded};
pub use demonstration::{Demonstration, Said, Worth};
pub use file::{Paper, on_file};
pub use history::{Line, history};
pub use shown::{Asked, Missing, Shown, shown};
pub use strikes::Strikes;
