//! What is to be done first where something cannot be done yet.

use super::decision::{Decision, RoomAct, Wait};
use super::impossible::{Impossible, Why};
use crate::rules::sequence::operation::Operation;

/// Something that can be begun at once instead.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum First {
    /// That operation.
    Work(Operation),
    /// Stripping to the wood.
    Strip,
    /// That duty of the room.
    Room(RoomAct),
    /// That wait.
    Wait(Wait),
    /// Another day is offered.
    Offer,
    /// The work is handed over.
    HandOver,
}

impl Impossible {
    /// What is done first; `None` where nothing is lacking but another value, or where one goes on without.
    #[must_use]
    pub fn first(&self) -> Option<First> {
        Some(match self.why {
            Why::Closed | Why::DayTooShort => First::Wait(Wait::Morning),
            Why::NoFiller => First::Work(Operation::Fill),
            Why::NoMask => First::Work(Operation::Mask),
            Why::NoFilm => First::Work(Operation::Seal),
            Why::NothingToTest => First::Work(Operation::Seal),
            Why::FilmOverWood => First::Strip,
            Why::NoStain => First::Work(Operation::Stain),
            Why::NothingOnTrim => First::Work(Operation::Colour),
            Why::NoClear => First::Work(Operation::Clear),
            Why::FanStill => First::Room(RoomAct::FanOn),
            Why::NothingDone => First::Offer,
            Why::YearOver => First::HandOver,
            _ => return None,
        })
    }

    /// Whether it is a decision about work that the refusal is of.
    #[must_use]
    pub const fn is_of_work(&self) -> bool {
        matches!(self.what, Decision::Work(_) | Decision::Strip(_))
    }
}
