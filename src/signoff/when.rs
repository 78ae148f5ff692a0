//! Moments as ISO 8601 text in universal time, to the second.

use super::{Refusal, Why};
use crate::record::{LocalDate, days_of};
use serde::{Deserialize, Serialize};
use std::fmt;

/// `2026-03-02T15:04:05Z`: the one form in which signed files tell a moment, an XML Schema dateTime. Its order as text is
/// its order in time.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct When(String);

/// Where the digits of a moment stand: first place, count, least, most. Seconds of 60 are refused.
const FIELDS: [(usize, usize, u32, u32); 6] =
    [(0, 4, 1, 9999), (5, 2, 1, 12), (8, 2, 1, 31), (11, 2, 0, 23), (14, 2, 0, 59), (17, 2, 0, 59)];
/// What stands between them.
const MARKS: [(usize, u8); 6] = [(4, b'-'), (7, b'-'), (10, b'T'), (13, b':'), (16, b':'), (19, b'Z')];
/// Characters of a moment, and of a day.
const LENGTH: usize = 20;
const DAY_LENGTH: usize = 10;

impl When {
    /// Reads a moment of exactly this form on a day that the calendar has.
    ///
    /// # Errors
    /// [`Why::DateUnreadable`] with the text.
    pub fn new(text: &str) -> Result<Self, Refusal> {
        let bytes = text.as_bytes();
        let marked =
            bytes.len() == LENGTH && MARKS.iter().all(|(place, mark)| bytes.get(*place) == Some(mark));
        let fields: Vec<u32> = FIELDS.iter().filter_map(|field| digits(bytes, *field)).collect();
        match *fields.as_slice() {
            [year, month, day, _, _, _] if marked && exists(year, month, day) => Ok(Self(text.to_owned())),
            _ => Err(Why::DateUnreadable.at(text)),
        }
    }

    /// The last second of a day written as `2026-03-02`; a whole moment is taken as it is. Asked about a day, what begins
    /// on it is valid and what runs out on it is not.
    ///
    /// # Errors
    /// As [`When::new`].
    pub fn day_or_moment(text: &str) -> Result<Self, Refusal> {
        if text.len() == DAY_LENGTH { Self::new(&format!("{text}T23:59:59Z")) } else { Self::new(text) }
    }

    /// The day in universal time, `2026-03-02`.
    #[must_use]
    pub fn day(&self) -> &str {
        self.0.get(..DAY_LENGTH).unwrap_or_default()
    }

    /// The day as a date; `None` before 1970.
    #[must_use]
    pub fn date(&self) -> Option<LocalDate> {
        self.day().parse().ok()
    }

    /// The same time of day so many months later, as [`LocalDate::plus_months`]; `None` before 1970 and after 9999.
    #[must_use]
    pub fn plus_months(&self, months: u32) -> Option<Self> {
        let day = self.date()?.plus_months(months)?;
        Some(Self(format!("{day}{}", self.0.get(DAY_LENGTH..)?)))
    }

    /// The text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.0
    }
}

fn digits(bytes: &[u8], (place, count, least, most): (usize, usize, u32, u32)) -> Option<u32> {
    let mut value = 0;
    for byte in bytes.get(place..place + count)? {
        value = value * 10 + char::from(*byte).to_digit(10)?;
    }
    (least..=most).contains(&value).then_some(value)
}

/// Whether the calendar has this day.
fn exists(year: u32, month: u32, day: u32) -> bool {
    let days = || days_of(i32::try_from(year).ok()?, u8::try_from(month).ok()?);
    days().is_some_and(|days| i64::from(day) <= i64::from(days))
}

impl fmt::Display for When {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl TryFrom<String> for When {
    type Error = Refusal;
    fn try_from(text: String) -> Result<Self, Refusal> {
        Self::new(&text)
    }
}

impl From<When> for String {
    fn from(when: When) -> Self {
        when.0
    }
}
