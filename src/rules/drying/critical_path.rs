//! The longest path through a job: work inside working hours, waits round the clock.

use crate::quantity::{DUST, HOURS_A_DAY, Hours};
use crate::rules::sheet::{Setting, Sheet};

/// The hours of a day in which work is done, the same on every day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WorkingDay {
    from: f64,
    to: f64,
}

impl WorkingDay {
    /// The working hours of a sheet.
    #[must_use]
    pub fn of(sheet: &Sheet) -> Self {
        Self { from: sheet.get(Setting::DayFrom), to: sheet.get(Setting::DayTo) }
    }

    /// When the first day begins, in hours after its midnight.
    #[must_use]
    pub fn opens(self) -> Hours {
        Hours::saturating(self.from)
    }

    /// The first moment from `ready` on at which work may begin, both in hours after the first midnight. Work that fits
    /// into one day is begun only if it ends that day.
    #[must_use]
    pub fn begin(self, ready: f64, work: Hours) -> f64 {
        let day = libm::floor(ready / HOURS_A_DAY) * HOURS_A_DAY;
        let start = ready.max(day + self.from);
        let latest = if self.fits(work) { day + self.to - work.get() } else { day + self.to };
        let in_time = start <= latest + DUST && start < day + self.to;
        if in_time { start } else { day + HOURS_A_DAY + self.from }
    }

    /// When work ends that began at `start`. Work longer than a day goes on the next mornings.
    #[must_use]
    pub fn end(self, start: f64, work: Hours) -> f64 {
        if self.fits(work) {
            return start + work.get();
        }
        let day = libm::floor(start / HOURS_A_DAY) * HOURS_A_DAY;
        let left = work.get() - (day + self.to - start);
        let more_days = libm::ceil(left / self.length()).max(1.0);
        day + more_days * HOURS_A_DAY + self.from + left - (more_days - 1.0) * self.length()
    }

    fn length(self) -> f64 {
        self.to - self.from
    }

    fn fits(self, work: Hours) -> bool {
        work.get() <= self.length()
    }
}

/// Names an operation of one plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OpId(usize);

/// What an operation has to wait for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Link {
    /// The end of another operation and so many hours.
    Wait(OpId, Hours),
    /// The day after another operation began.
    NextDay(OpId),
}

/// Operations with work hours and what each waits for. An operation can only wait for one added before it, so that no
/// plan goes in a circle.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan<T> {
    operations: Vec<(T, Hours, Vec<Link>)>,
}

/// When an operation begins and ends, in hours after the midnight before the job.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Planned<T> {
    /// Which operation.
    pub label: T,
    /// Begin.
    pub start: Hours,
    /// End.
    pub end: Hours,
}

/// The earliest schedule of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Schedule<T> {
    /// Every operation, in the order in which they were added.
    pub steps: Vec<Planned<T>>,
    /// The chain that decides the end, first operation first: positions in `steps`.
    pub critical: Vec<usize>,
    /// Hours from the first begin to the last end, at most one year.
    pub total: Hours,
    /// Hours of `total` that are waits of the deciding chain.
    pub waiting: Hours,
}

impl<T: Copy> Plan<T> {
    /// A plan without operations.
    #[must_use]
    pub const fn new() -> Self {
        Self { operations: Vec::new() }
    }

    /// Adds an operation. Links to operations of another plan are ignored.
    pub fn add(&mut self, label: T, work: Hours, links: &[Link]) -> OpId {
        self.operations.push((label, work, links.to_vec()));
        OpId(self.operations.len() - 1)
    }

    /// The earliest schedule, begun when the first day opens.
    #[must_use]
    pub fn schedule(&self, day: WorkingDay) -> Schedule<T> {
        let mut times: Vec<(f64, f64)> = Vec::with_capacity(self.operations.len());
        let mut deciding: Vec<Option<(usize, f64)>> = Vec::with_capacity(self.operations.len());
        for (_, work, links) in &self.operations {
            let (mut ready, mut by) = (day.from, None);
            for link in links {
                let Some((from, at, wait)) = link.ready(&times) else { continue };
                if by.is_none() || at > ready {
                    ready = ready.max(at);
                    by = Some((from, wait));
                }
            }
            let start = day.begin(ready, *work);
            times.push((start, day.end(start, *work)));
            deciding.push(by);
        }
        let planned = |((label, ..), (start, end)): (&(T, Hours, Vec<Link>), &(f64, f64))| Planned {
            label: *label,
            start: Hours::saturating(*start),
            end: Hours::saturating(*end),
        };
        let steps = self.operations.iter().zip(&times).map(planned).collect();
        let first = times.iter().map(|(start, _)| *start).fold(f64::INFINITY, f64::min);
        let last = times.iter().enumerate().max_by(|(_, a), (_, b)| a.1.total_cmp(&b.1));
        let total = last.map_or(0.0, |(_, (_, end))| end - first);
        let (critical, waiting) = chain(last.map(|(index, _)| index), &deciding);
        Schedule { steps, critical, total: Hours::saturating(total), waiting: Hours::saturating(waiting) }
    }
}

impl<T: Copy> Default for Plan<T> {
    fn default() -> Self {
        Self::new()
    }
}

impl Link {
    /// Which operation it hangs on, when that lets the next one begin, and how much of that is a wait.
    fn ready(self, times: &[(f64, f64)]) -> Option<(usize, f64, f64)> {
        match self {
            Self::Wait(OpId(on), wait) => times.get(on).map(|(_, end)| (on, end + wait.get(), wait.get())),
            Self::NextDay(OpId(on)) => times
                .get(on)
                .map(|(start, _)| (on, (libm::floor(start / HOURS_A_DAY) + 1.0) * HOURS_A_DAY, 0.0)),
        }
    }
}

/// Follows the deciding links back from the last operation.
fn chain(last: Option<usize>, deciding: &[Option<(usize, f64)>]) -> (Vec<usize>, f64) {
    let (mut found, mut waiting, mut next) = (Vec::new(), 0.0, last);
    while let Some(index) = next {
        found.push(index);
        let by = deciding.get(index).copied().flatten();
        waiting += by.map_or(0.0, |(_, wait)| wait);
        next = by.map(|(from, _)| from);
    }
    found.reverse();
    (found, waiting)
}
