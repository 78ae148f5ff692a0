//! Cards: a situation and a question to the model. Nothing here knows a right answer; the rules compute it each time.
//!
//! A card is named by family, version, seed and shop sheet, and is the same on every platform and later.

pub mod answer;
pub mod cell;
mod changed;
pub mod deal;
mod diagnosis;
mod dice;
pub mod families;
pub mod grade;
mod luck;
pub mod question;
pub mod scene;
mod seen;
mod slate;
pub mod speak;
pub mod sprayed;
pub mod tolerance;

pub use answer::{Answer, Place};
pub use changed::{Change, Example, SITUATIONS, changed};
pub use deal::{Card, DealError, deal};
pub use diagnosis::{Diagnosis, Named, Offered, Weighed, Worth};
pub use dice::Dice;
pub use grade::{Graded, Mark, Solution, grade, grade_came, solve, weigh};
pub use luck::{UNTOLD_MOST, luck};
pub use question::{Ask, Item, Kind, Question, Tempt};
pub use slate::Slate;
pub use speak::Voice;
