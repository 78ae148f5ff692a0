//! The report of a walk: lapses first, then faults by what made them, hours against the shortest schedule, material, and
//! whether it was delivered in time.

use super::clock::day;
use super::lapse::Lapse;
use super::material::{Laid, laid};
use super::mend;
use super::story::Walk;
use super::surface::When;
use super::undone::{Undone, undone};
use crate::content::Content;
use crate::judge::cost::{Cost, of};
use crate::process::shortest::shortest;
use crate::rules::fault::Rework;
use crate::rules::sequence::operation::Operation;
use crate::rules::term::{Severity, Stage};
use crate::rules::verdict::RuleId;

/// A duty left undone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Left {
    /// Which.
    pub lapse: Lapse,
    /// In which turn.
    pub turn: usize,
}

/// A fault that came to light, and what made it.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// Its place among all that showed.
    pub shown: usize,
    /// The rule that was broken.
    pub rule: RuleId,
    /// Slugs of the faults that it makes, the likeliest first.
    pub faults: &'static [&'static str],
    /// What it endangers.
    pub severity: Severity,
    /// The operation that made it, and its line of the ticket.
    pub made: (Operation, usize),
    /// The parts that it is on.
    pub parts: Vec<usize>,
    /// Band in which it was made.
    pub made_in: Stage,
    /// Band in which it first shows; `None`: after the work has left.
    pub shows_in: Option<Stage>,
    /// The turn in which it showed.
    pub turn: usize,
    /// When.
    pub when: When,
    /// The smallest rework that cures it.
    pub rework: Option<Rework>,
    /// What it costs.
    pub cost: Cost,
    /// What has still to be done to mend it, in order; `None` stands for stripping.
    pub left: Vec<Option<Operation>>,
    /// The turn in which it was mended.
    pub mended: Option<usize>,
}

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

/// Hours of the shortest schedule of the job in its room.
#[must_use]
pub fn quickest(walk: &Walk) -> Option<Spent> {
    let start = walk.start();
    let shortest = shortest(&start.job, start.info.ticket.clear_coats, &start.sheet, &start.air).ok()?;
    // Parts are made ready beside each other: an hour in which two are worked is one hour.
    let (mut bench_h, mut until) = (0.0, 0.0);
    let steps =
        crate::rules::sorted::sorted(shortest.steps.clone(), |a, b| a.start.get().total_cmp(&b.start.get()));
    for step in steps {
        bench_h += (step.end.get() - step.start.get().max(until)).max(0.0);
        until = step.end.get().max(until);
    }
    Some(Spent { total_h: shortest.total.get(), bench_h, day: day(until) })
}

/// The faults that came to light, those of one rule together.
#[must_use]
pub fn found(walk: &Walk, content: &Content) -> Vec<Found> {
    let operations = walk.run().operations();
    let one = |(place, shown): (usize, &super::surface::Shown)| {
        let defect = shown.defect;
        let line = walk.lines().get(defect.made)?;
        let (made_in, shows_in) = (defect.stage_made(&operations), defect.stage_shows(&operations));
        let faults = defect.faults();
        let start = walk.start();
        Some(Found {
            shown: place,
            rule: defect.rule(),
            faults,
            severity: defect.severity(),
            made: (line.operation, defect.made),
            parts: line.parts.clone(),
            made_in,
            shows_in,
            turn: shown.turn,
            when: shown.when,
            rework: faults.iter().find_map(|id| content.fault(id)).map(|fault| fault.severity),
            cost: of(faults, made_in, shows_in, &start.job, &start.sheet, content),
            left: mend::left(shown, walk.lines(), content),
            mended: shown.mended,
        })
    };
    let all: Vec<Found> = walk.shown().iter().enumerate().filter_map(one).collect();
    let first = |rule: RuleId| all.iter().filter(|one| one.rule == rule).map(|one| one.made.1).min();
    let order = |one: &Found| (first(one.rule), one.rule.0, one.made.1);
    crate::rules::sorted::sorted(all.clone(), |a, b| order(a).cmp(&order(b)))
}
