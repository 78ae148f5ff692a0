//! How long to wait after a request that came to nothing.

use crate::record::LocalDate;
use serde::{Deserialize, Serialize};

/// First wait and longest one, milliseconds: our own choice, so that a short break is over soon and a long one costs the
/// server little.
const FIRST_MS: u64 = 2_000;
const LONGEST_MS: u64 = 10 * 60 * 1000;
/// The longest wait that a server can ask for, milliseconds: a day, our own choice.
const ASKED_MOST_MS: u64 = 24 * 60 * 60 * 1000;
const SECOND_MS: u64 = 1000;
/// Doublings after which the wait is the longest.
const DOUBLINGS_MOST: u32 = 16;

/// A wait that doubles with each failure in a row.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Pause {
    failures: u32,
    since: u64,
    until: u64,
}

impl Pause {
    /// How many requests failed in a row.
    #[must_use]
    pub const fn failures(self) -> u32 {
        self.failures
    }

    /// When it is over; 0 where there is none.
    #[must_use]
    pub const fn until(self) -> u64 {
        self.until
    }

    /// Whether it is over. A clock that was set back ends it.
    #[must_use]
    pub const fn over(self, now: u64) -> bool {
        now >= self.until || now < self.since
    }

    /// The wait after one more failure: half of the doubled time and a lucky part of the other half, or what the server
    /// asked for in `Retry-After` where that is longer.
    #[must_use]
    pub fn longer(self, now: u64, luck: u64, retry_after: Option<&str>) -> Self {
        let whole = FIRST_MS.saturating_mul(1 << self.failures.min(DOUBLINGS_MOST)).min(LONGEST_MS);
        let half = whole / 2;
        let own = half + luck % half.max(1);
        let asked = retry_after.and_then(|text| asked_for(text, now)).unwrap_or(0).min(ASKED_MOST_MS);
        Self {
            failures: self.failures.saturating_add(1),
            since: now,
            until: now.saturating_add(own.max(asked)),
        }
    }
}

/// Milliseconds that `Retry-After` asks for (RFC 9110, section 10.2.3): seconds, or a date. `None` for anything else.
fn asked_for(text: &str, now: u64) -> Option<u64> {
    let text = text.trim();
    if !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit()) {
        return Some(text.parse().map_or(u64::MAX, |seconds: u64| seconds.saturating_mul(SECOND_MS)));
    }
    Some(moment(text)?.saturating_sub(now))
}

/// Months as dates of HTTP write them.
const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// Milliseconds since 1970 of a date as RFC 9110, section 5.6.7 writes it: `Sun, 06 Nov 1994 08:49:37 GMT`. The two forms
/// that it calls obsolete are not read.
fn moment(text: &str) -> Option<u64> {
    let rest = text.split_once(", ")?.1.strip_suffix(" GMT")?;
    let mut parts = rest.split(' ');
    let (day, month, year) = (parts.next()?, parts.next()?, parts.next()?);
    let month = MONTHS.iter().position(|known| *known == month)? + 1;
    let date = LocalDate::new(year.parse().ok()?, u8::try_from(month).ok()?, day.parse().ok()?)?;
    let time = parts.next()?.split(':').try_fold((0_u64, 0), |(seconds, parts), part| {
        Some((seconds * 60 + part.parse::<u64>().ok()?, parts + 1))
    })?;
    let (seconds, 3) = time else { return None };
    let days = u64::try_from(date.number()).ok()?;
    Some((days * 24 * 60 * 60 + seconds) * SECOND_MS)
}
