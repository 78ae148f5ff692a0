//! The model as a calculator: rules on named facts, for the bench screen, the command and the cards.

pub mod calculation;
pub mod facts;
pub mod written;

pub use calculation::{Calculation, Gives, Needs, Outcome, Row};
pub use facts::{FactValue, Facts};

pub(crate) mod abrasives;
mod air;
pub(crate) mod drying;
pub(crate) mod fault;
mod film;
pub(crate) mod hazard;
pub(crate) mod mixing;
mod optics;
pub(crate) mod spray;
mod wood;

/// The calculations by what they are about. Text of a group: `app.bench.group.<name>`.
pub const GROUPS: [(&str, &[&Calculation]); 10] = [
    ("air", air::ALL),
    ("wood", wood::ALL),
    ("waits", drying::ALL),
    ("mixing", mixing::ALL),
    ("film", film::ALL),
    ("spray", spray::ALL),
    ("look", optics::ALL),
    ("abrasives", abrasives::ALL),
    ("hazard", hazard::ALL),
    ("faults", fault::ALL),
];

/// Every calculation, group by group.
#[must_use]
pub fn calculations() -> Vec<&'static Calculation> {
    GROUPS.iter().flat_map(|(_, group)| group.iter().copied()).collect()
}
