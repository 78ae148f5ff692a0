//! A job of which something is untold, worked by guesses: what shows by every guess is certain, what shows by some is not
//! to be judged until more is told.

use super::told::Account;
use crate::process::act::Act;
use crate::process::air::AirLog;
use crate::process::defect::{Cause, Defect};
use crate::process::run::Run;
use crate::quantity::Hours;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::plan::{COATS, Plan, Step, Told, WAIT};
use crate::rules::sorted::sorted;
use crate::rules::term::Term;

/// Hours that outlast every wait and every recoat window of a sheet: a year.
const LONG: f64 = 8_760.0;
/// Judged by the air at a coat alone: not where that air is untold.
const OF_THE_AIR: [OrderError; 2] = [OrderError::AirOutsideWindow, OrderError::ColdWork];
/// Wrong too early and too late and right between: no guess of an early and of a late hour makes it certain.
const TWO_SIDED: [OrderError; 1] = [OrderError::FillerWipedOffTime];

/// What shows by guesses.
#[derive(Debug, Clone, Default)]
pub(super) struct Guessed {
    /// What shows whatever is told.
    pub(super) certain: Vec<Defect>,
    /// Keys of what would have to be told to judge the rest.
    pub(super) missing: Vec<String>,
}

/// Works a job whose coats are told in their air, as far as it is known. From the moment `known` on no hour is: which air
/// falls on which wait is not known either.
pub(super) fn guess(account: &Account, plan: &Plan, known: f64) -> Guessed {
    let air = AirLog::new(account.air.clone());
    let least = air.clone().then_slowest(known, &account.sheet);
    let most = air.then_fastest(known, &account.sheet);
    let shown = |hours, holds: Option<Manner>| {
        let air = if hours > 0.0 { &most } else { &least };
        work(account, plan, air, |step| filled(step, hours, holds))
    };
    let (early, late) = (shown(0.0, None), shown(LONG, None));
    let timed = known.is_finite();
    let turns = |one: &Defect| timed && is_two_sided(one);
    let mut guessed = Guessed::default();
    if !same(&early, &late) || early.iter().any(turns) {
        guessed.missing.extend(hidden(plan).map(str::to_owned));
    }
    let mut certain = early.clone();
    certain.retain(|one| has(&late, one) && !turns(one));
    for manner in unknown(plan) {
        let (early_so, late_so) = (shown(0.0, Some(manner)), shown(LONG, Some(manner)));
        if !same(&early, &early_so) || !same(&late, &late_so) {
            guessed.missing.push(manner.slug().to_owned());
        }
        certain.retain(|one| has(&early_so, one) && has(&late_so, one));
    }
    guessed.certain = certain;
    guessed
}

fn work(account: &Account, plan: &Plan, air: &AirLog, filled: impl Fn(&Step) -> Step) -> Vec<Defect> {
    let mut run = Run::start(account.job.clone(), account.sheet.clone(), air.clone());
    for (step, pass) in plan.steps.iter().zip(&account.passes) {
        // A filled step leaves nothing untold.
        let _ = run.act(Act { pass: *pass, ..Act::from(filled(step)) });
    }
    if account.handed_over {
        run.hand_over();
    }
    let airless = |made: usize| plan.steps.get(made).is_some_and(|step| step.climate == Told::Untold);
    let of_air = |cause| matches!(cause, Cause::Order(error) if OF_THE_AIR.contains(&error));
    let known = |one: &&Defect| !(of_air(one.cause) && airless(one.made));
    run.defects().iter().filter(known).copied().collect()
}

/// A step with what is untold of it told one way; what bears on nothing but the step itself is as the sheet asks, and left
/// to the order checker.
pub(super) fn filled(step: &Step, hours: f64, holds: Option<Manner>) -> Step {
    let mut step = step.clone();
    let (guessed, late) = (Told::Is(Hours::saturating(hours)), hours > 0.0);
    if step.after == Told::Untold {
        step.after = guessed;
    }
    if step.between == Told::Untold || (late && step.coats == Told::Untold) {
        step.between = guessed;
    }
    if step.coats == Told::Untold {
        step.coats = if late { Told::Kept } else { Told::Is(1) };
    }
    step.manners.extend(holds.filter(|manner| step.unknown.contains(manner)));
    step.unknown.clear();
    step.grit = kept(step.grit);
    step.climate = kept(step.climate);
    step.mix_age = kept(step.mix_age);
    step
}

fn kept<T>(told: Told<T>) -> Told<T> {
    if matches!(told, Told::Untold) { Told::Kept } else { told }
}

/// Keys of what is untold and bears on the clock.
fn hidden(plan: &Plan) -> impl Iterator<Item = &'static str> {
    let any = |untold: fn(&Step) -> bool| plan.steps.iter().any(untold);
    let waits = any(|step| step.after == Told::Untold || step.between == Told::Untold);
    let coats = any(|step| step.coats == Told::Untold);
    [waits.then_some(WAIT), coats.then_some(COATS)].into_iter().flatten()
}

/// Remarks of which it is not known whether they hold, each once.
fn unknown(plan: &Plan) -> Vec<Manner> {
    let mut unknown =
        sorted(plan.steps.iter().flat_map(|step| step.unknown.iter().copied()).collect(), Ord::cmp);
    unknown.dedup();
    unknown
}

fn has(defects: &[Defect], one: &Defect) -> bool {
    defects.iter().any(|other| other.cause == one.cause && other.made == one.made)
}

fn same(some: &[Defect], others: &[Defect]) -> bool {
    some.iter().all(|one| has(others, one)) && others.iter().all(|one| has(some, one))
}

fn is_two_sided(one: &Defect) -> bool {
    matches!(one.cause, Cause::Order(error) if TWO_SIDED.contains(&error))
}
