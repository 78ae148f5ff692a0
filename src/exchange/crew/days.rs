//! Answers over days.

use crate::card::Mark;
use crate::record::{Entry, LocalDate};
use std::collections::BTreeMap;

/// The answers of one day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DayCount {
    /// The day.
    pub day: LocalDate,
    /// Wholly right ones.
    pub right: u32,
    /// Wrong ones that would not have been done on the job as they were.
    pub wrong: u32,
    /// Wrong ones that would have been.
    pub sure_and_wrong: u32,
}

impl DayCount {
    /// All of them.
    #[must_use]
    pub const fn all(self) -> u32 {
        self.right + self.wrong + self.sure_and_wrong
    }
}

/// The days on which anything was answered, oldest first; answers whose clock told no day are left out.
#[must_use]
pub fn days<'a>(answers: impl IntoIterator<Item = &'a Entry>) -> Vec<DayCount> {
    let mut found: BTreeMap<LocalDate, DayCount> = BTreeMap::new();
    for entry in answers {
        let Some(day) = entry.stamp.day() else { continue };
        let one = found.entry(day).or_insert(DayCount { day, right: 0, wrong: 0, sure_and_wrong: 0 });
        match () {
            () if entry.mark == Mark::Right => one.right += 1,
            () if entry.sure_and_wrong() => one.sure_and_wrong += 1,
            () => one.wrong += 1,
        }
    }
    found.into_values().collect()
}
