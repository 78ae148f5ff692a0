//! Hours of a walk, and those of the shortest schedule of its job.

use super::clock::day;
use super::right;
use super::story::Walk;
use crate::content::Content;
use crate::process::shortest::shortest;
use crate::rules::sorted::sorted;

/// Hours of a job.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spent {
    /// From the first begin to the end.
    pub total_h: f64,
    /// Of them, hours at the benches.
    pub bench_h: f64,
    /// The day on which it ends, from 1.
    pub day: u32,
}

impl Spent {
    /// Hours of waiting.
    #[must_use]
    pub fn waiting_h(self) -> f64 {
        (self.total_h - self.bench_h).max(0.0)
    }
}

/// Hours of the shortest schedule of the job in its room.
#[must_use]
pub fn quickest(walk: &Walk) -> Option<Spent> {
    let start = walk.start();
    let shortest = shortest(&start.job, start.info.ticket.clear_coats, &start.sheet, &start.air).ok()?;
    // Parts are made ready beside each other: an hour in which two are worked is one hour.
    let (mut bench_h, mut until) = (0.0, 0.0);
    let steps = sorted(shortest.steps.clone(), |a, b| a.start.get().total_cmp(&b.start.get()));
    for step in steps {
        bench_h += (step.end.get() - step.start.get().max(until)).max(0.0);
        until = step.end.get().max(until);
    }
    Some(Spent { total_h: shortest.total.get(), bench_h, day: day(until) })
}

/// The first day on which the job can be done from where the walk stands: that of a right way on, less the days that the same
/// takes longer than the shortest schedule from the beginning. `None` where there is no right way.
pub(super) fn earliest(walk: &Walk, content: &Content) -> Option<u32> {
    let ends = |walk: &Walk| right::to_the_end(walk, content).map(|on| day(on.clock()));
    let shortest = quickest(walk)?.day;
    let longer = ends(&walk.at(0, content))?.saturating_sub(shortest);
    Some(ends(walk)?.saturating_sub(longer).max(shortest).max(day(walk.clock())))
}
