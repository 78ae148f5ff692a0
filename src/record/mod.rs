//! What happened, kept: the journal of a device, the attempts it tells, what assessors write down, several read as one, and the
//! card that lies on the desk.

mod air;
mod attempt;
mod begun;
mod certainty;
mod date;
mod draft;
mod entry;
mod event;
mod journal;
mod merge;
mod once;
mod placed;
mod plain;
mod quick;
mod reading;
mod retold;
mod stamp;
mod unfit;
mod void;
mod walked;
mod watched;

pub use air::{AIR_OLD_HOURS, MeasuredAir, WORKSHOP_C};
pub use attempt::{Attempt, Attempts, Standing, Stray};
pub use begun::{Begun, Stopwatch};
pub use certainty::Certainty;
pub use date::{LocalDate, Moment, NoDate, days_of};
pub use draft::{CardName, Draft};
pub use entry::{Entry, Help, SheetName, Within};
pub use event::{Erased, Event, Step, Taking, Taught, Turn};
pub use journal::Journal;
pub use merge::{Clash, merge};
pub use placed::Placed;
pub use plain::{hides, is_plain, plain};
pub use reading::UnreadableEvent;
pub use retold::Retold;
pub use stamp::{FORMAT, Stamp};
pub use unfit::{MIDNIGHT_DAYS, NOTE_MOST, PAPER_DAYS_MOST, Unfit, WORK_MOST};
pub use void::{CardKind, Voided, Voids, Wrong};
pub use walked::{
    AirKnown, Decided, Exercised, Inspected, Known, Ready, WalkStep, Walked, Way, decisions_of,
};
pub use watched::{AssessorName, EventName, Filed, Filing, Judged, Observed, Struck};
