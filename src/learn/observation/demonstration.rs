//! A demonstration: what one assessor, or several together, saw of a piece of work.

use super::Strikes;
use crate::content::{Competency, Criterion};
use crate::record::{Event, Judged, LocalDate, Observed};
use crate::terms;

terms! {
    /// What a demonstration is worth. Text: `app.assess.worth.<slug>`.
    Worth {
        /// It counts.
        Counts = "counts",
        /// A critical criterion was not met yet.
        Failed = "failed",
        /// Assessors disagree on a critical criterion.
        Unsettled = "unsettled",
        /// It was not done alone.
        Helped = "helped",
        /// It lies before the last sign-off, or too long ago.
        Lapsed = "lapsed",
    }
}

/// What one assessor said of a demonstration.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Said<'a> {
    /// What was said at first, before it was talked over: this tells how assessors agree.
    pub first: &'a Observed,
    /// What was said last: this counts.
    pub last: &'a Observed,
}

/// A demonstration of one person at one competency.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Demonstration<'a> {
    /// The day in the shop.
    pub on: LocalDate,
    /// What each assessor said, in the order in which they wrote it down; one at least.
    pub said: Vec<Said<'a>>,
}

impl<'a> Demonstration<'a> {
    /// The demonstrations that events tell, of those observations that are wanted, in the order in which they were written
    /// down. What cannot be and what was struck out is left out.
    #[must_use]
    pub fn of(events: &'a [Event], wanted: impl Fn(&Observed) -> bool) -> Vec<Self> {
        let fit: Vec<&Observed> = fit(events).filter(|one| wanted(one)).collect();
        let strikes = Strikes::of(events);
        let mut all: Vec<Self> = Vec::new();
        for one in fit.iter().copied() {
            let together: Vec<&Observed> = fit.iter().copied().filter(|other| same(one, other)).collect();
            if strikes.of_observed(one, &together).is_some() {
                continue;
            }
            match all.iter_mut().find(|there| there.first().is_some_and(|other| same(one, other))) {
                Some(there) => there.take(one),
                None => all.push(Self { on: one.on, said: vec![Said { first: one, last: one }] }),
            }
        }
        all
    }

    fn take(&mut self, one: &'a Observed) {
        match self.said.iter_mut().find(|said| said.first.by.number == one.by.number) {
            Some(said) => said.last = one,
            None => self.said.push(Said { first: one, last: one }),
        }
    }

    /// What was written down of it first.
    #[must_use]
    pub fn first(&self) -> Option<&'a Observed> {
        self.said.first().map(|said| said.first)
    }

    /// How a criterion was judged by all together: not met yet where one says so.
    #[must_use]
    pub fn judged(&self, criterion: &str) -> Judged {
        match (self.any(criterion, Judged::NotYet), self.any(criterion, Judged::Met)) {
            (true, _) => Judged::NotYet,
            (false, true) => Judged::Met,
            (false, false) => Judged::NotSeen,
        }
    }

    fn any(&self, criterion: &str, judged: Judged) -> bool {
        self.said.iter().any(|said| said.last.of(criterion) == judged)
    }

    /// Critical criteria that one says are met and another says are not yet.
    #[must_use]
    pub fn disputed<'c>(&self, competency: &'c Competency) -> Vec<&'c Criterion> {
        let both = |one: &&Criterion| self.any(&one.id, Judged::Met) && self.any(&one.id, Judged::NotYet);
        competency.criteria.iter().filter(|one| one.critical).filter(both).collect()
    }

    /// What it is worth: of demonstrations after one day and later than another.
    #[must_use]
    pub fn worth(&self, competency: &Competency, after: Option<LocalDate>, today: LocalDate) -> Worth {
        let lasts = self.on.plus_months(competency.expires_months).is_none_or(|end| today < end);
        let not_yet = |one: &&Criterion| one.critical && self.judged(&one.id) == Judged::NotYet;
        let (failed, disputed) =
            (competency.criteria.iter().filter(not_yet).count(), self.disputed(competency).len());
        match () {
            () if !lasts || after.is_some_and(|after| self.on <= after) => Worth::Lapsed,
            () if failed > disputed => Worth::Failed,
            () if disputed > 0 => Worth::Unsettled,
            () if self.said.iter().any(|said| !said.last.alone) => Worth::Helped,
            () => Worth::Counts,
        }
    }
}

/// The observation that an event is; `None` where it is none.
fn observed(event: &Event) -> Option<&Observed> {
    if let Event::Observed(one) = event { Some(one) } else { None }
}

/// The observations that can be.
pub(super) fn fit(events: &[Event]) -> impl Iterator<Item = &Observed> {
    events.iter().filter_map(observed).filter(|one| one.unfit().is_empty())
}

/// Whether two observations are of the same demonstration.
pub(super) fn same(one: &Observed, other: &Observed) -> bool {
    one.occasion == other.occasion && one.subject == other.subject && one.competency == other.competency
}
