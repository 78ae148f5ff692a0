//! What can be decided on a walk.

use crate::content::Ask;
use crate::quantity::Hours;
use crate::rules::contamination::Suit;
use crate::rules::drying::waits::DryTest;
use crate::rules::hazard::mask_kind::Protection;
use crate::rules::sequence::operation::Operation;
use crate::terms;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A decision.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Decision {
    /// An operation with its values.
    Work(Work),
    /// Some parts are stripped to the wood.
    Strip(Parts),
    /// Nothing is done for a while.
    Wait(Wait),
    /// What is put on; what was worn before comes off.
    Wear(Worn),
    /// Duties of the room, in this order.
    Room(Vec<RoomAct>),
    /// The order cannot be met: this day, counted from 1, is offered instead.
    Offer(Offer),
    /// The work is handed over; the walk is over.
    HandOver,
}

/// Parts, by place on the ticket.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Parts {
    /// Each once.
    pub parts: Vec<usize>,
}

/// The day that is offered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Offer {
    /// Day of the job, from 1.
    pub day: u32,
}

/// An operation with its values.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Work {
    /// What is done.
    pub operation: Operation,
    /// To which parts, by place on the ticket, each once.
    pub parts: Vec<usize>,
    /// Numbers that were set; one left out keeps the value that it begins with.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub numbers: BTreeMap<Ask, f64>,
    /// What was chosen, by the name of the choice.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub picks: BTreeMap<String, String>,
}

/// How long nothing is done.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Wait {
    /// So many hours.
    Hours(Hours),
    /// Until the shop opens on the next day.
    Morning,
    /// Until a test of the film says so, tried while the shop is open.
    Until(DryTest),
}

/// What is worn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Worn {
    /// The respirator of the programme, by what it stops; none: nothing before mouth and nose.
    pub respirator: Option<Protection>,
    /// Whether its seal was checked when it went on.
    pub sealed: bool,
    /// The suit.
    pub suit: Suit,
    /// Gloves that stand up to the liquid.
    pub gloves: bool,
    /// Eye protection.
    pub eyes: bool,
}

impl Worn {
    /// As one comes in from the street.
    pub const NOTHING: Self =
        Self { respirator: None, sealed: false, suit: Suit::Street, gloves: false, eyes: false };

    /// Whether this guards against all that other wear guards against: who changes from that into this takes no protection
    /// off.
    #[must_use]
    pub fn guards_like(self, other: Self) -> bool {
        let respirator =
            other.respirator.is_none_or(|that| self.respirator.is_some_and(|this| this.covers(that)));
        let suit = self.suit != Suit::Street || other.suit == Suit::Street;
        let on = |this: bool, that: bool| this || !that;
        respirator
            && suit
            && on(self.sealed, other.sealed)
            && on(self.gloves, other.gloves)
            && on(self.eyes, other.eyes)
    }
}

terms! {
    /// Duties of the room. Text: `walk.room.<slug>`.
    RoomAct {
        /// The extraction is switched on.
        FanOn = "fan-on",
        /// The extraction is switched off.
        FanOff = "fan-off",
        /// The filter gauge is read under the running fan.
        GaugeRead = "gauge-read",
        /// The filters are changed.
        FiltersChanged = "filters-changed",
        /// Thermometer and hygrometer are read, and the surface of the work.
        AirRead = "air-read",
        /// The moisture meter is held to every part.
        MeterRead = "meter-read",
        /// Sources of ignition are taken away, and the signs are up.
        SourcesOut = "sources-out",
        /// Rags and cloths go into the closed metal can.
        RagsAway = "rags-in-the-can",
        /// Gun and cup are cleaned in the booth.
        GunCleaned = "gun-cleaned",
        /// Wheel, nut and rated speed are checked, nothing loose is worn.
        WheelChecked = "wheel-checked",
    }
}

impl Decision {
    /// The operation, where it is one.
    #[must_use]
    pub const fn operation(&self) -> Option<Operation> {
        match self {
            Self::Work(work) => Some(work.operation),
            _ => None,
        }
    }
}
