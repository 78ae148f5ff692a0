//! Effects: what an operation changes on a part.

use super::before::{Now, recoat};
use super::layer::Layer;
use super::part::{Levelled, Mask, PartState};
use crate::quantity::Micrometres;
use crate::rules::film::sheet_coat;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{COATS, FILM_COLOUR, LAID, Operation};
use crate::rules::sequence::plan::Told;
use crate::rules::sheet::Setting;

/// Does an operation to a part.
pub(super) fn apply(part: &mut PartState, now: &Now<'_>) {
    let op = now.operation();
    if LAID.contains(&op) {
        lay(part, now);
    }
    match op {
        Operation::Sand | Operation::SandBack => sand_stain(part),
        Operation::Scuff => {
            sand_stain(part);
            key(part);
        }
        Operation::SandFiller => sand_filling(part),
        Operation::WipeFiller => wipe_filling(part, now),
        Operation::Level => level(part, now),
        Operation::Mask => part.masks.push(Mask {
            made: now.place,
            coloured: false,
            over_bare_part: now.is(Manner::OverBarePart),
        }),
        Operation::Unmask => part.masks.clear(),
        _ => {}
    }
    part.done.push(op);
}

/// The layer that an operation lays.
pub(super) fn layer(now: &Now<'_>) -> Layer {
    let coat = now.act.pass.dry_film(now.sheet).unwrap_or_else(|| sheet_coat(now.sheet).answer);
    Layer {
        operation: now.operation(),
        place: now.place,
        begun: now.begun,
        ended: now.ended,
        coats: now.coats,
        manners: now.act.step.manners.clone(),
        dry: Micrometres::saturating(coat.get() * f64::from(now.coats)),
        abraded: false,
        wiped: None,
        sanded: false,
    }
}

fn lay(part: &mut PartState, now: &Now<'_>) {
    let op = now.operation();
    if COATS.contains(&op) {
        part.day = recoat::day_after(part, now);
    }
    if FILM_COLOUR.contains(&op) && !part.did(&[Operation::Clear]) {
        part.masks.iter_mut().for_each(|mask| mask.coloured = true);
    }
    let layer = layer(now);
    if now.act.is_clear() {
        part.clear = Micrometres::saturating(part.clear.get() + layer.dry.get());
    }
    part.laid.push(layer);
}

/// Stain with nothing over it was cut.
fn sand_stain(part: &mut PartState) {
    if let Some(top) = part.laid.last_mut().filter(|top| top.operation == Operation::Stain) {
        top.sanded = true;
    }
}

fn sand_filling(part: &mut PartState) {
    if let Some(filling) = part.laid.iter_mut().rfind(|layer| layer.operation == Operation::Fill) {
        filling.sanded = true;
    }
}

/// Filler dries from when its excess was first wiped off, as long as nothing lies over it.
fn wipe_filling(part: &mut PartState, now: &Now<'_>) {
    if let Some(filling) = part.laid.last_mut().filter(|top| top.operation == Operation::Fill) {
        filling.wiped = filling.wiped.or(Some(now.ended));
    }
}

/// The uppermost coat is roughened, so that the next one holds.
fn key(part: &mut PartState) {
    if let Some(film) = part.laid.iter_mut().rfind(|layer| COATS.contains(&layer.operation)) {
        film.abraded = true;
    }
}

fn level(part: &mut PartState, now: &Now<'_>) {
    key(part);
    let taken = now.sheet.get(Setting::LevelTakeOff);
    part.clear = Micrometres::saturating(part.clear.get() - taken);
    let grit = match now.act.step.grit {
        Told::Is(grit) => Some(grit),
        Told::Kept | Told::Untold => None,
    };
    part.levelled = Some(Levelled { grit, skipped: now.is(Manner::GritSkipped) });
}
