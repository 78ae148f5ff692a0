//! The air of the room as somebody measured it, with its time: what spraying and waits are reckoned by until it is old.

use super::Moment;
use crate::bench::Facts;
use serde::{Deserialize, Serialize};
use std::ops::RangeInclusive;

/// Hours after which measured air is old: half a working day. Our own choice, no source; weather, heating and the booth's
/// fans move the air of a room within it.
pub const AIR_OLD_HOURS: f64 = 4.0;

/// Temperatures of a workshop, °C: others are more likely read in another unit, or mistyped. Our own choice, no source.
pub const WORKSHOP_C: RangeInclusive<f64> = 0.0..=45.0;

/// Facts that were measured: the air of the room, and the surface of the work.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasuredAir {
    /// Temperature of the air, °C.
    pub air_c: f64,
    /// Relative humidity, 1 to 100 %.
    pub rh: f64,
    /// Temperature of the work surface, °C.
    pub work_c: f64,
    /// When it was measured, as ISO 8601 text in universal time.
    pub at: String,
}

impl MeasuredAir {
    /// What was measured, as facts of the bench.
    #[must_use]
    pub fn facts(&self) -> Facts {
        let mut facts = Facts::default();
        facts.set("air_c", self.air_c);
        facts.set("rh", self.rh);
        facts.set("work_c", self.work_c);
        facts
    }

    /// Whether its temperatures are those of a workshop; others are doubted.
    #[must_use]
    pub fn is_of_a_workshop(&self) -> bool {
        [self.air_c, self.work_c].iter().all(|celsius| WORKSHOP_C.contains(celsius))
    }

    /// Hours since it was measured; `None` where its time cannot be read or is still to come, so that the age is not known.
    #[must_use]
    pub fn hours(&self, now: Moment) -> Option<f64> {
        Moment::of(&self.at).and_then(|at| now.hours_since(at)).filter(|hours| *hours >= 0.0)
    }

    /// Whether it is too old to go by: [`AIR_OLD_HOURS`] and more, or of an unknown age.
    #[must_use]
    pub fn is_old(&self, now: Moment) -> bool {
        self.hours(now).is_none_or(|hours| hours >= AIR_OLD_HOURS)
    }
}
