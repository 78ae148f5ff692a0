//! What an assessor cannot have written down, as a closed list. The forms refuse it, and where it stands in a journal all the
//! same it counts for nothing.

use super::{Filing, Judged, LocalDate, Observed, Struck, is_plain, plain};
use crate::terms;

terms! {
    /// Why it does not count. Text: `app.assess.unfit.<slug>`.
    Unfit {
        /// It is about the one who wrote it.
        OwnWork = "own-work",
        /// The clock of the device told no day.
        NoDay = "no-day",
        /// It lies on a day to come.
        DayToCome = "day-to-come",
        /// It lies on an earlier day and is not marked as typed in from paper.
        EarlierDay = "earlier-day",
        /// The paper is older than [`PAPER_DAYS_MOST`].
        TooOld = "too-old",
        /// No criterion was seen.
        NothingJudged = "nothing-judged",
        /// It does not say which work it was.
        WorkMissing = "work-missing",
        /// A text is too long, or has characters that do not show.
        WordsUnfit = "words-unfit",
        /// Its last day does not come after its first.
        EndsBefore = "ends-before",
        /// It is struck out without a reason.
        ReasonMissing = "reason-missing",
    }
}

/// Days after which paper is no longer typed in: a year. Common practice, no source.
pub const PAPER_DAYS_MOST: i32 = 366;
/// Days by which work may lie before the day on which it was written down: work that goes on after midnight.
pub const MIDNIGHT_DAYS: i32 = 1;
/// Most characters of what says which work it was, our own limit.
pub const WORK_MOST: usize = 80;
/// Most characters of a note or a reason, our own limit: those of several assessors stand on one sign-off.
pub const NOTE_MOST: usize = 400;

impl Observed {
    /// Everything for which it does not count; empty where nothing.
    #[must_use]
    pub fn unfit(&self) -> Vec<Unfit> {
        let age = self.stamp.day().map(|day| age(day, self.on));
        let judged = self.judged.values().any(|judged| *judged != Judged::NotSeen);
        let texts = is_plain(&self.work, WORK_MOST) && is_plain(&self.note, NOTE_MOST);
        those([
            (self.by.number == self.subject, Unfit::OwnWork),
            (age.is_none(), Unfit::NoDay),
            (age.is_some_and(|age| age < 0), Unfit::DayToCome),
            (!self.paper && age.is_some_and(|age| age > MIDNIGHT_DAYS), Unfit::EarlierDay),
            (self.paper && age.is_some_and(|age| age > PAPER_DAYS_MOST), Unfit::TooOld),
            (!judged, Unfit::NothingJudged),
            (plain(&self.work).is_empty(), Unfit::WorkMissing),
            (!texts, Unfit::WordsUnfit),
        ])
    }
}

impl Filing {
    /// Everything for which it does not count; empty where nothing.
    #[must_use]
    pub fn unfit(&self) -> Vec<Unfit> {
        let age = self.stamp.day().map(|day| age(day, self.filed.on));
        those([
            (self.by.number == self.subject, Unfit::OwnWork),
            (age.is_none(), Unfit::NoDay),
            (age.is_some_and(|age| age < 0), Unfit::DayToCome),
            (self.filed.until <= self.filed.on, Unfit::EndsBefore),
        ])
    }
}

impl Struck {
    /// Everything for which it strikes out nothing; empty where nothing.
    #[must_use]
    pub fn unfit(&self) -> Vec<Unfit> {
        those([
            (self.by.number == self.subject, Unfit::OwnWork),
            (plain(&self.reason).is_empty(), Unfit::ReasonMissing),
            (!is_plain(&self.reason, NOTE_MOST), Unfit::WordsUnfit),
        ])
    }
}

/// Days from the one to the day on which it was written down; below 0 where it is to come.
fn age(written: LocalDate, on: LocalDate) -> i32 {
    written.number() - on.number()
}

fn those<const N: usize>(all: [(bool, Unfit); N]) -> Vec<Unfit> {
    all.into_iter().filter(|(stands, _)| *stands).map(|(_, unfit)| unfit).collect()
}
