//! What bare wood asks for, and cloths.

use super::{Made, Now, Wrong};
use crate::process::hidden::What;
use crate::process::part::PartState;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::job::Condition;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{COATS, LAID, Operation};
use crate::rules::sequence::plan::Told;
use crate::rules::sheet::Setting;
use crate::rules::term::Coating;
use crate::rules::wood::{Fit, WoodTrouble, fit_to_finish};

pub(super) fn check(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    match now.operation() {
        Operation::Sand => sanding(part, now, made),
        Operation::Damp | Operation::GlueCheck => wetting(part, now, made),
        Operation::CleanOff => cloth(now, made),
        Operation::Polish => made.push(now.hidden(What::Polish)),
        _ => {}
    }
    let op = now.operation();
    if LAID.contains(&op) && part.laid.is_empty() && too_wet_or_dry(part, now) {
        made.push(now.error(OrderError::MoistureOutsideBand));
    }
    if COATS.contains(&op) {
        oily(part, now, made);
        strange(part, now, made);
    }
}

/// Bare wood only, no finer than the sheet's last grit, along the grain, every grit of the ladder.
fn sanding(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    if is_covered(part) {
        made.push(now.error(OrderError::Wood));
    }
    if let Told::Is(grit) = now.act.step.grit
        && f64::from(grit) > now.sheet.get(Setting::LastGrit)
    {
        made.push(now.error(OrderError::SandedTooFine));
    }
    if part.laid.is_empty() && (now.is(Manner::GritSkipped) || now.is(Manner::AcrossGrain)) {
        made.push(now.hidden(What::Scratches));
    }
    if carries_colour(part, now) && now.is(Manner::DustAcross) {
        made.push(now.error(OrderError::ColourCarriedOver));
    }
}

/// Water only on bare wood.
fn wetting(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    if is_covered(part) || part.did(&[Operation::Stain, Operation::Fill]) {
        made.push(now.error(OrderError::Wood));
    }
}

/// Whether more than a thin coat lies on the wood.
fn is_covered(part: &PartState) -> bool {
    part.layers(COATS).any(|coat| !coat.is(Manner::Thin))
}

/// Wax stays on the work until a coat finds it; water-borne coats find the least of it.
fn cloth(now: &Now<'_>, made: &mut Vec<Made>) {
    let water = now.job.coating == Coating::WaterBorne;
    if now.is(Manner::HeavyTack) || (water && now.is(Manner::TackCloth)) {
        made.push(now.hidden(What::Wax));
    }
}

fn too_wet_or_dry(part: &PartState, now: &Now<'_>) -> bool {
    let Told::Is(moisture) = part.about.moisture else { return false };
    fit_to_finish(moisture, now.sheet).answer != Fit::Accept
}

/// Oily wood wants a solvent wipe before its first coat, and a barrier under a coat that cures by oxygen; a bleeding
/// wood beside a pale one wants its first coat thin.
fn oily(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let first = part.film().is_none();
    if part.about.is_oily() {
        let unwiped = first && !part.did(&[Operation::SolventWipe]);
        let open = now.is(Manner::OilCured) && !part.layers(COATS).any(|coat| coat.is(Manner::Barrier));
        if unwiped || open {
            made.push(now.error(OrderError::OilyWoodUnsealed));
        }
    }
    if first && now.is(Manner::Heavy) && carries_colour(part, now) {
        made.push(now.error(OrderError::ColourCarriedOver));
    }
}

/// Silicone and old oil are washed off before the first coat; light colour on a bleeding wood has a barrier below.
fn strange(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    if part.film().is_none() && !part.did(&[Operation::SolventWipe]) {
        let found = [
            (Condition::Silicone, OrderError::SiliconeUnderCoat),
            (Condition::OldOil, OrderError::OldOilUnderCoat),
        ];
        made.extend(
            found.into_iter().filter(|(lies, _)| part.about.lies(*lies)).map(|(_, error)| now.error(error)),
        );
    }
    let first_colour = now.operation() == Operation::Colour && !part.did(&[Operation::Colour]);
    if first_colour && part.about.wants_barrier() && !part.layers(COATS).any(|coat| coat.is(Manner::Barrier))
    {
        // The first wet coat took the colour of the wood up; under light colour it is seen.
        let place = part.layers(COATS).next().map_or(now.place, |first| first.place);
        made.push(Made { place, what: Wrong::Error(OrderError::BleedsThroughColour) });
    }
}

/// Whether the wood can carry its colour to something pale beside it.
fn carries_colour(part: &PartState, now: &Now<'_>) -> bool {
    let bleeds = |about: &crate::rules::sequence::job::Part| {
        about.has(WoodTrouble::Bleeding) || about.has(WoodTrouble::Oily)
    };
    let bound = now.job.is_bound();
    let pale = bound || now.job.parts.iter().any(|other| !bleeds(other));
    bleeds(&part.about) && pale && (bound || now.job.parts.len() > 1)
}
