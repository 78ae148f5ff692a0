//! Which card families a decision exercises, by the work that it is done on.

use super::decision::{Decision, RoomAct};
use super::families::{
    AT_A_COAT, AT_THE_WHEEL, Asked, BUFF_WHEN, FAN_STOPPED, FILLER_WAIT, FILLER_WIPED, FILM_TO_LEVEL,
    LAST_GRIT, LEVEL_WHEN, MASK_IN_DUST, MASK_PULLED, MASK_UNDER_CLEAR, OILY_FIRST, ORDER, RECOAT, SANDED,
    SCRAPED, SEAL_CHECK, STAIN_WAIT, WANTS_FILLER,
};
use super::lapse::Lapse;
use super::room::{DUSTY, sprays};
use super::story::Walk;
use super::turn::Turn;
use crate::process::lying::Lying;
use crate::rules::sequence::operation::{COATS, LAID, Operation};

/// What an operation exercises, by the work that it is done on.
pub(super) fn asked(before: &Walk, turn: &Turn) -> Vec<Asked> {
    let work = match &turn.decision {
        Decision::Work(work) => work,
        // Over a bare bench there is nothing to stop it too early for.
        Decision::Room(duties) if duties.contains(&RoomAct::FanOff) && is_coated(before) => {
            return vec![FAN_STOPPED];
        }
        // What the ticket orders and was left out is left out for good.
        Decision::HandOver if !before.lines().is_empty() => return vec![ORDER],
        _ => return Vec::new(),
    };
    let operation = work.operation;
    let lying: Vec<Lying> = work.parts.iter().filter_map(|part| before.part(*part)).collect();
    let mut found = Vec::new();
    if operation.is_main() {
        found.push(ORDER);
    }
    if LAID.contains(&operation) {
        found.extend(waits(operation, &lying));
    }
    if sprays(operation) {
        found.extend(AT_A_COAT);
    }
    // Levelling raises dust where it is done dry, which the duty that was left tells.
    let dusty = DUSTY.contains(&operation) || turn.lapses.contains(&Lapse::DustBreathed);
    if dusty {
        found.push(MASK_IN_DUST);
    }
    // Without a respirator there is no seal to be checked.
    if (dusty || sprays(operation)) && before.room().worn.respirator.is_some() {
        found.push(SEAL_CHECK);
    }
    let first_coat = COATS.contains(&operation) && lying.iter().any(|part| !part.is_coated());
    let oily = |part: &usize| before.start().job.parts.get(*part).is_some_and(|about| about.is_oily());
    let start = before.start();
    let porous = |part: &usize| start.job.parts.get(*part).is_some_and(|about| start.job.wants_filler(about));
    if first_coat && work.parts.iter().any(porous) {
        found.push(WANTS_FILLER);
    }
    if first_coat && work.parts.iter().any(oily) {
        found.push(OILY_FIRST);
    }
    match operation {
        Operation::Sand => found.push(SANDED),
        Operation::WipeFiller => found.push(FILLER_WIPED),
        Operation::Scrape => found.push(SCRAPED),
        Operation::Unmask => {
            found.push(MASK_PULLED);
        }
        Operation::Clear if lying.iter().any(|part| part.done.contains(&Operation::Mask)) => {
            found.push(MASK_UNDER_CLEAR);
        }
        Operation::Level => {
            found.push(LEVEL_WHEN);
            found.push(FILM_TO_LEVEL);
        }
        Operation::Buff => {
            found.push(LAST_GRIT);
            found.push(BUFF_WHEN);
            found.push(AT_THE_WHEEL);
        }
        _ => {}
    }
    found
}

/// Whether film lies on any part.
fn is_coated(walk: &Walk) -> bool {
    (0..walk.start().parts()).any(|part| walk.part(part).is_some_and(|lying| lying.is_coated()))
}

/// The waits that lie under what is laid.
fn waits(operation: Operation, lying: &[Lying]) -> Vec<Asked> {
    let over = |below: Operation| {
        lying.iter().any(|part| part.laid.last().is_some_and(|top| top.operation == below))
    };
    let mut found = Vec::new();
    if over(Operation::Fill) {
        found.push(FILLER_WAIT);
    }
    if over(Operation::Stain) || over(Operation::Washcoat) {
        found.push(STAIN_WAIT);
    }
    if COATS.contains(&operation) && lying.iter().any(Lying::is_coated) {
        found.push(RECOAT);
    }
    found
}
