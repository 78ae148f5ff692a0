//! Pore filler: where it may lie, when it is wiped, when it is dry.

use super::{Made, Now};
use crate::process::defect::earlier;
use crate::process::hidden::What;
use crate::process::layer::Layer;
use crate::process::part::{PartState, tints_flats};
use crate::quantity::MINUTES_AN_HOUR;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{COATS, LAID, Operation};
use crate::rules::sheet::Setting;
use crate::rules::term::Look;
use crate::rules::wood::FillerNeed;

pub(super) fn check(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let op = now.operation();
    if LAID.contains(&op)
        && let Some(filling) = part.top().filter(|top| top.operation == Operation::Fill)
        && !lies_well_under(filling, now)
    {
        made.push(now.error(OrderError::FillerNotDry));
    }
    match op {
        Operation::Fill => laying(part, now, made),
        Operation::WipeFiller => wiping(part, now, made),
        Operation::SandFiller if part.filling().is_none() => made.push(now.hidden(What::NothingToTidy)),
        _ if COATS.contains(&op) && part.film().is_none() => open_pores(part, now, made),
        _ => {}
    }
}

/// Dry by its own wait, under anything but more filler; under more filler it is sanded too.
fn lies_well_under(filling: &Layer, now: &Now<'_>) -> bool {
    let dry = !now.too_soon(filling.since(), now.filler_wait());
    dry && (now.operation() != Operation::Fill || filling.sanded)
}

fn laying(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let film = part.film();
    let over_thin_seal = film.is_some_and(|seal| {
        seal.operation == Operation::Seal
            && seal.is(Manner::Thin)
            && seal.abraded
            && now.is(Manner::Compatible)
    });
    if film.is_some() && !over_thin_seal {
        made.push(now.error(OrderError::Fill));
    }
    if now.is(Manner::Coloured) && part.did(&[Operation::Stain]) && !keeps_off_the_flats(part, now) {
        made.push(now.error(OrderError::FillerOverRawStain));
    }
}

/// Whether coloured filler over stain is kept off the flats by a washcoat, meant for them, or cannot touch the stain.
fn keeps_off_the_flats(part: &PartState, now: &Now<'_>) -> bool {
    let over_stain = part.laid.iter().rev().take_while(|layer| layer.operation != Operation::Stain);
    let washcoat = over_stain.filter(|layer| layer.operation == Operation::Washcoat).last();
    let held = washcoat.is_some_and(|washcoat| !washcoat.is(Manner::Heavy));
    let meant = match part.filling() {
        Some(_) => part.is_filled_as_stain(),
        None => tints_flats(&super::super::effect::layer(now)),
    };
    held || meant || (now.is(Manner::KeptApart) && now.is(Manner::Sample))
}

/// By the finger ball, or by the sheet's minutes.
fn wiping(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let Some(filling) = part.filling() else {
        made.push(now.hidden(What::NothingToTidy));
        return;
    };
    let since = now.begun - filling.ended;
    let minutes = |setting| now.sheet.get(setting) / MINUTES_AN_HOUR;
    let early = earlier(since, minutes(Setting::FillerWipeFrom));
    let late = earlier(minutes(Setting::FillerWipeTo), since);
    if (early || late) && !now.is(Manner::BallTest) {
        made.push(now.error(OrderError::FillerWipedOffTime));
    }
}

/// The first coat closes over pores that were not filled, where a level gloss wants them filled.
fn open_pores(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let wanted = part.about.filler == FillerNeed::Yes && now.job.look == Look::LevelGloss;
    if wanted && part.filling().is_none() && !now.is(Manner::BuildsFill) {
        made.push(now.hidden(What::OpenPores));
    }
}
