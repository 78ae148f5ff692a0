//! What was answered, as plain data, and the memory that follows from it.

use super::{Care, Grade, State};
use crate::card::Mark;
use crate::record::{Certainty, Entry, Help};
use serde::{Deserialize, Serialize};

/// A day of the local calendar, counted from any fixed one. Yesterday evening and this morning are a day apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Day(pub i32);

impl Day {
    /// Whole days since an earlier day; 0 where a clock was set back.
    #[must_use]
    pub const fn since(self, earlier: Self) -> u32 {
        if self.0 > earlier.0 { self.0.abs_diff(earlier.0) } else { 0 }
    }

    /// So many days later.
    #[must_use]
    pub const fn plus(self, days: u32) -> Self {
        Self(self.0.saturating_add_unsigned(days))
    }
}

/// One card that a person answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// Card family.
    pub family: String,
    /// The local day.
    pub day: Day,
    /// Whether the first try was right.
    pub right: bool,
    /// How far the person would have gone on it.
    pub certainty: Certainty,
    /// Whether a hint or a second try was needed.
    pub helped: bool,
    /// Seconds in which the card was looked at; `None` where time must not count, as with a reading aid.
    pub active_seconds: Option<u32>,
}

/// How one person remembers one card family.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Memory {
    /// Stability and difficulty.
    pub state: State,
    /// Day of the latest answer.
    pub last: Day,
    /// Grade of the latest answer.
    pub grade: Grade,
}

impl Answered {
    /// An answer of the journal; `None` where its clock told no day, since forgetting goes by days.
    #[must_use]
    pub fn of(entry: &Entry) -> Option<Self> {
        Some(Self {
            family: entry.family.clone(),
            day: Day(entry.stamp.day()?.number()),
            right: entry.mark == Mark::Right,
            certainty: entry.certainty,
            helped: entry.help != Help::None,
            active_seconds: entry.active_seconds,
        })
    }
}

impl Memory {
    /// The memory after an answer on a day; `before` is none where the family was never asked.
    #[must_use]
    pub fn after(before: Option<Self>, day: Day, grade: Grade) -> Self {
        let (state, last) = match before {
            None => (State::first(grade), day),
            Some(before) => (before.state.after(day.since(before.last), grade), day.max(before.last)),
        };
        Self { state, last, grade }
    }

    /// Chance of recall on that day, 0 to 1.
    #[must_use]
    pub fn recall(&self, today: Day) -> f64 {
        self.state.recall(f64::from(today.since(self.last)))
    }

    /// The day from which it is asked again: the day after a miss; else when the chance of recall has fallen to what the
    /// care asks for, after at most as many days as it allows, and not after `until`, the day on which a pass expires.
    #[must_use]
    pub fn due(&self, care: Care, until: Option<Day>) -> Day {
        if self.grade == Grade::Missed {
            return self.last.plus(1);
        }
        let cap = until.map_or(care.cap_days(), |until| until.since(self.last).min(care.cap_days()));
        self.last.plus(self.state.interval_days(care.target(), cap))
    }
}
