//! The clock of the machine, which the library does not know.

use stepboard::signoff::{Refusal, When, Why};

const SECONDS_A_DAY: u64 = 86_400;

/// Now, in universal time.
#[allow(clippy::disallowed_methods, reason = "the command hands the library its time")]
pub(crate) fn now() -> Result<When, Refusal> {
    let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
    moment(since.map_err(|_| Why::DateUnreadable.at("the clock of this machine"))?.as_secs())
}

/// The moment so many seconds after the beginning of 1970, counted year by year and month by month.
fn moment(seconds: u64) -> Result<When, Refusal> {
    let (mut days, second) = (seconds / SECONDS_A_DAY, seconds % SECONDS_A_DAY);
    let (mut year, mut month) = (1970_u64, 1_u64);
    let leap = |year: u64| year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let year_days = |year| if leap(year) { 366 } else { 365 };
    while days >= year_days(year) {
        days -= year_days(year);
        year += 1;
    }
    let month_days = |month| match month {
        2 if leap(year) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    };
    while days >= month_days(month) {
        days -= month_days(month);
        month += 1;
    }
    let (hour, minute, second) = (second / 3600, second / 60 % 60, second % 60);
    When::new(&format!("{year:04}-{month:02}-{:02}T{hour:02}:{minute:02}:{second:02}Z", days + 1))
}

#[cfg(test)]
mod tests {
    use super::moment;

    /// Known moments of Unix time (POSIX.1-2017, section 4.16: 86,400 s a day, no leap seconds), by `date -u -d @…` of GNU
    /// coreutils.
    #[test]
    fn seconds_are_told_as_moments() {
        for (seconds, text) in [
            (0, "1970-01-01T00:00:00Z"),
            (951_782_400, "2000-02-29T00:00:00Z"),
            (1_735_689_599, "2024-12-31T23:59:59Z"),
            (1_772_463_845, "2026-03-02T15:04:05Z"),
            (4_107_542_400, "2100-03-01T00:00:00Z"),
        ] {
            assert_eq!(moment(seconds).expect("a moment").text(), text);
        }
    }
}
