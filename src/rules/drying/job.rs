//! How long a whole job takes: its operations, their waits, its longest path over working hours.

use super::critical_path::{Link, OpId, Plan, Schedule, WorkingDay};
use super::job_step::JobStep;
use super::waits::{Earliest, StainKind, Told, Wait, earliest};
use super::{AIR, Modelled};
use crate::quantity::{Celsius, Hours, Measure, Micrometres, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::{Filler, WorkClass};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

/// No wait at all.
const NO_WAIT: Hours = Hours::saturating(0.0);

/// What of a job decides how long it takes.
#[derive(Debug, Clone, PartialEq)]
pub struct JobOutline {
    /// For each part, whether it is filled.
    pub parts_filled: Vec<bool>,
    /// Stain on the bare wood, if any.
    pub stain: Option<StainKind>,
    /// Passes of colour in the film.
    pub colour_passes: u32,
    /// Whether the edge is shaded.
    pub shaded: bool,
    /// Whether there is binding to scrape.
    pub binding: bool,
    /// Clear coats.
    pub clear_coats: u32,
    /// Dry film of one clear coat.
    pub coat: Micrometres,
    /// Class of work.
    pub class: WorkClass,
    /// Kind of filler.
    pub filler: Filler,
    /// Whether the clear is levelled and buffed, and not left off the gun ([`Look::is_rubbed_out`]).
    ///
    /// [`Look::is_rubbed_out`]: crate::rules::term::Look::is_rubbed_out
    pub rubbed: bool,
}

/// The time plan of a job.
#[derive(Debug, Clone, PartialEq)]
pub struct JobTime {
    /// Every operation with begin and end.
    pub schedule: Schedule<JobStep>,
    /// The wait before levelling; none where the clear is left off the gun.
    pub before_levelling: Option<Earliest>,
}

impl JobOutline {
    /// Dry film of all clear coats together.
    #[must_use]
    pub fn build(&self) -> Micrometres {
        Micrometres::saturating(self.coat.get() * f64::from(self.clear_coats))
    }
}

/// The shortest time that a job takes with every wait kept, begun when a day opens. Parts run beside each other until
/// the colour; each coat waits for the last; after the coats that the sheet allows for a day the film rests, is scuffed
/// on another day, and goes on. Without an air temperature the sheet's reference is taken.
///
/// # Errors
/// [`CannotJudge`] when the job has no parts or no clear coats.
pub fn job_time(outline: &JobOutline, air: Option<Celsius>, sheet: &Sheet) -> Judged<Modelled<JobTime>> {
    if outline.parts_filled.is_empty() || outline.clear_coats == 0 {
        return Err(CannotJudge::without("ticket"));
    }
    let air = air.unwrap_or_else(|| sheet.celsius(Setting::WaitReference));
    let told = Told {
        class: Some(outline.class),
        filler: Some(outline.filler),
        stain: outline.stain,
        air: Some(air),
        film: Some(outline.build()),
    };
    let wait = earliest(Wait::Buff, &told, sheet)?;
    let Modelled::Estimate(buff) = wait.answer else { return Ok(wait.map(|_| Modelled::OutsideModel)) };
    let mut job = Job { plan: Plan::new(), outline, told, sheet };
    let bodies = job.parts()?;
    let ready = job.colour(bodies)?;
    let last = job.clear(ready)?;
    if outline.rubbed {
        let level = job.then(JobStep::Level, last, buff.hours);
        job.then(JobStep::Buff, level, NO_WAIT);
    }
    let schedule = job.plan.schedule(WorkingDay::of(sheet));
    let hours = |value: Hours| Measure::new(value.get(), Unit::Hour, 1);
    let (total, waiting) = (hours(schedule.total), hours(schedule.waiting));
    let before_levelling = outline.rubbed.then_some(buff);
    let ruling =
        Ruling::by("drying.longest-path", Modelled::Estimate(JobTime { schedule, before_levelling }))
            .and("drying.working-hours")
            .and("drying.coats-a-day");
    let ruling = if outline.rubbed { ruling.resting_on(&wait) } else { ruling };
    Ok(ruling.step("waiting", "", waiting).step("job-time", "", total))
}

struct Job<'a> {
    plan: Plan<JobStep>,
    outline: &'a JobOutline,
    told: Told,
    sheet: &'a Sheet,
}

impl Job<'_> {
    /// Hours of a wait. The room was found inside the model before the plan was begun.
    fn hours(&self, wait: Wait) -> Result<Hours, CannotJudge> {
        let film = if wait == Wait::ClearToClear { Some(self.outline.coat) } else { self.told.film };
        let ruling = earliest(wait, &Told { film, ..self.told }, self.sheet)?;
        ruling.answer.estimate().map(|wait| wait.hours).ok_or_else(|| CannotJudge::without(AIR))
    }

    fn then(&mut self, step: JobStep, after: OpId, wait: Hours) -> OpId {
        self.plan.add(step, step.work(self.sheet), &[Link::Wait(after, wait)])
    }

    /// Every part up to its seal coat, and the wait after it.
    fn parts(&mut self) -> Result<Vec<Link>, CannotJudge> {
        let seal = self.hours(Wait::SealToNext)?;
        let mut sealed = Vec::new();
        for filled in &self.outline.parts_filled {
            let (mut at, mut wait) =
                (self.plan.add(JobStep::Prepare, JobStep::Prepare.work(self.sheet), &[]), NO_WAIT);
            for (step, after) in self.under_the_seal(*filled)? {
                at = self.then(step, at, wait);
                wait = after;
            }
            let at = self.then(JobStep::Seal, at, wait);
            sealed.push(Link::Wait(at, seal));
        }
        Ok(sealed)
    }

    /// What lies under the seal coat of a part, in the order of the sheet, each with its wait.
    fn under_the_seal(&self, filled: bool) -> Result<Vec<(JobStep, Hours)>, CannotJudge> {
        let mut steps = Vec::new();
        if self.outline.stain.is_some() {
            steps.push((JobStep::Stain, self.hours(Wait::StainToNext)?));
        }
        if filled {
            let fill = (JobStep::Fill, self.hours(Wait::FillerToNext)?);
            let stain_first = self.sheet.is_on(Setting::StainFirst);
            if stain_first && !steps.is_empty() && self.sheet.is_on(Setting::WashcoatBeforeFill) {
                steps.push((JobStep::Washcoat, self.hours(Wait::WashcoatToNext)?));
            }
            let place = if stain_first { steps.len() } else { 0 };
            steps.insert(place, fill);
        }
        Ok(steps)
    }

    /// Colour, shade, protective clear, binding and inspection; gives what the clear coats wait for.
    fn colour(&mut self, sealed: Vec<Link>) -> Result<Vec<Link>, CannotJudge> {
        let (colour, clear) = (self.hours(Wait::ColourToColour)?, self.hours(Wait::ClearToClear)?);
        let passes = (0..self.outline.colour_passes).map(|_| JobStep::Colour);
        let coats = passes.chain(self.outline.shaded.then_some(JobStep::Shade));
        let mut links = sealed;
        let mut coloured = false;
        for step in coats {
            let at = self.plan.add(step, step.work(self.sheet), &links);
            links = vec![Link::Wait(at, colour)];
            coloured = true;
        }
        if coloured && self.sheet.is_on(Setting::ProtectiveClear) {
            let at = self.plan.add(JobStep::Protect, JobStep::Protect.work(self.sheet), &links);
            links = vec![Link::Wait(at, clear)];
        }
        let dry_work = self.outline.binding.then_some(JobStep::Scrape).into_iter().chain([JobStep::Inspect]);
        for step in dry_work {
            let at = self.plan.add(step, step.work(self.sheet), &links);
            links = vec![Link::Wait(at, NO_WAIT)];
        }
        Ok(links)
    }

    /// The clear coats; gives the last one.
    fn clear(&mut self, ready: Vec<Link>) -> Result<OpId, CannotJudge> {
        let (clear, scuff) = (self.hours(Wait::ClearToClear)?, self.hours(Wait::Scuff)?);
        let a_day = self.sheet.get(Setting::CoatsADay).max(1.0);
        let mut last = self.plan.add(JobStep::Clear, JobStep::Clear.work(self.sheet), &ready);
        let mut today = 1.0;
        for _ in 1..self.outline.clear_coats {
            if today < a_day {
                last = self.then(JobStep::Clear, last, clear);
                today += 1.0;
            } else {
                let rested = [Link::Wait(last, scuff), Link::NextDay(last)];
                let scuffed = self.plan.add(JobStep::Scuff, JobStep::Scuff.work(self.sheet), &rested);
                last = self.then(JobStep::Clear, scuffed, NO_WAIT);
                today = 1.0;
            }
        }
        Ok(last)
    }
}

terms! {
    /// Whether a job is done by its day.
    Delivery {
        /// With every wait kept.
        InTime = "in-time",
        /// The wait before levelling alone takes it past the day.
        LateByLastWait = "late-by-last-wait",
        /// The last wait would fit, the whole chain does not.
        LateByWholeChain = "late-by-whole-chain",
        /// No time can be told in this room.
        OutsideModel = "outside-model",
    }
}

/// Whether a job that has not begun is done in the time left, and what takes it past.
#[must_use]
pub fn delivery(time: Ruling<Modelled<JobTime>>, left: Hours) -> Ruling<Delivery> {
    time.map(|answer| match answer {
        Modelled::OutsideModel => Delivery::OutsideModel,
        Modelled::Estimate(time) if time.schedule.total <= left => Delivery::InTime,
        Modelled::Estimate(time) if time.before_levelling.is_some_and(|wait| wait.hours > left) => {
            Delivery::LateByLastWait
        }
        Modelled::Estimate(_) => Delivery::LateByWholeChain,
    })
    .step("time-left", "", Measure::new(left.get(), Unit::Hour, 0))
}
