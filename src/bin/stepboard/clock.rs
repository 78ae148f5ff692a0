//! The clock of the machine, which the library does not know.

use stepboard::record::LocalDate;
use stepboard::signoff::{Refusal, When, Why};

const SECONDS_A_DAY: u64 = 86_400;

/// Now, in universal time.
#[allow(clippy::disallowed_methods, reason = "the command hands the library its time")]
pub(crate) fn now() -> Result<When, Refusal> {
    let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH);
    moment(since.map_err(|_| Why::DateUnreadable.at("the clock of this machine"))?.as_secs())
}

/// The moment so many seconds after the beginning of 1970.
fn moment(seconds: u64) -> Result<When, Refusal> {
    let (days, second) = (seconds / SECONDS_A_DAY, seconds % SECONDS_A_DAY);
    let day = i32::try_from(days).ok().and_then(LocalDate::of_number);
    let day = day.ok_or_else(|| Why::DateUnreadable.at(seconds.to_string()))?;
    let (hour, minute, second) = (second / 3600, second / 60 % 60, second % 60);
    When::new(&format!("{day}T{hour:02}:{minute:02}:{second:02}Z"))
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
