//! A right way on: from where a walk stands to the hand-over, every wait kept, every duty seen to.
//!
//! It is one right way of several, in the order of the shop sheet. It says what going on would show, and mistakes are
//! planted in it; it is never what a learner is held against.

mod ready;
mod values;

pub use ready::{FOR_THE_BENCH, FOR_THE_GUN};
pub use values::as_the_sheet_asks;

use super::clock::day;
use super::decision::{Decision, Parts, RoomAct, Work};
use super::room::sprays;
use super::start::Start;
use super::story::Walk;
use super::wait::LAST_DAY;
use crate::content::Content;
use crate::process::defect::Cause;
use crate::process::film_to_level;
use crate::process::lying::Lying;
use crate::quantity::DUST;
use crate::rules::air::Thinner;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::operation::{BARE_WOOD, Operation};
use crate::rules::sequence::route;
use crate::rules::sheet::Setting;
use crate::rules::term::Stage;
use ready::{Air, air, leave, make_ready, see_to, waits};
use values::work;

/// More decisions than the longest job takes.
const DECISIONS_MOST: usize = 400;

/// The decisions from where a walk stands to its hand-over; `None` where no right way is found: the room is never fit.
#[must_use]
pub fn rest(walk: &Walk, content: &Content) -> Option<Vec<Decision>> {
    let on = to_the_end(walk, content)?;
    Some(decisions_since(walk, &on))
}

/// What was decided on a walk since it stood there.
pub(super) fn decisions_since(walk: &Walk, on: &Walk) -> Vec<Decision> {
    on.turns().iter().skip(walk.turns().len()).map(|turn| turn.decision.clone()).collect()
}

/// A walk gone on with in a right way until it is handed over; `None` where no such way is found.
pub(super) fn to_the_end(walk: &Walk, content: &Content) -> Option<Walk> {
    let mut on = walk.clone();
    while !on.is_over() {
        if on.turns().len() - walk.turns().len() >= DECISIONS_MOST {
            return None;
        }
        on.decide(next(&on, content)?, content).ok()?;
    }
    Some(on)
}

/// The same, or the walk as it stands where no such way is found.
#[must_use]
pub(super) fn gone_on(walk: &Walk, content: &Content) -> Walk {
    to_the_end(walk, content).unwrap_or_else(|| walk.clone())
}

/// What comes next in a right way; `None` where the room is never fit for it.
#[must_use]
pub fn next(walk: &Walk, content: &Content) -> Option<Decision> {
    if walk.room().rags_about() {
        return Some(see_to(walk, RoomAct::RagsAway));
    }
    let Some((operation, parts)) = step(walk) else {
        let cleaned = walk.room().gun_dirty().then(|| see_to(walk, RoomAct::GunCleaned));
        return Some(cleaned.unwrap_or(Decision::HandOver));
    };
    if let Some(wait) = waits(walk, content, operation, &parts) {
        return Some(dried(walk, content, wait, &parts));
    }
    let plain = Decision::Work(work(walk, content, operation, parts.clone(), Thinner::Fast));
    if makes(walk, content, &plain, OrderError::RecoatWindowClosed) {
        let opens = walk.start().sheet.get(Setting::RecoatOpensAgain);
        let age = parts.iter().filter_map(|part| walk.part(*part)?.film().map(|film| film.age.get()));
        let youngest = age.fold(opens, f64::min);
        return Some(leave(walk, walk.clock() + (opens - youngest).max(DUST)));
    }
    if makes(walk, content, &plain, OrderError::HardFilmUnscuffed) || rested(walk, operation, &parts) {
        let scuff = Operation::Scuff;
        let wait = waits(walk, content, scuff, &parts).map(|wait| dried(walk, content, wait, &parts));
        let scuffed = || Decision::Work(work(walk, content, scuff, parts, Thinner::Fast));
        return Some(wait.or_else(|| make_ready(walk, scuff)).unwrap_or_else(scuffed));
    }
    let thinner = match air(walk) {
        _ if !sprays(operation) => Thinner::Fast,
        Air::Fit(thinner) => thinner,
        Air::From(moment) => return Some(leave(walk, moment)),
        Air::Never => return None,
    };
    Some(
        make_ready(walk, operation)
            .unwrap_or_else(|| Decision::Work(work(walk, content, operation, parts, thinner))),
    )
}

/// Waits until a moment. What does not dry before the clock of a walk stops comes off again, and where there is no time
/// for that either, the work is handed over as it is.
fn dried(walk: &Walk, content: &Content, until: f64, parts: &[usize]) -> Decision {
    if day(until) <= LAST_DAY {
        return leave(walk, until);
    }
    let worked = |part: &usize| walk.part(*part).is_some_and(|lying| !lying.done.is_empty());
    let strip = Decision::Strip(Parts { parts: parts.iter().copied().filter(worked).collect() });
    if walk.tried(strip.clone(), content).is_ok() { strip } else { Decision::HandOver }
}

/// The work that comes next in the order of the shop sheet, with its values, whatever has to be waited for before it.
#[must_use]
pub fn next_work(walk: &Walk, content: &Content) -> Option<Work> {
    let (operation, parts) = step(walk)?;
    Some(work(walk, content, operation, parts, Thinner::Fast))
}

/// The first operation of the shop's order that is lacking, with the parts that it is lacking on.
fn step(walk: &Walk) -> Option<(Operation, Vec<usize>)> {
    let start = walk.start();
    let plan = route::plan(&start.job, &start.sheet).steps;
    let lying: Vec<Lying> = (0..start.parts()).filter_map(|part| walk.part(part)).collect();
    for operation in route::order(&start.job, &start.sheet) {
        let wants = |part: usize, lying: &Lying| {
            let asked =
                plan.iter().any(|step| step.operation == operation && step.part.is_none_or(|on| on == part));
            let about = start.job.parts.get(part);
            let oily = operation != Operation::SolventWipe || about.is_some_and(|about| about.wants_wipe());
            asked && oily && lacks(operation, lying, start)
        };
        let parts: Vec<usize> = lying
            .iter()
            .enumerate()
            .filter(|(part, lying)| wants(*part, lying))
            .map(|(part, _)| part)
            .collect();
        if !parts.is_empty() {
            return Some((operation, parts));
        }
    }
    None
}

/// Whether an operation is lacking on a part and not too late.
fn lacks(operation: Operation, lying: &Lying, start: &Start) -> bool {
    let clears = lying.coats(Operation::Clear);
    let filler = lying.laid.last().filter(|top| top.operation == Operation::Fill);
    match operation {
        Operation::Clear => lacks_clear(lying, start),
        Operation::WipeFiller => filler.is_some_and(|filler| !filler.wiped),
        Operation::SandFiller => filler.is_some_and(|filler| !filler.sanded),
        Operation::Washcoat if lying.last(Operation::Fill).is_some() => false,
        Operation::Level => !lying.levelled,
        Operation::Buff => !lying.buffed,
        _ => {
            let late = match operation.stage() {
                _ if BARE_WOOD.contains(&operation) => !lying.laid.is_empty(),
                stage if stage < Stage::Seal => lying.is_coated(),
                Stage::Seal => lying.is_coated() || !lying.laid.is_empty() && lying.last(operation).is_some(),
                stage if stage <= Stage::Clear => clears > 0,
                _ => false,
            };
            !late && !lying.done.contains(&operation)
        }
    }
}

/// Whether clear is lacking: coats of the ticket, film that the levelling to come takes off and leaves, or all of it where a
/// levelling took it. What was buffed is done, unless nothing is left of it.
fn lacks_clear(lying: &Lying, start: &Start) -> bool {
    let levels = route::asks_for(&start.job, &start.sheet, Operation::Level);
    let few = lying.coats(Operation::Clear) < start.info.ticket.clear_coats;
    let thin = levels && !lying.levelled && lying.clear < film_to_level(&start.sheet);
    let gone = lying.done.contains(&Operation::Level) && lying.clear.get() <= 0.0;
    gone || (few || thin) && !lying.done.contains(&Operation::Buff)
}

/// Whether clear goes on over the clear of another day that was not scuffed.
fn rested(walk: &Walk, operation: Operation, parts: &[usize]) -> bool {
    let rest = walk.start().sheet.get(Setting::ScuffWait);
    let old = |lying: Lying| {
        let film = lying.film().filter(|film| film.operation == Operation::Clear);
        film.is_some_and(|film| film.age.get() >= rest && !film.abraded)
    };
    let any = parts.iter().any(|part| walk.part(*part).is_some_and(old));
    operation == Operation::Clear && any
}

/// Whether a decision would make an error now.
fn makes(walk: &Walk, content: &Content, decision: &Decision, error: OrderError) -> bool {
    let known = walk.run().defects().len();
    let tried = walk.tried(decision.clone(), content);
    tried.is_ok_and(|(state, _)| {
        state.run.defects().iter().skip(known).any(|defect| defect.cause == Cause::Order(error))
    })
}
