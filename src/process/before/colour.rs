//! Stain and dye in the wood, and colour in the film.

use super::{Made, Now};
use crate::process::hidden::What;
use crate::process::layer::Layer;
use crate::process::part::PartState;
use crate::rules::drying::waits::{StainKind, stain_setting};
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{CLEARS, COATS, FILM_COLOUR, LAID, Operation};
use crate::rules::sheet::Setting;
use crate::rules::term::ColourPlan;
use crate::rules::wood::{PoreSize, WoodTrouble};

/// What is done on a film: after it the wood is not worked any more.
const ON_FILM: &[Operation] = &[Operation::Scrape, Operation::Inspect, Operation::Level, Operation::Buff];

pub(super) fn check(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let op = now.operation();
    if LAID.contains(&op)
        && let Some(stain) = part.top().filter(|top| top.operation == Operation::Stain)
    {
        over_stain(part, stain, now, made);
    }
    match op {
        Operation::Stain => staining(part, now, made),
        Operation::Washcoat | Operation::Fill if part.did(ON_FILM) => made.push(now.error(OrderError::Wood)),
        Operation::Sand | Operation::SandBack | Operation::Scuff => sanding_stain(part, now, made),
        Operation::Colour | Operation::Shade => colouring(part, now, made),
        _ => {}
    }
}

/// Stain wants its own wait and no excess left on it; a dye that the coat dissolves wants that coat thin.
fn over_stain(part: &PartState, stain: &Layer, now: &Now<'_>, made: &mut Vec<Made>) {
    let kind = if stain.is(Manner::OilStain) { StainKind::Oil } else { StainKind::Dye };
    if now.too_soon(stain.ended, now.wait(stain_setting(kind))) || stain.is(Manner::ExcessLeft) {
        made.push(now.error(OrderError::StainNotDry));
    }
    let op = now.operation();
    let floods = now.is(Manner::Heavy) || CLEARS.contains(&op);
    if COATS.contains(&op) && stain.is(Manner::Dye) && floods && !seals_itself(part, now) {
        made.push(now.error(OrderError::DyeFlooded));
    }
}

/// Whether mist coats of the clear itself seal the wood: this one or the first that was laid.
fn seals_itself(part: &PartState, now: &Now<'_>) -> bool {
    let mist = match part.layers(COATS).next() {
        Some(first) => CLEARS.contains(&first.operation) && first.is(Manner::Mist),
        None => CLEARS.contains(&now.operation()) && now.is(Manner::Mist),
    };
    mist && !part.about.is_oily()
}

fn staining(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let first = !part.did(&[Operation::Stain]);
    if first && !part.did(&[Operation::GlueCheck]) {
        made.push(now.error(OrderError::GlueUnchecked));
    }
    if first && now.is(Manner::WaterDye) && !part.did(&[Operation::Damp]) {
        made.push(now.error(OrderError::GrainNotRaised));
    }
    if part.did(ON_FILM) {
        made.push(now.error(OrderError::Wood));
    }
    if stains_over_filler(part, now) {
        made.push(now.error(OrderError::FilledBeforeStain));
    }
    let blotches = part.about.has(WoodTrouble::Blotching) && part.about.pores != PoreSize::Large;
    let bare = !part.did(&[Operation::Washcoat]);
    if blotches && bare && now.is(Manner::Pigment) && !now.is(Manner::Sample) {
        made.push(now.error(OrderError::BlotchWithoutWashcoat));
    }
    if part.layers(COATS).any(|coat| !coat.is(Manner::Thin)) && !now.is(Manner::Glaze) {
        made.push(now.error(OrderError::WipedColourOverSeal));
    }
}

/// Whether this is the first stain that goes over filler, and the filler was neither sanded to the wood for it nor meant
/// as the stain.
fn stains_over_filler(part: &PartState, now: &Now<'_>) -> bool {
    let Some(filling) = part.filling() else { return false };
    let filled = part.laid.iter().position(|layer| layer.operation == Operation::Fill);
    let stained_since =
        part.laid.iter().skip(filled.unwrap_or(0)).any(|layer| layer.operation == Operation::Stain);
    let shop_fills_first = !now.sheet.is_on(Setting::StainFirst);
    let tried = filling.is(Manner::TakesStain) && now.is(Manner::Sample);
    let to_the_wood = filling.sanded && (shop_fills_first || tried);
    !stained_since && !to_the_wood && !part.is_filled_as_stain()
}

/// Stain with nothing over it was cut, unless the scratches are dyed again.
fn sanding_stain(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    if part.top().is_some_and(|top| top.operation == Operation::Stain && !top.sanded) {
        let to_dye_again = now.operation() == Operation::SandBack && now.is(Manner::Evenly);
        made.push(now.hidden(What::StainCut { to_dye_again }));
    }
}

fn colouring(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    if !part.is_coloured() && !part.did(&[Operation::Seal]) {
        on_unsealed_wood(part, now, made);
    }
    let mut clears = part.layers(&[Operation::Clear]);
    let over_clear = match (clears.next(), clears.next()) {
        (None, _) => false,
        (Some(first), None) => !first.is(Manner::Mist),
        (Some(_), Some(_)) => true,
    };
    let over_shade = now.operation() == Operation::Colour
        && now.job.colour == ColourPlan::Solid
        && part.layers(FILM_COLOUR).any(|layer| layer.operation == Operation::Shade);
    if over_clear || over_shade {
        made.push(now.error(OrderError::Colour));
    }
}

/// The first colour with no seal under it: a weak dyed burst, mist coats of clear or a colour that seals are right at
/// once; colour that one protective coat will hold is right when the binding is scraped.
fn on_unsealed_wood(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let tried = now.is(Manner::Sample);
    let shades = now.operation() == Operation::Shade;
    let burst = shades && part.about.pores != PoreSize::Large && now.is(Manner::WeakBurst) && tried;
    let seals = now.is(Manner::SelfSealing) && now.is(Manner::Thin) && tried && !part.about.is_oily();
    let mist = part.film().is_some() && seals_itself(part, now);
    if burst || seals || mist {
        return;
    }
    let to_be_protected = !shades && now.job.is_bound() && part.did(&[Operation::Trim]);
    let bare =
        if to_be_protected { now.hidden(What::BareColour) } else { now.error(OrderError::ColourUnsealed) };
    made.push(bare);
}
