//! Drying: how solvent leaves a film, how long each wait is, when a recoat window is open, how long a job takes.
//!
//! Ratios come from physics, times from the shop sheet: no film of this shop was ever measured. Outside the room
//! temperatures that the sheet allows, the answer is not a time but "change the room": [`Modelled::OutsideModel`].

pub mod by_the_clock;
pub mod critical_path;
pub mod factors;
pub mod gate;
pub mod job;
pub mod job_step;
pub mod recoat;
pub mod release;
pub mod waits;

use crate::terms;
use serde::Serialize;

/// Key of the fact: temperature of the air round the drying work.
const AIR: &str = "air_c";
/// Key of the fact: dry film of one clear coat, which decides the wait to the next.
const COAT: &str = "coat_um";
/// Key of the fact: dry film of the whole clear, which decides the wait before levelling.
pub const BUILD: &str = "build_um";

terms! {
    /// Whether a time can be estimated at all.
    ModelVerdict {
        /// A time is given.
        Estimate = "estimate",
        /// The room is outside the temperatures of the shop sheet: not safe to estimate, change the room.
        OutsideModel = "outside-model",
    }
}

/// An estimate, or that the room has to be changed first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Modelled<T> {
    /// The room lies inside the temperatures of the shop sheet.
    Estimate(T),
    /// The room lies outside them: not safe to estimate, change the room.
    OutsideModel,
}

impl<T> Modelled<T> {
    /// The estimate, if there is one.
    #[must_use]
    pub fn estimate(self) -> Option<T> {
        match self {
            Self::Estimate(estimate) => Some(estimate),
            Self::OutsideModel => None,
        }
    }

    /// Which of the two it is.
    #[must_use]
    pub const fn verdict(&self) -> ModelVerdict {
        match self {
            Self::Estimate(_) => ModelVerdict::Estimate,
            Self::OutsideModel => ModelVerdict::OutsideModel,
        }
    }

    /// The same verdict on another form of the estimate.
    #[must_use]
    pub fn map<U>(self, to: impl FnOnce(T) -> U) -> Modelled<U> {
        match self {
            Self::Estimate(estimate) => Modelled::Estimate(to(estimate)),
            Self::OutsideModel => Modelled::OutsideModel,
        }
    }
}
