//! A right way on: from where a walk stands to the hand-over, every wait kept, every duty seen to.
//!
//! It is one right way of several, in the order of the shop sheet. It says what going on would show, and mistakes are
//! planted in it; it is never what a learner is held against.

use super::at_hand::asked;
use super::clock::{day, midnight};
use super::decision::{Decision, RoomAct, Wait, Work, Worn};
use super::lapse::Lapse;
use super::room::{AIR_READING_HOLDS_H, sprays};
use super::story::Walk;
use crate::content::{Ask, Choice, Content};
use crate::process::act::Act;
use crate::process::defect::Cause;
use crate::process::lying::Lying;
use crate::quantity::{DUST, Hours, MINUTES_AN_HOUR};
use crate::rules::air::{Thinner, may_spray, spray_gate};
use crate::rules::contamination::Suit;
use crate::rules::hazard::mask_kind::Protection;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{BARE_WOOD, Operation};
use crate::rules::sequence::route;
use crate::rules::shading::{self, distance};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Stage;
use std::collections::BTreeMap;

/// More decisions than the longest job takes.
const DECISIONS_MOST: usize = 400;
/// Half a fan and a little more: by universal teaching (air-board tip sheet; TM 1-1500-344-23-2, A-8.3).
const OVERLAP: f64 = 0.5;

/// Dressed for the gun.
pub const FOR_THE_GUN: Worn =
    Worn { respirator: Some(Protection::Both), sealed: true, suit: Suit::Closed, gloves: true, eyes: true };
/// Dressed for the bench: dust, solvent and cloths.
pub const FOR_THE_BENCH: Worn = Worn { suit: Suit::Sanding, ..FOR_THE_GUN };

/// The decisions from where a walk stands to its hand-over; `None` where no right way is found: the room is never fit.
#[must_use]
pub fn rest(walk: &Walk, content: &Content) -> Option<Vec<Decision>> {
    let mut walk = walk.clone();
    let mut found = Vec::new();
    while !walk.is_over() {
        if found.len() >= DECISIONS_MOST {
            return None;
        }
        let decision = next(&walk, content)?;
        walk.decide(decision.clone(), content).ok()?;
        found.push(decision);
    }
    Some(found)
}

/// What comes next in a right way; `None` where the room is never fit for it.
#[must_use]
pub fn next(walk: &Walk, content: &Content) -> Option<Decision> {
    if walk.room().rags_about() {
        return Some(Decision::Room(vec![RoomAct::RagsAway]));
    }
    let Some((operation, parts)) = step(walk) else {
        let cleaned = walk.room().gun_dirty().then(|| Decision::Room(vec![RoomAct::GunCleaned]));
        return Some(cleaned.unwrap_or(Decision::HandOver));
    };
    if let Some(wait) = waits(walk, content, operation, &parts) {
        return Some(leave(walk, wait));
    }
    let plain = Decision::Work(work(walk, content, operation, parts.clone(), Thinner::Fast));
    if makes(walk, content, &plain, OrderError::RecoatWindowClosed) {
        let opens = walk.start().sheet.get(Setting::RecoatOpensAgain);
        let age = parts.iter().filter_map(|part| walk.part(*part)?.film().map(|film| film.age.get()));
        let youngest = age.fold(opens, f64::min);
        return Some(leave(walk, walk.clock() + (opens - youngest).max(DUST)));
    }
    if makes(walk, content, &plain, OrderError::HardFilmUnscuffed) || rested(walk, operation) {
        let scuff = Operation::Scuff;
        let wait = waits(walk, content, scuff, &parts).map(|wait| leave(walk, wait));
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
            asked && oily && lacks(operation, lying, start.info.ticket.clear_coats)
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
fn lacks(operation: Operation, lying: &Lying, clear_coats: u32) -> bool {
    let clears = lying.coats(Operation::Clear);
    let filler = lying.laid.last().filter(|top| top.operation == Operation::Fill);
    let finished = lying.done.contains(&Operation::Level) || lying.done.contains(&Operation::Buff);
    match operation {
        Operation::Clear => clears < clear_coats && !finished,
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

/// When something can be begun that cannot be begun now: its wait is over, and the shop open long enough.
fn waits(walk: &Walk, content: &Content, operation: Operation, parts: &[usize]) -> Option<f64> {
    let start = walk.start();
    let opens = start.day.opens().get();
    let mut act = Act::of(operation);
    act.step.part = parts.first().copied();
    act.also = parts.to_vec();
    let over = walk.run().waiting(&act).map_or(f64::NEG_INFINITY, |waiting| waiting.over + opens);
    let takes = asked(content, &start.sheet, operation).takes;
    let wipe = if operation == Operation::Fill {
        start.sheet.get(Setting::FillerWipeTo) / MINUTES_AN_HOUR
    } else {
        0.0
    };
    let begin = start.day.begin(over.max(walk.clock()), Hours::saturating(takes.get() + wipe));
    (begin > walk.clock() + DUST).then_some(begin)
}

/// Whether the air is fit for the gun.
enum Air {
    Fit(Thinner),
    From(f64),
    Never,
}

fn air(walk: &Walk) -> Air {
    let (start, now) = (walk.start(), walk.run().now().get());
    let Some(climate) = start.air.at(now) else { return Air::Fit(Thinner::Fast) };
    let gate = spray_gate(climate.air, climate.humidity, climate.work, &start.sheet);
    let fit = [Thinner::Fast, Thinner::Retarded].into_iter().find(|mix| may_spray(&gate, *mix).answer);
    let change = start.air.next_change(now).map(|change| change + start.day.opens().get());
    fit.map(Air::Fit).or_else(|| change.map(Air::From)).unwrap_or(Air::Never)
}

/// Waits until a moment; the gun is cleaned before the night.
fn leave(walk: &Walk, until: f64) -> Decision {
    let night = day(until) > day(walk.clock());
    if night && walk.room().gun_dirty() {
        return Decision::Room(vec![RoomAct::GunCleaned]);
    }
    let morning = midnight(day(walk.clock()) + 1) + walk.start().day.opens().get();
    if night && until <= morning + DUST {
        Decision::Wait(Wait::Morning)
    } else {
        Decision::Wait(Wait::Hours(Hours::saturating(until - walk.clock())))
    }
}

/// What has to be put on and seen to before an operation.
fn make_ready(walk: &Walk, operation: Operation) -> Option<Decision> {
    let room = walk.room();
    let wanted = if sprays(operation) { FOR_THE_GUN } else { FOR_THE_BENCH };
    let bare = |lapse: &Lapse| !matches!(lapse, Lapse::WheelUnchecked);
    let asked = sprays(operation) || room.before_work(operation).iter().any(bare);
    if asked && room.worn != wanted {
        return Some(Decision::Wear(wanted));
    }
    let mut duties = Vec::new();
    if sprays(operation) {
        let fresh = room.air_read.is_some_and(|read| walk.clock() - read < AIR_READING_HOLDS_H);
        duties.extend((!room.fan).then_some(RoomAct::FanOn));
        duties.extend((!room.gauge_read).then_some(RoomAct::GaugeRead));
        duties.extend(room.filters_loaded().then_some(RoomAct::FiltersChanged));
        duties.extend((!room.sources_out).then_some(RoomAct::SourcesOut));
        duties.extend((!fresh).then_some(RoomAct::AirRead));
    }
    duties.extend((operation == Operation::Buff && !room.wheel_checked).then_some(RoomAct::WheelChecked));
    (!duties.is_empty()).then_some(Decision::Room(duties))
}

/// Whether clear goes on over the clear of another day that was not scuffed.
fn rested(walk: &Walk, operation: Operation) -> bool {
    let rest = walk.start().sheet.get(Setting::ScuffWait);
    let old = |lying: Lying| {
        let film = lying.film().filter(|film| film.operation == Operation::Clear);
        film.is_some_and(|film| film.age.get() >= rest && !film.abraded)
    };
    let any = (0..walk.start().parts()).any(|part| walk.part(part).is_some_and(old));
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

/// An operation on some parts with the values that the sheet asks for, in fit air.
#[must_use]
pub fn as_the_sheet_asks(walk: &Walk, content: &Content, operation: Operation, parts: Vec<usize>) -> Work {
    work(walk, content, operation, parts, Thinner::Fast)
}

fn work(walk: &Walk, content: &Content, operation: Operation, parts: Vec<usize>, thinner: Thinner) -> Work {
    let start = walk.start();
    let at_hand = asked(content, &start.sheet, operation);
    let mut numbers: BTreeMap<Ask, f64> = BTreeMap::new();
    for number in &at_hand.numbers {
        let value = number_for(number.ask, operation, &start.sheet);
        let best = number.among.iter().copied().filter(|among| *among <= value).reduce(f64::max);
        numbers.insert(number.ask, best.unwrap_or(value).clamp(number.from, number.to));
    }
    let mut wanted = vec![Manner::Sample, Manner::Light, Manner::BallTest, Manner::WipedOn];
    wanted.extend(start.info.stain);
    wanted.extend((thinner == Thinner::Retarded).then_some(Manner::Retarder));
    let bare = parts.iter().any(|part| walk.part(*part).is_some_and(|lying| !lying.is_coated()));
    let barrier = |part: &usize| {
        start.job.parts.get(*part).is_some_and(|about| about.is_oily() || about.wants_barrier())
    };
    wanted.extend((bare && parts.iter().any(barrier)).then_some(Manner::Barrier));
    let picks =
        at_hand.choices.iter().filter_map(|choice| Some((choice.key.clone(), pick(choice, &wanted)?)));
    Work { operation, parts, numbers, picks: picks.collect() }
}

fn number_for(ask: Ask, operation: Operation, sheet: &Sheet) -> f64 {
    let pass = match operation {
        Operation::Shade => shading::Pass::Shading,
        Operation::Seal => shading::Pass::LightSeal,
        _ => shading::Pass::Body,
    };
    match ask {
        Ask::LastGrit if operation == Operation::Level => sheet.get(Setting::CompoundGrit),
        Ask::LastGrit => sheet.get(Setting::LastGrit),
        Ask::Coats => 1.0,
        Ask::Between => sheet.wait(Setting::ClearWait),
        Ask::WetFilm => sheet.get(Setting::ClearWet),
        Ask::Distance => {
            let (near, far) = distance(sheet, pass);
            f64::midpoint(near.get(), far.get())
        }
        Ask::Overlap => OVERLAP,
        Ask::MixAge => 0.0,
    }
}

/// What is picked: what is wanted by name, else what is done with no remark.
fn pick(choice: &Choice, wanted: &[Manner]) -> Option<String> {
    let plain = |one: &&crate::content::Pick| one.manners.is_empty() && one.handling.is_none();
    let asked = choice
        .options
        .iter()
        .find(|one| !one.manners.is_empty() && one.manners.iter().all(|manner| wanted.contains(manner)));
    asked.or_else(|| choice.options.iter().find(plain)).map(|one| one.slug.clone())
}
