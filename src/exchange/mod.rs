//! What travels between tablets, shops and other programs, as files: a shop sheet of the shop's own, what happened on a
//! tablet, and what stands on them.
//!
//! Every file of ours says what it is and in which version ([`Kind`]). Whatever comes from outside is hostile until it was
//! read whole and checked; [`Refused`] says what is wrong, where, and what is allowed, and nothing is changed by it.

mod backup;
pub mod crew;
mod file;
mod fit;
pub mod folder;
pub mod link;
mod ours;
pub mod paper;
mod refused;
mod results;
mod rows;
mod said;
mod save_name;
pub mod set;
mod sheet;
mod standards;
mod walk;

pub use backup::{BACKUP, Backup, Key, Values};
pub use file::{Kind, content_name, read, write};
pub use ours::{KINDS, Ours};
pub use refused::Refused;
pub use results::{Named, RESULTS, Reading, Results, Writing};
pub use rows::{BETWEEN, COLUMNS, Column, FamilyCompetency, Row, RowKind, family_competencies, rows};
pub use save_name::save_name;
pub use sheet::{
    Bar, Barred, CarriedSheet, Difference, Editions, NAME_MOST, NOTE_MOST, OwnSheet, SHEET, SheetDraft,
    barred, differences, on_base,
};
pub use standards::{
    Actors, Home, Items, LeftOut, Statements, Telling, Uuid, framework, items, items_of_set, statements,
    uuid5, zip,
};
pub use walk::{JobTicket, TICKET, WALK, WalkFile, not_kept};
