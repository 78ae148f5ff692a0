//! The shortest valid schedule of a job: every operation as early as its waits and the working hours allow.
//!
//! Parts are made ready beside each other up to their seal coats; from there on the work goes on as a whole. Each
//! operation is tried on the run before it is taken, and a coat waits for air that is fit for it: where a film has grown too hard it is scuffed first, where a
//! window is closed it waits until that opens again.

use super::act::Act;
use super::air::AirLog;
use super::defect::Cause;
use super::run::Run;
use crate::quantity::{Hours, MINUTES_AN_HOUR};
use crate::rules::air::{Thinner, may_spray, spray_gate};
use crate::rules::drying::critical_path::WorkingDay;
use crate::rules::sequence::duration::duration;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::job::Job;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{COATS, Operation};
use crate::rules::sequence::plan::{Detail, Plan, Step};
use crate::rules::sequence::route;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::CannotJudge;
use std::collections::VecDeque;

/// An operation with its time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Timed {
    /// The operation.
    pub operation: Operation,
    /// The part, where it is done to one only.
    pub part: Option<usize>,
    /// Begin and end, in hours after the midnight before the job.
    pub start: Hours,
    /// End.
    pub end: Hours,
}

/// A schedule, and the run that it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Shortest {
    /// The operations, by their end.
    pub steps: Vec<Timed>,
    /// The run of them, handed over.
    pub run: Run,
    /// Hours from the first begin to the last end.
    pub total: Hours,
}

impl Shortest {
    /// The schedule as a plan that tells every wait.
    #[must_use]
    pub fn plan(&self) -> Plan {
        let steps = self.run.saved().acts.iter().map(|act| act.step.clone()).collect();
        Plan { steps, detail: Detail::Every }
    }
}

/// Works out the schedule for so many clear coats, begun when a day opens.
///
/// # Errors
/// [`CannotJudge`] naming `air_c` when the room is never fit for a wait to end, or `ticket` when the job has no parts.
pub fn shortest(job: &Job, clear_coats: u32, sheet: &Sheet, air: &AirLog) -> Result<Shortest, CannotJudge> {
    if job.parts.is_empty() {
        return Err(CannotJudge::without("ticket"));
    }
    let day = WorkingDay::of(sheet);
    let run = Run::start(job.clone(), sheet.clone(), air.clone());
    let mut bench = Bench { run, day, steps: Vec::new() };
    let (mut parts, whole) = chains(job, clear_coats, sheet);
    while let Some((place, timed, act)) = bench.first_of(&parts)? {
        bench.take(timed, act)?;
        if let Some(chain) = parts.get_mut(place) {
            chain.pop_front();
        }
    }
    for step in whole {
        bench.go_on(step)?;
    }
    bench.run.hand_over();
    let (begun, ended) = (day.opens().get(), bench.run.now().get() + day.opens().get());
    Ok(Shortest { steps: bench.steps, run: bench.run, total: Hours::saturating(ended - begun) })
}

/// What is done to each part by itself, and what is then done to the whole.
fn chains(job: &Job, clear_coats: u32, sheet: &Sheet) -> (Vec<VecDeque<Step>>, Vec<Step>) {
    let plan = route::plan(job, sheet).steps;
    let sealed = plan.iter().rposition(|step| step.operation == Operation::Seal).map_or(0, |seal| seal + 1);
    let (own, whole) = plan.split_at(sealed);
    let part = |place: usize, about: &crate::rules::sequence::job::Part| {
        let wanted = own.iter().filter(|step| match step.operation {
            Operation::SolventWipe => about.wants_wipe(),
            _ => step.part.is_none_or(|on| on == place),
        });
        wanted.map(|step| step.clone().on(place)).collect()
    };
    let parts = job.parts.iter().enumerate().map(|(place, about)| part(place, about)).collect();
    let mut steps = Vec::new();
    for step in whole {
        let times = if step.operation == Operation::Clear { clear_coats } else { 1 };
        steps.extend((0..times).map(|_| step.clone().coats(1)));
    }
    (parts, steps)
}

/// The work while it is being scheduled. The run's clock counts from when the first day opens.
struct Bench {
    run: Run,
    day: WorkingDay,
    steps: Vec<Timed>,
}

impl Bench {
    /// Of the operations that come next on each part, the one that ends first.
    fn first_of(&self, parts: &[VecDeque<Step>]) -> Result<Option<(usize, Timed, Act)>, CannotJudge> {
        let mut first: Option<(usize, Timed, Act)> = None;
        for (place, chain) in parts.iter().enumerate() {
            let Some(step) = chain.front() else { continue };
            let act = Act::from(step.clone());
            let timed = self.time(&act, self.free(place))?;
            if first.as_ref().is_none_or(|(_, known, _)| timed.end < known.end) {
                first = Some((place, timed, act));
            }
        }
        Ok(first)
    }

    /// When the hands are free for a part: when the last operation on it ended.
    fn free(&self, part: usize) -> f64 {
        let own = self.steps.iter().rev().find(|timed| timed.part == Some(part));
        own.map_or(self.day.opens().get(), |timed| timed.end.get())
    }

    /// The earliest time for an operation, not before some moment.
    fn time(&self, act: &Act, free: f64) -> Result<Timed, CannotJudge> {
        let opens = self.day.opens().get();
        let over = self.run.waiting(act).map_or(f64::NEG_INFINITY, |waiting| waiting.over + opens);
        if over == f64::INFINITY {
            return Err(CannotJudge::without("air_c"));
        }
        let operation = act.step.operation;
        let work = duration(operation, &self.run.saved().sheet);
        // Filler must be wiped off before the day ends.
        let needs = match operation {
            Operation::Fill => {
                let wipe = self.run.saved().sheet.get(Setting::FillerWipeFrom) / MINUTES_AN_HOUR;
                Hours::saturating(work.get() + wipe)
            }
            _ => work,
        };
        let start = self.in_fit_air(operation, self.day.begin(over.max(free), needs), needs)?;
        let (start, end) = (Hours::saturating(start), Hours::saturating(self.day.end(start, work)));
        Ok(Timed { operation, part: act.step.part, start, end })
    }

    /// The first begin from a moment on at which the air lets an operation be done; what is no coat goes on in any air.
    fn in_fit_air(&self, operation: Operation, start: f64, work: Hours) -> Result<f64, CannotJudge> {
        let opens = self.day.opens().get();
        let (sheet, air) = (&self.run.saved().sheet, &self.run.saved().air);
        let mut start = start;
        // The run counts an operation at its end, so that the air at its end decides.
        while let Some(climate) = air.at(start + work.get() - opens).filter(|_| COATS.contains(&operation)) {
            let gate = spray_gate(climate.air, climate.humidity, climate.work, sheet);
            if may_spray(&gate, Thinner::Retarded).answer {
                break;
            }
            let change =
                air.next_change(start + work.get() - opens).ok_or_else(|| CannotJudge::without("air_c"))?;
            start = self.day.begin((change + opens - work.get()).max(start), work);
        }
        Ok(start)
    }

    /// Puts retarder into the mix of a coat where the air asks for it.
    fn mixed(&self, act: &mut Act, ended: f64) {
        let saved = self.run.saved();
        let climate = saved.air.at(ended).filter(|_| COATS.contains(&act.step.operation));
        let asked = climate.is_some_and(|climate| {
            let gate = spray_gate(climate.air, climate.humidity, climate.work, &saved.sheet);
            !may_spray(&gate, Thinner::Fast).answer
        });
        if asked {
            act.step.manners.push(Manner::Retarder);
        }
    }

    /// Does an operation: the run counts it at its end.
    fn take(&mut self, timed: Timed, mut act: Act) -> Result<(), CannotJudge> {
        let since = timed.end.get() - self.day.opens().get() - self.run.now().get();
        self.mixed(&mut act, timed.end.get() - self.day.opens().get());
        act.step = act.step.after(Hours::saturating(since));
        self.run.act(act)?;
        self.steps.push(timed);
        Ok(())
    }

    /// Does an operation to the whole work, after what it takes to make the film fit for it.
    fn go_on(&mut self, step: Step) -> Result<(), CannotJudge> {
        let free = self.steps.last().map_or(self.day.opens().get(), |timed| timed.end.get());
        let act = Act::from(step);
        let timed = self.time(&act, free)?;
        if self.would_make(&timed, &act, OrderError::HardFilmUnscuffed) || self.rests_a_night(&timed, &act) {
            let scuff = Act::from(Step::of(Operation::Scuff).how(Manner::Light));
            let scuffed = self.time(&scuff, free)?;
            self.take(scuffed, scuff)?;
            let timed = self.time(&act, scuffed.end.get())?;
            return self.take_in_window(timed, act);
        }
        self.take_in_window(timed, act)
    }

    /// Takes an operation now, or when a closed window has opened again.
    fn take_in_window(&mut self, timed: Timed, act: Act) -> Result<(), CannotJudge> {
        if !self.would_make(&timed, &act, OrderError::RecoatWindowClosed) {
            return self.take(timed, act);
        }
        let opens = self.run.saved().sheet.get(Setting::RecoatOpensAgain);
        let coated = self.steps.iter().rev().find(|step| step.operation != Operation::Scuff);
        let later = self.time(&act, coated.map_or(timed.end.get(), |step| step.end.get()) + opens)?;
        self.take(later, act)
    }

    /// Whether an operation done then would make an error.
    fn would_make(&self, timed: &Timed, act: &Act, error: OrderError) -> bool {
        let mut tried = Self { run: self.run.clone(), day: self.day, steps: Vec::new() };
        let known = tried.run.defects().len();
        let done = tried.take(*timed, act.clone());
        let made = tried.run.defects().iter().skip(known).any(|defect| defect.cause == Cause::Order(error));
        done.is_ok() && made
    }

    /// Whether clear goes on after the coats of another day: then the film is scuffed first.
    fn rests_a_night(&self, timed: &Timed, act: &Act) -> bool {
        let last = self.steps.last();
        let over_clear = last.is_some_and(|last| last.operation == Operation::Clear);
        let rest = self.run.saved().sheet.get(Setting::ScuffWait);
        let apart = last.is_some_and(|last| timed.start.get() - last.end.get() >= rest);
        over_clear && act.step.operation == Operation::Clear && apart
    }
}
