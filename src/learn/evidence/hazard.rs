//! An error about safety, from the wrong answer that opened it until it is passed again.

use super::Counted;
use crate::learn::mastery::{Guess, re_pass_run};
use crate::record::{LocalDate, Moment, Stamp};

/// Hours after an error before it can be passed again. Common practice, no source.
pub const REST_HOURS: i64 = 24;
/// Tries before an instructor must teach: without a limit whoever goes on guessing gets there. Common practice, no source.
pub const TRIES: u32 = 2;
/// Days on which the right answers must lie. Common practice, no source.
const DAYS: usize = 2;

/// An error about safety that is open: it blocks until it is passed again.
#[derive(Debug, Clone, PartialEq)]
pub struct Hazard {
    /// The card family.
    pub family: String,
    /// The day of the wrong answer that opened it; none where its clock told none.
    pub since: Option<LocalDate>,
    /// From when a right answer counts; none where the clock told no time: then an instructor must teach.
    pub not_before: Option<Moment>,
    /// Tries that failed since it was last taught.
    pub tries: u32,
    /// Whether an instructor must put initials to it: it was wrong and would have been done on the job.
    pub wants_initials: bool,
    /// Right answers so far in this try: luck and day of each.
    run: Vec<(Guess, i32)>,
}

impl Hazard {
    pub(super) fn new(wrong: &Counted<'_>) -> Self {
        let mut hazard = Self {
            family: wrong.family.to_owned(),
            since: wrong.stamp.day(),
            not_before: None,
            tries: 0,
            wants_initials: false,
            run: Vec::new(),
        };
        hazard.wrong(wrong);
        hazard
    }

    /// Whether an instructor must teach before another try.
    #[must_use]
    pub const fn must_be_taught(&self) -> bool {
        self.tries >= TRIES || self.not_before.is_none()
    }

    /// Until when it rests before it may be tried again; none where it may be tried now.
    #[must_use]
    pub fn rests_until(&self, at: Option<Moment>) -> Option<Moment> {
        self.not_before.filter(|from| at.is_none_or(|at| at < *from))
    }

    /// Whether another right answer helps now: it may be tried, and what is missing is not another day alone.
    #[must_use]
    pub fn wants_answer(&self, at: Moment, today: LocalDate, next: Guess) -> bool {
        let rested = self.not_before.is_some_and(|from| at >= from);
        let new_day = self.run.last().is_none_or(|(_, day)| *day < today.number());
        let missing = self.answers_missing(next);
        // The last answer of the run is kept for the other day.
        let helps = if new_day || self.days_missing() == 0 {
            missing > 0 || self.days_missing() > 0
        } else {
            missing > 1
        };
        rested && self.tries < TRIES && helps
    }

    /// Right answers in a row that are missing, on cards like those so far or like `next`.
    #[must_use]
    pub fn answers_missing(&self, next: Guess) -> u32 {
        let luckiest = self.run.iter().map(|(guess, _)| *guess).fold(next, |a, b| if b > a { b } else { a });
        let run = u32::try_from(self.run.len()).unwrap_or(u32::MAX);
        re_pass_run(luckiest).saturating_sub(run)
    }

    /// Separate days that are missing.
    #[must_use]
    pub fn days_missing(&self) -> usize {
        let mut days: Vec<i32> = self.run.iter().map(|(_, day)| *day).collect();
        days.dedup();
        DAYS.saturating_sub(days.len())
    }

    /// Whether it is passed again.
    pub(super) fn is_lifted(&self) -> bool {
        let enough = self.run.last().is_some_and(|(last, _)| self.answers_missing(*last) == 0);
        enough && self.days_missing() == 0 && !self.wants_initials
    }

    /// A first answer to another card of the family, in a check or on an unguided walk.
    pub(super) fn answer(&mut self, answer: &Counted<'_>) {
        let tried = self.may_be_tried(answer.stamp);
        if !answer.right {
            self.tries += u32::from(tried);
            self.wrong(answer);
        } else if let (true, None, Some(guess), Some(day)) =
            (tried, answer.left_out, answer.guess, answer.stamp.day())
        {
            // A clock set back makes no days.
            let latest = self.run.last().map_or(day.number(), |(_, latest)| *latest);
            self.run.push((guess, day.number().max(latest)));
        }
    }

    fn may_be_tried(&self, stamp: &Stamp) -> bool {
        let rested = self.not_before.zip(Moment::of(&stamp.at)).is_some_and(|(from, at)| at >= from);
        rested && self.tries < TRIES
    }

    fn wrong(&mut self, answer: &Counted<'_>) {
        self.run.clear();
        self.not_before = Moment::of(&answer.stamp.at).map(|at| at.plus_hours(REST_HOURS));
        self.wants_initials |= answer.sure;
    }

    /// An instructor taught it, and put initials to that.
    pub(super) fn taught(&mut self, stamp: &Stamp) {
        self.tries = 0;
        self.wants_initials = false;
        self.not_before = self.not_before.or_else(|| Moment::of(&stamp.at));
    }
}
