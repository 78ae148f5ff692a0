//! What is done about a fault: how large the rework is, where the fault was made and where it shows.

use super::{Fault, Rework};
use crate::rules::term::Stage;
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Whether a fault shows at a later stage than the one that made it.
    Later {
        /// Always: every stage that can make it lies before the one that shows it.
        Always = "later-always",
        /// Where an earlier one of its stages made it.
        Sometimes = "later-sometimes",
        /// It shows where it was made.
        Never = "later-never",
    }
}

/// What is done about a fault. The words stand in the texts of the fault.
#[derive(Debug, Clone, PartialEq)]
pub struct Remedy<'a> {
    /// The smallest rework that cures it.
    pub rework: Rework,
    /// Stages that can have made it.
    pub made: &'a [Stage],
    /// Stage at which it first shows.
    pub shows: Stage,
    /// Whether it shows later than it is made.
    pub later: Later,
}

/// Whether a fault shows at a later stage than the one that made it.
#[must_use]
pub fn shows_later(fault: &Fault) -> Later {
    let before = |stage: &&Stage| **stage < fault.shows;
    match fault.made.iter().filter(before).count() {
        0 => Later::Never,
        some if some == fault.made.len() => Later::Always,
        _ => Later::Sometimes,
    }
}

/// What is done about a fault.
#[must_use]
pub fn remedy(fault: &Fault) -> Ruling<Remedy<'_>> {
    let remedy =
        Remedy { rework: fault.severity, made: &fault.made, shows: fault.shows, later: shows_later(fault) };
    Ruling::by("fault.smallest-rework-that-cures", remedy)
}
