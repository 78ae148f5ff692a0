//! The clock of a walk: hours after the midnight before its first day, days counted from 1.

use crate::quantity::{DUST, HOURS_A_DAY};

/// A moment as a clock and a calendar tell it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// Day of the job, from 1.
    pub day: u32,
    /// Hour of the day, 0 to under 24.
    pub hour: f64,
}

/// The day of a moment, from 1. What rounding left a dust before midnight is the next day.
#[must_use]
pub fn day(clock: f64) -> u32 {
    let days = libm::floor((clock + DUST) / HOURS_A_DAY).clamp(0.0, f64::from(u32::MAX - 1));
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to u32 just above")]
    let days = days as u32;
    days + 1
}

/// The moment that a clock shows.
#[must_use]
pub fn moment(clock: f64) -> Moment {
    let day = day(clock);
    Moment { day, hour: (clock - f64::from(day - 1) * HOURS_A_DAY).max(0.0) }
}

/// Hours after the first midnight at which a day begins.
#[must_use]
pub fn midnight(day: u32) -> f64 {
    f64::from(day.saturating_sub(1)) * HOURS_A_DAY
}
