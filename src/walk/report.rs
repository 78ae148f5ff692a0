//! The report of a walk: lapses first, then faults by what made them, hours against the shortest schedule, material, and
//! whether it was delivered in time.

pub use super::found::{Found, found};
pub use super::spent::{Spent, quickest};

use super::clock::day;
use super::lapse::Lapse;
use super::material::{Laid, laid};
use super::story::Walk;
use super::undone::{Undone, undone};
use crate::content::Content;

/// A duty left undone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Left {
    /// Which.
    pub lapse: Lapse,
    /// In which turn.
    pub turn: usize,
}

/// What was said of the day that is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Promise {
    /// The day that is asked for, from 1.
    pub asked: u32,
    /// The first day on which it can be done; `None`: the room is never fit for it.
    pub earliest: Option<u32>,
    /// The day that was offered instead.
    pub offered: Option<u32>,
}

impl Promise {
    /// Whether it can be met.
    #[must_use]
    pub fn can_be_met(self) -> bool {
        self.earliest.is_some_and(|earliest| earliest <= self.asked)
    }

    /// Whether a day was offered that is later than needed.
    #[must_use]
    pub fn is_late(self) -> bool {
        self.offered.zip(self.earliest).is_some_and(|(offered, earliest)| offered > earliest)
    }

    /// Whether what was said holds: a day that can be met is kept to, for another one a day is offered that can be met.
    #[must_use]
    pub fn holds(self) -> bool {
        match self.offered {
            None => self.can_be_met(),
            Some(offered) => !self.can_be_met() && self.earliest.is_some_and(|earliest| offered >= earliest),
        }
    }
}

/// The report.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// Duties left undone, in order.
    pub lapses: Vec<Left>,
    /// What the ticket orders and the work lacks.
    pub undone: Vec<Undone>,
    /// Faults by the rule that was broken, those of one rule together, in the order in which the first of each was made.
    pub found: Vec<Found>,
    /// Hours that it took so far.
    pub spent: Spent,
    /// Hours of the shortest schedule; `None` where the room is never fit.
    pub shortest: Option<Spent>,
    /// What was laid.
    pub material: Vec<Laid>,
    /// The day that is asked for.
    pub promise: Promise,
    /// Whether it was handed over by then; `None`: it was not handed over, or nothing was worked.
    pub in_time: Option<bool>,
}

impl Report {
    /// Hours that the faults cost which were not mended.
    #[must_use]
    pub fn lost_h(&self) -> f64 {
        self.found.iter().filter(|found| found.mended.is_none()).map(|found| found.cost.hours()).sum()
    }

    /// Hours of work among them: unlike waits, which pass beside each other, they add up.
    #[must_use]
    pub fn lost_work_h(&self) -> f64 {
        self.found.iter().filter(|found| found.mended.is_none()).map(|found| found.cost.rework_h).sum()
    }

    /// Days more than the shortest schedule; `None` where there is no such schedule.
    #[must_use]
    pub fn days_over(&self) -> Option<u32> {
        self.shortest.map(|shortest| self.spent.day.saturating_sub(shortest.day))
    }
}

/// The report of a walk as it stands.
#[must_use]
pub fn report(walk: &Walk, content: &Content) -> Report {
    let lapses = walk.turns().iter().enumerate();
    let lapses =
        lapses.flat_map(|(turn, one)| one.lapses.iter().map(move |lapse| Left { lapse: *lapse, turn }));
    let end = walk.lines().last().map_or_else(|| walk.start().day.opens().get(), |line| line.ended);
    let spent =
        Spent { total_h: end - walk.start().day.opens().get(), bench_h: walk.bench_hours(), day: day(end) };
    let shortest = quickest(walk);
    let worked = walk.is_over() && !walk.lines().is_empty();
    let promise = promised(walk, shortest);
    Report {
        lapses: lapses.collect(),
        undone: undone(walk),
        found: found(walk, content),
        spent,
        shortest,
        material: laid(walk),
        promise,
        in_time: worked.then(|| day(walk.clock()) <= promise.offered.unwrap_or(promise.asked)),
    }
}

/// What was said of the day that is asked for, beside the shortest schedule.
pub(super) fn promised(walk: &Walk, shortest: Option<Spent>) -> Promise {
    Promise {
        asked: walk.start().info.ticket.days,
        earliest: shortest.map(|spent| spent.day),
        offered: walk.offered(),
    }
}
