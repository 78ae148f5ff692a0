//! What every event of the journal says: where, when and about whom.

use super::{EventName, LocalDate};
use serde::{Deserialize, Serialize};

/// The format in which events are written. 1: answers alone, without local date, time, help and attempt. 2: events of
/// several kinds. 3: what assessors write down, and what was erased. 4: what was found
/// wrong after it had counted, and scenario sets taken. 5: what happened on walks. 6: faces
/// sprayed as answers.
pub const FORMAT: u32 = 6;

/// Where, when and about whom.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stamp {
    /// The format in which it was written.
    #[serde(default = "first_format")]
    pub format: u32,
    /// Place in the journal of this device, from 1; where one is missing it was erased.
    pub sequence: u64,
    /// Random name of the device.
    pub device: String,
    /// When, as ISO 8601 text in universal time. Order is told by `sequence`, since clocks go wrong.
    pub at: String,
    /// The local day, as the device's clock and zone had it; none in format 1.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<LocalDate>,
    /// About whom; empty where no name was given.
    pub person: String,
}

/// What was written before events told their format.
const fn first_format() -> u32 {
    1
}

impl Stamp {
    /// The local day, or that of universal time where none was written; `None` where `at` is no time either.
    #[must_use]
    pub fn day(&self) -> Option<LocalDate> {
        self.date.or_else(|| self.at.split('T').next()?.parse().ok())
    }

    /// The name of the event among those of all devices.
    #[must_use]
    pub fn name(&self) -> EventName {
        EventName { device: self.device.clone(), sequence: self.sequence }
    }
}
