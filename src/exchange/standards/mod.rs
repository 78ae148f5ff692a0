//! What other programs read by open standards: statements of xAPI 1.0.3, a competency framework of CASE 1.1, items of QTI 3.0.
//! Only written, never read.

mod case;
mod home;
mod qti;
mod uuid;
mod xapi;
mod zip;

pub use case::framework;
pub use home::Home;
pub use qti::{Items, LeftOut, items, items_of_set};
pub use uuid::{Uuid, uuid5};
pub use xapi::{Actors, Statements, Telling, statements};
pub use zip::zip;
