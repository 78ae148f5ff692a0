//! Scuffing, levelling, buffing, mending, fitting and packing.

use super::{Made, Now};
use crate::process::hidden::{Late, What};
use crate::process::part::PartState;
use crate::quantity::Micrometres;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{ABRADES, CLEARS, COATS, FILM_COLOUR, Operation};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::ColourPlan;

pub(super) fn check(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let op = now.operation();
    if ABRADES.contains(&op) && cuts_colour(part, now) {
        made.push(now.error(OrderError::TransparentColourScuffed));
    }
    match op {
        Operation::Level => levelling(part, now, made),
        Operation::Buff => buffing(part, now, made),
        Operation::Rework => {
            if let Some(film) = part.film()
                && now.too_soon(film.ended, now.wait(Setting::RunWait))
            {
                made.push(now.error(OrderError::LevelledTooSoon));
            }
        }
        Operation::FitParts if part.film().is_some() && !now.is(Manner::Guarded) => {
            made.push(now.error(OrderError::FittedAfterFinish));
        }
        Operation::Pack if !now.is_hard(part) => made.push(now.error(OrderError::PackedTooSoon)),
        _ => {}
    }
}

/// Transparent colour uppermost is not scuffed; solid colour takes a light scuff.
fn cuts_colour(part: &PartState, now: &Now<'_>) -> bool {
    let Some(top) = part.film().filter(|top| FILM_COLOUR.contains(&top.operation)) else { return false };
    let opaque = now.job.colour == ColourPlan::Solid && top.operation == Operation::Colour;
    let lightly = now.operation() == Operation::Scuff && now.is(Manner::Light);
    let spared = now.is(Manner::NibsOnly) || (opaque && lightly);
    !spared
}

/// Clear that a levelling takes off and has to leave over the colour.
#[must_use]
pub fn film_to_level(sheet: &Sheet) -> Micrometres {
    Micrometres::saturating(sheet.get(Setting::LevelTakeOff) + sheet.get(Setting::FilmReserve))
}

fn levelling(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let sheet = now.sheet;
    let enough = part.clear >= film_to_level(sheet);
    if !enough {
        made.push(now.error(OrderError::LevelledTooThin));
    }
    if !now.job.melts && now.is(Manner::ThroughCoat) {
        made.push(now.error(OrderError::LevelledThroughCoats));
    }
    if now.is(Manner::WithWater) && !part.did(&[Operation::PlugHoles]) {
        made.push(now.error(OrderError::OpenHolesWet));
    }
    made.push(now.hidden(What::Levelled { over_clear: part.did(CLEARS) }));
    if let Some(film) = part.film() {
        let powder = now.is(Manner::Powder);
        let floor = sheet.held(crate::rules::drying::waits::buff_setting(now.job.class)).floor;
        let may_shrink_flat = powder && enough && !now.too_soon(film.ended, floor);
        made.push(now.hidden(What::EarlyCut {
            early: !now.is_hard(part),
            late_buff: if may_shrink_flat { Late::Awaited } else { Late::No },
            to_be_built_on: powder && part.did(&[Operation::Clear]),
        }));
    }
}

fn buffing(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    if part.did(COATS) && !now.is_hard(part) {
        made.push(now.error(OrderError::LevelledTooSoon));
    }
    if let Some(levelled) = part.levelled {
        let asked = now.sheet.held(Setting::CompoundGrit);
        let last = asked.value.min(asked.floor);
        if levelled.skipped || levelled.grit.is_some_and(|grit| f64::from(grit) < last) {
            made.push(now.error(OrderError::CoarseBeforeCompound));
        }
    }
    if now.is(Manner::SharedWheel) {
        made.push(now.error(OrderError::OneWheel));
    }
    made.push(now.hidden(What::Buffed));
}
