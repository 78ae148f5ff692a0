//! Oily rags: which steps leave them, how long they lie, and whether they went into the closed can in time.

use super::duty::{Due, Duty};
use super::job::Job;
use super::manner::Manner;
use super::operation::{CLEARS, COATS, LAID, Operation};
use super::plan::{self, Plan, Step, Told, WAIT};
use super::view::Placed;
use crate::quantity::{DUST, Hours, MINUTES_AN_HOUR};
use crate::rules::drying::waits::{StainKind, buff_setting, filler_setting, stain_setting};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Filler;
use crate::rules::verdict::CannotJudge;

/// Longest time that still counts as "immediately after use" (29 CFR 1910.107(g)(3)), hours. The figure is common
/// practice, no source.
const AT_ONCE_H: f64 = 0.5;

/// Rags that lie open since a step.
struct Lying {
    step: usize,
    hours: f64,
    untold: Option<&'static str>,
}

impl Lying {
    fn add(&mut self, time: &Result<f64, &'static str>) {
        match time {
            Ok(hours) => self.hours += hours,
            Err(key) => self.untold = Some(key),
        }
    }
}

/// Each step that leaves oily rags wants them put away at once: before anything else is laid, and with no wait before.
/// No later step sets their clock back; only filler that is still to be wiped off leaves its rags at the wiping.
pub(super) fn rags(job: &Job, plan: &Plan, sheet: &Sheet, due: &mut Vec<Due>, missing: &mut Vec<String>) {
    let mut open: Vec<Lying> = Vec::new();
    for (at, step) in plan.steps.iter().enumerate() {
        let oily = leaves_oily_rags(job, step).unwrap_or_else(|cannot| {
            missing.extend(cannot.missing);
            false
        });
        let before = passed(step.after, || kept(job, plan, sheet, at));
        open.iter_mut().for_each(|lying| lying.add(&before));
        if step.operation == Operation::RagsAway {
            for lying in open.drain(..) {
                due.push(Due { duty: Duty::Rags, step: lying.step, done: in_time(&lying, missing) });
            }
        } else if !oily && LAID.contains(&step.operation) {
            due.extend(open.drain(..).map(|lying| left(&lying, plan)));
        }
        if oily {
            if step.operation == Operation::WipeFiller {
                open.retain(|lying| !plan.steps.get(lying.step).is_some_and(|fill| wipes_off(step, fill)));
            }
            open.push(Lying { step: at, hours: 0.0, untold: None });
        }
        let within = within(step, sheet);
        open.iter_mut().for_each(|lying| lying.add(&within));
    }
    due.extend(open.iter().map(|lying| left(lying, plan)));
}

/// Whether a step leaves rags that heat up by themselves: oil stain, oil-based filler, oil varnish.
fn leaves_oily_rags(job: &Job, step: &Step) -> Result<bool, CannotJudge> {
    let placed = Placed { at: 0, step };
    match step.operation {
        Operation::Stain => placed.is(Manner::OilStain),
        Operation::Fill | Operation::WipeFiller => Ok(job.filler == Filler::OilPaste),
        op if COATS.contains(&op) => placed.is(Manner::OilCured),
        _ => Ok(false),
    }
}

/// Rags that were put away: too late stays too late, whatever else is untold.
fn in_time(lying: &Lying, missing: &mut Vec<String>) -> Option<bool> {
    let soon = lying.hours <= AT_ONCE_H + DUST;
    if let Some(key) = lying.untold.filter(|_| soon) {
        missing.push(key.to_owned());
        return None;
    }
    Some(soon)
}

/// Rags that were not put away; a plan that lists no such steps does not say so.
fn left(lying: &Lying, plan: &Plan) -> Due {
    let listed = plan.steps.iter().any(|step| step.operation == Operation::RagsAway);
    let done = (listed || plan.tells(Operation::RagsAway)).then_some(false);
    Due { duty: Duty::Rags, step: lying.step, done }
}

/// Hours that are told, or those that the sheet asks.
fn passed(told: Told<Hours>, kept: impl FnOnce() -> f64) -> Result<f64, &'static str> {
    match told {
        Told::Is(hours) => Ok(hours.get()),
        Told::Kept => Ok(kept()),
        Told::Untold => Err(WAIT),
    }
}

/// Hours from the first coat of a step to its last. Where coats are told apart and not counted there are two at least;
/// of coats kept as the sheet asks each has its rags put away.
fn within(step: &Step, sheet: &Sheet) -> Result<f64, &'static str> {
    let gaps = match step.coats {
        Told::Is(coats) => f64::from(coats.saturating_sub(1)),
        Told::Kept if step.between == Told::Kept => 0.0,
        Told::Kept => 1.0,
        Told::Untold => return Err(plan::COATS),
    };
    if gaps > 0.0 { Ok(gaps * passed(step.between, || sheet.wait(after(step)))?) } else { Ok(0.0) }
}

fn same_place(one: &Step, other: &Step) -> bool {
    one.part.is_none() || other.part.is_none() || one.part == other.part
}

fn wipes_off(wipe: &Step, fill: &Step) -> bool {
    fill.operation == Operation::Fill && same_place(wipe, fill)
}

/// The wait after something was laid.
fn after(laid: &Step) -> Setting {
    match laid.operation {
        Operation::Stain if laid.manners.contains(&Manner::OilStain) => stain_setting(StainKind::Oil),
        Operation::Stain => stain_setting(StainKind::Dye),
        Operation::Washcoat => Setting::WashcoatWait,
        Operation::Seal => Setting::SealWait,
        Operation::Colour | Operation::Shade => Setting::ColourWait,
        _ => Setting::ClearWait,
    }
}

/// Hours that the sheet asks before a step of which no time is told: the wait of what lies under it.
fn kept(job: &Job, plan: &Plan, sheet: &Sheet, at: usize) -> f64 {
    let (done, step) = match plan.steps.split_at_checked(at) {
        Some((done, [step, ..])) => (done, step),
        _ => return 0.0,
    };
    let last =
        |ops: &[Operation]| done.iter().rfind(|laid| ops.contains(&laid.operation) && same_place(laid, step));
    let film = last(COATS);
    let wait = |setting: Setting| sheet.wait(setting);
    let of_film = film.map(|film| wait(after(film)));
    let hours = match step.operation {
        Operation::WipeFiller => done
            .last()
            .filter(|fill| wipes_off(step, fill))
            .map(|_| sheet.get(Setting::FillerWipeFrom) / MINUTES_AN_HOUR),
        Operation::SandFiller => last(&[Operation::Fill]).map(|_| wait(filler_setting(job.filler))),
        Operation::SandBack => last(&[Operation::Stain]).map(|stain| wait(after(stain))),
        Operation::Scuff if film.is_some_and(|film| CLEARS.contains(&film.operation)) => {
            Some(wait(Setting::ScuffWait))
        }
        Operation::Scuff | Operation::Scrape | Operation::Inspect | Operation::Unmask => of_film,
        Operation::Rework => film.map(|_| wait(Setting::RunWait)),
        Operation::Level | Operation::Buff | Operation::Pack | Operation::Polish | Operation::FitParts => {
            film.map(|_| wait(buff_setting(job.class)))
        }
        op if LAID.contains(&op) => last(LAID).map(|under| match under.operation {
            Operation::Fill => wait(filler_setting(job.filler)),
            _ => wait(after(under)),
        }),
        _ => None,
    };
    hours.unwrap_or(0.0)
}
