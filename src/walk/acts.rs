//! An operation with its values as the run takes it: acts with their begin and end, or why it cannot be done.

use super::decision::{Decision, Work};
use super::hindered::hinders;
use super::impossible::{Impossible, Why};
use super::remarks::follows;
use super::start::Start;
use super::state::State;
use super::values::{Values, values};
use crate::content::{Ask, Content};
use crate::process::act::Act;
use crate::quantity::{DUST, Hours, Micrometres};
use crate::rules::sequence::duration::duration;
use crate::rules::sequence::operation::COATS;
use crate::rules::sequence::plan::{Step, Told};
use std::collections::BTreeSet;

/// Time after the shop closes in which the room is still seen to: our own choice, no source.
const TIDY_H: Hours = Hours::saturating(1.0);

/// An act with its time, in hours after the first midnight.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Timed {
    pub(super) act: Act,
    pub(super) begun: f64,
    pub(super) ended: f64,
    pub(super) wet: Option<Micrometres>,
}

/// What an operation comes to, each of its coats an act of its own.
pub(super) fn acts(
    state: &State,
    start: &Start,
    content: &Content,
    what: &Decision,
    work: &Work,
) -> Result<Vec<Timed>, Box<Impossible>> {
    let parts = parts(start, what, &work.parts)?;
    let values = values(start, content, what, work)?;
    for part in &parts {
        if let Some(lying) = state.run.lying(*part)
            && let Some(why) = hinders(work.operation, &lying, start)
        {
            return Err(Impossible::new(what, why).on(*part));
        }
    }
    let takes = duration(work.operation, &start.sheet);
    let begun = opened(start, what, state.clock(start), takes)?;
    let coats = values.numbers.get(&Ask::Coats).copied().unwrap_or(1.0);
    let between = values.numbers.get(&Ask::Between).copied().unwrap_or_default();
    let mut timed = vec![one(state, start, work, &parts, &values, begun, takes)];
    for nth in 1_u32.. {
        let Some(last) = timed.last().filter(|_| f64::from(nth) < coats) else { break };
        let begun = start.day.begin(last.ended + between, takes);
        timed.push(one(state, start, work, &parts, &values, begun, takes));
    }
    Ok(timed)
}

/// The parts that are named, in the order of the ticket.
pub(super) fn parts(start: &Start, what: &Decision, named: &[usize]) -> Result<Vec<usize>, Box<Impossible>> {
    let parts: BTreeSet<usize> = named.iter().copied().collect();
    if named.is_empty() {
        return Err(Impossible::new(what, Why::NoPart));
    }
    let strange = named.iter().find(|part| **part >= start.parts());
    if let Some(part) = strange {
        return Err(Impossible::new(what, Why::UnknownPart).on(*part));
    }
    if parts.len() < named.len() {
        return Err(Impossible::new(what, Why::UnknownPart));
    }
    Ok(parts.into_iter().collect())
}

/// When the shop opens again, where it is shut and nobody tidies up any more; both in hours after the first midnight.
pub(super) fn shut(start: &Start, clock: f64) -> Option<f64> {
    let no_time = Hours::saturating(0.0);
    let begin = start.day.begin(clock, no_time);
    let tidying = (clock - TIDY_H.get()).max(0.0);
    (begin > clock + DUST && start.day.begin(tidying, no_time) > tidying + DUST).then_some(begin)
}

/// Now, where the shop is open and the rest of the day is long enough.
pub(super) fn opened(
    start: &Start,
    what: &Decision,
    clock: f64,
    takes: Hours,
) -> Result<f64, Box<Impossible>> {
    let begin = start.day.begin(clock, takes);
    if begin <= clock + DUST {
        return Ok(clock);
    }
    let open_at_all = start.day.begin(clock, Hours::saturating(0.0)) <= clock + DUST;
    let why = if open_at_all { Why::DayTooShort } else { Why::Closed };
    Err(Impossible::new(what, why).from(begin))
}

fn one(
    state: &State,
    start: &Start,
    work: &Work,
    parts: &[usize],
    values: &Values<'_>,
    begun: f64,
    takes: Hours,
) -> Timed {
    let sheet = &start.sheet;
    let number = |ask: Ask| values.numbers.get(&ask).copied();
    let sprayed = COATS.contains(&work.operation);
    let pass = values.pass(sprayed && state.room.draws_badly());
    let mut step = Step::of(work.operation);
    step.coats = Told::Is(1);
    step.grit = number(Ask::LastGrit).map_or(Told::Kept, |grit| Told::Is(whole(grit)));
    step.mix_age = number(Ask::MixAge).map_or(Told::Kept, |age| Told::Is(Hours::saturating(age)));
    step.manners = values.picks.iter().flat_map(|pick| pick.manners.iter().copied()).collect();
    step.manners.extend(follows(state, work, parts, &pass, sheet));
    if parts.len() < start.parts() {
        step.part = parts.first().copied();
    }
    let also = if step.part.is_some() { parts.iter().skip(1).copied().collect() } else { Vec::new() };
    let act = Act { step, pass, took: takes, also };
    Timed { act, begun, ended: start.day.end(begun, takes), wet: pass.wet_um }
}

fn whole(value: f64) -> u32 {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to u32 just here")]
    let whole = libm::round(value).clamp(0.0, f64::from(u32::MAX)) as u32;
    whole
}
