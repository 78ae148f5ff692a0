//! How one competency of a check stands today, and how many answers it wants.

use super::{Goal, answers_a_day};
use crate::content::Competency;
use crate::learn::evidence::Evidence;
use crate::learn::mastery::{Call, Missing, Standard};
use crate::record::LocalDate;

/// A day asks for at most so many times the answers that one day needs, so that nobody is kept answering all day. Common
/// practice, no source.
pub const SITTING_TIMES: u32 = 3;

/// Answers of a check that bear on a competency.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Given {
    pub(super) ever: u32,
    pub(super) today: u32,
}

/// One competency of a check.
#[derive(Debug, Clone, PartialEq)]
pub struct Course<'a> {
    /// The competency.
    pub competency: &'a Competency,
    /// What the journal proves of it.
    pub evidence: Evidence,
    /// Answers that it wants today.
    pub wanted: u32,
    /// Whether this check can add nothing more to it: it suffices, it is back to study, or a later check took its place.
    pub over: bool,
    /// From which day an answer helps again, where none is wanted today.
    pub from: Option<LocalDate>,
}

impl<'a> Course<'a> {
    pub(super) fn goal(&self) -> Goal<'_> {
        Goal { competency: &self.competency.slug, wanted: self.wanted }
    }

    /// `own` tells whether the evidence is that of the check itself.
    pub(super) fn of(
        competency: &'a Competency,
        evidence: Evidence,
        own: bool,
        given: Given,
        today: Option<LocalDate>,
    ) -> Self {
        let standard = Standard::of(competency.profile);
        let decided = evidence.state.call != Call::GoOn || evidence.sufficient_since.is_some();
        let over = if own { decided } else { given.ever > 0 };
        let most = |number| SITTING_TIMES * answers_a_day(standard, number);
        let (wants, number, from) = match (over, own) {
            (true, _) => (0, evidence.attempt, None),
            (false, true) => {
                let (wants, from) = Days::of(&evidence, standard, today).wants(&evidence, standard);
                (wants, evidence.attempt, from)
            }
            // Not begun: it will be the next attempt, or the first again once the evidence sufficed.
            (false, false) => {
                let number = if decided { 1 } else { evidence.attempt.saturating_add(1) };
                (answers_a_day(standard, number), number, None)
            }
        };
        let wanted = wants.min(most(number).saturating_sub(given.today));
        let tomorrow = || LocalDate::of_number(today?.number() + 1);
        let from = from.or_else(tomorrow).filter(|_| wanted == 0 && !over);
        Self { competency, evidence, wanted, over, from }
    }
}

/// The days of an attempt, seen from today.
#[derive(Debug)]
struct Days {
    /// Counted answers today.
    counted: u32,
    /// Days with answers enough that are missing.
    missing: u32,
    /// The first day on which the last one may lie; none before the first day is full.
    apart_from: Option<i32>,
    /// Whether they lie apart enough.
    apart_now: bool,
    /// Whether they would with today among them.
    apart: bool,
}

impl Days {
    fn of(evidence: &Evidence, standard: Standard, today: Option<LocalDate>) -> Self {
        let days = &evidence.state.days;
        let today = today.map(LocalDate::number);
        let first = days.iter().find(|(_, answers)| **answers >= standard.answers_a_day).map(|(day, _)| *day);
        let apart_from = first.map(|day| day.saturating_add_unsigned(standard.days_apart));
        let apart_now = count(evidence, |one| matches!(one, Missing::DaysApart(_))) == 0;
        Self {
            counted: today.and_then(|day| days.get(&day)).copied().unwrap_or(0),
            missing: count(evidence, |one| matches!(one, Missing::Days(_))),
            apart_from,
            apart_now,
            apart: apart_now || apart_from.zip(today).is_some_and(|(from, today)| today >= from),
        }
    }

    /// Answers wanted today, and the day on which they help where another day is all that is missing.
    fn wants(&self, evidence: &Evidence, standard: Standard) -> (u32, Option<LocalDate>) {
        let day = standard.answers_a_day;
        let may_be_last = self.apart && self.missing <= u32::from(self.counted < day);
        let asked = |one: &Missing| {
            matches!(one, Missing::Answers(_) | Missing::Families(_) | Missing::SafetyFamilies(_))
        };
        let work = evidence.state.missing.iter().filter(|one| asked(one)).map(|one| one.count()).max();
        match work {
            Some(work) if may_be_last => {
                (work.max(answers_a_day(standard, evidence.attempt).saturating_sub(self.counted)), None)
            }
            Some(_) => (answers_a_day(standard, evidence.attempt).saturating_sub(self.counted), None),
            None if self.missing == 0 && self.apart_now => (0, None),
            // Another day is all that is missing: today helps where it may be one of several, or the last.
            None if self.apart || self.missing > 1 => (day.saturating_sub(self.counted), None),
            None => (0, self.apart_from.and_then(LocalDate::of_number)),
        }
    }
}

fn count(evidence: &Evidence, of: impl Fn(&Missing) -> bool) -> u32 {
    evidence.state.missing.iter().find(|one| of(one)).map_or(0, |one| one.count())
}
