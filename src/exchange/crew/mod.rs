//! What an instructor sees of everybody, from the results of many tablets: who holds what, who is stuck on what, what runs
//! out soon. What takes long is done in parts, so that a screen can go on meanwhile.

mod backing;
mod csv;
mod days;
mod done;
mod finding;
mod gathered;
mod glance;
mod practised;
mod roll;
mod stuck;
mod touched;
mod walks;

pub use backing::backing;
pub use csv::{Field, csv};
pub use days::{DayCount, days};
pub use done::{Came, DidSet, KnownSet, SetDone, Way, did_set, sets_done};
pub use finding::finding;
pub use gathered::{Added, Gathered};
pub use glance::{Cell, Glance, Looking, RunsOut, Stands, glance, runs_out};
pub use practised::{Practised, practised};
pub use roll::{Person, Roll};
pub use stuck::{Misread, Slipped, Slips, Stuck, stuck};
pub use touched::{decides, rests_on_void};
pub use walks::{WalkCame, WalkDone, WalkWhat, walks};
