//! Days and instants as text tells them: the local date, and the moment in universal time.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// First and last year that a device may tell.
const YEARS: (i32, i32) = (1970, 9999);
/// Days of the months of a year that is no leap year.
const MONTHS: [i32; 12] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const FEBRUARY: u8 = 2;
const YEAR_DAYS: i32 = 365;
const YEAR_MONTHS: i32 = 12;
const HOUR_SECONDS: i64 = 3600;
const DAY_SECONDS: i64 = 24 * HOUR_SECONDS;

/// A day of the calendar (Gregorian, ISO 8601) as the clock of a device and its zone had it. Hours of summer time are no
/// part of it, so that days are counted alike all the year.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct LocalDate {
    year: i32,
    month: u8,
    day: u8,
}

/// A text that is no date.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("`{0}` is no date; a day that exists from 1970-01-01 to 9999-12-31 is allowed, as 2027-03-12")]
pub struct NoDate(String);

impl LocalDate {
    /// A date; `None` for a day that does not exist or a year outside 1970 to 9999.
    #[must_use]
    pub fn new(year: i32, month: u8, day: u8) -> Option<Self> {
        let exists =
            (YEARS.0..=YEARS.1).contains(&year) && day >= 1 && i32::from(day) <= days_of(year, month)?;
        exists.then_some(Self { year, month, day })
    }

    /// The day so many days after 1 January 1970; `None` outside the years that a device may tell.
    #[must_use]
    pub fn of_number(number: i32) -> Option<Self> {
        let first = |year: i32| Self::new(year, 1, 1).map(Self::number);
        let mut year = YEARS.0 + number / YEAR_DAYS;
        // Leap days put the guess too late, by one year in some fifteen hundred.
        while year > YEARS.0 && first(year).is_none_or(|first| first > number) {
            year -= 1;
        }
        let (mut month, mut day) = (1, number - first(year)?);
        while day >= days_of(year, month)? {
            day -= days_of(year, month)?;
            month += 1;
        }
        Self::new(year, month, u8::try_from(day + 1).ok()?)
    }

    /// The same day so many months later, or the last of the month where it has no such day; `None` after the last year.
    #[must_use]
    pub fn plus_months(self, months: u32) -> Option<Self> {
        let months = i32::from(self.month - 1).checked_add(i32::try_from(months).ok()?)?;
        let year = self.year + months / YEAR_MONTHS;
        let month = u8::try_from(months % YEAR_MONTHS + 1).ok()?;
        let last = u8::try_from(days_of(year, month)?).ok()?;
        Self::new(year, month, self.day.min(last))
    }

    /// Days since 1 January 1970.
    #[must_use]
    pub fn number(self) -> i32 {
        let years = (self.year - YEARS.0) * YEAR_DAYS + leap_days(self.year) - leap_days(YEARS.0);
        let months: i32 = (1..self.month).filter_map(|month| days_of(self.year, month)).sum();
        years + months + i32::from(self.day) - 1
    }
}

/// Days of a month of the Gregorian calendar (ISO 8601); `None` where there is no such month.
#[must_use]
pub fn days_of(year: i32, month: u8) -> Option<i32> {
    let days = MONTHS.get(usize::from(month).checked_sub(1)?)?;
    Some(days + i32::from(month == FEBRUARY && leap_days(year + 1) > leap_days(year)))
}

/// Leap days of the Gregorian calendar before a year: every fourth, not the hundredths, but the four-hundredths.
const fn leap_days(year: i32) -> i32 {
    let before = year - 1;
    before / 4 - before / 100 + before / 400
}

impl FromStr for LocalDate {
    type Err = NoDate;

    fn from_str(text: &str) -> Result<Self, NoDate> {
        let date = || match fields::<3>(text, '-', &[4, 2, 2])? {
            [year, month, day] => Self::new(year, u8::try_from(month).ok()?, u8::try_from(day).ok()?),
        };
        date().ok_or_else(|| NoDate(text.to_owned()))
    }
}

/// Whole numbers of so many digits each, with a mark between them.
fn fields<const N: usize>(text: &str, mark: char, digits: &[usize; N]) -> Option<[i32; N]> {
    let mut found = [0; N];
    let mut parts = text.split(mark);
    for (into, digits) in found.iter_mut().zip(digits) {
        let part = parts.next().filter(|part| part.len() == *digits)?;
        *into = part.bytes().all(|byte| byte.is_ascii_digit()).then(|| part.parse().ok())??;
    }
    parts.next().is_none().then_some(found)
}

impl TryFrom<String> for LocalDate {
    type Error = NoDate;

    fn try_from(text: String) -> Result<Self, NoDate> {
        text.parse()
    }
}

impl From<LocalDate> for String {
    fn from(date: LocalDate) -> Self {
        date.to_string()
    }
}

impl fmt::Display for LocalDate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

/// An instant: whole seconds since 1 January 1970 in universal time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment(i64);

impl Moment {
    /// The instant of a text like `2027-03-12T14:30:00.000Z`; `None` where it is none. Parts of a second are left off.
    #[must_use]
    pub fn of(at: &str) -> Option<Self> {
        let (date, time) = at.strip_suffix('Z')?.split_once('T')?;
        let date: LocalDate = date.parse().ok()?;
        let [hour, minute, second] = fields::<3>(time.split('.').next()?, ':', &[2, 2, 2])?;
        // Seconds run to 60 in a minute with a leap second.
        let told = hour <= 23 && minute <= 59 && second <= 60;
        let seconds = i64::from(hour) * HOUR_SECONDS + i64::from(minute * 60 + second);
        told.then_some(Self(i64::from(date.number()) * DAY_SECONDS + seconds))
    }

    /// Whole seconds since 1970-01-01T00:00:00Z.
    #[must_use]
    pub const fn seconds(self) -> i64 {
        self.0
    }

    /// The day in universal time.
    fn day(self) -> Option<LocalDate> {
        LocalDate::of_number(i32::try_from(self.0.div_euclid(DAY_SECONDS)).ok()?)
    }

    /// Hours since an earlier moment; negative where that one is to come. `None` where they are further apart than a number
    /// tells exactly.
    #[must_use]
    pub fn hours_since(self, earlier: Self) -> Option<f64> {
        let seconds = i32::try_from(self.0.checked_sub(earlier.0)?).ok()?;
        Some(f64::from(seconds) / f64::from(i32::try_from(HOUR_SECONDS).ok()?))
    }

    /// So many hours later.
    #[must_use]
    pub const fn plus_hours(self, hours: i64) -> Self {
        Self(self.0.saturating_add(hours.saturating_mul(HOUR_SECONDS)))
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        const MINUTE_SECONDS: i64 = 60;
        let Some(day) = self.day() else { return write!(f, "{} s", self.0) };
        let seconds = self.0.rem_euclid(DAY_SECONDS);
        let (hour, minute) = (seconds / HOUR_SECONDS, seconds % HOUR_SECONDS / MINUTE_SECONDS);
        write!(f, "{day}T{hour:02}:{minute:02}:{:02}Z", seconds % MINUTE_SECONDS)
    }
}
