//! Errors with stain, dye and colour in the film.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::manner::Manner;
use super::operation::{CLEARS, COATS, FILM_COLOUR, LAID, Operation};
use super::view::View;
use crate::rules::drying::waits::{StainKind, stain_setting};
use crate::rules::wood::WoodTrouble;

pub(super) const RULES: &[Rule] = &[
    (OrderError::FilledBeforeStain, filled_then_stained),
    (OrderError::StainNotDry, stain_not_dry),
    (OrderError::StainSandedBare, stain_sanded),
    (OrderError::ColourUnsealed, colour_unsealed),
    (OrderError::DyeFlooded, dye_flooded),
    (OrderError::TransparentColourScuffed, colour_scuffed),
    (OrderError::BlotchWithoutWashcoat, blotch_risked),
    (OrderError::WipedColourOverSeal, stain_over_seal),
];

fn filled_then_stained(view: &View<'_>) -> Shape {
    let stain =
        view.all(&[Operation::Stain]).find(|stain| view.before(stain.at, &[Operation::Fill]).is_some());
    Ok(stain.map(|stain| stain.at).into_iter().collect())
}

fn stain_not_dry(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for stain in view.all(&[Operation::Stain]) {
        let Some(next) = view.after(stain.at, LAID) else { continue };
        let kind = if stain.is(Manner::OilStain)? { StainKind::Oil } else { StainKind::Dye };
        let wet = view.elapsed(stain.at, next.at).short_of(view.wait(stain_setting(kind)))?;
        if wet || stain.is(Manner::ExcessLeft)? {
            found.push(next.at);
        }
    }
    Ok(found)
}

/// Sanded between the stain and whatever was laid next; a washcoat or seal would have taken the paper.
fn stain_sanded(view: &View<'_>) -> Shape {
    const SANDS: &[Operation] = &[Operation::Sand, Operation::SandBack, Operation::Scuff];
    let mut found = Vec::new();
    for stain in view.all(&[Operation::Stain]) {
        let next = view.after(stain.at, LAID).map_or(usize::MAX, |next| next.at);
        found.extend(view.between(stain.at, next, SANDS).map(|sand| sand.at));
    }
    Ok(found)
}

/// The first colour in the film with no seal coat under it.
fn colour_unsealed(view: &View<'_>) -> Shape {
    let colour = view.first(FILM_COLOUR);
    let bare = colour.filter(|colour| view.lacks_before(colour.at, Operation::Seal));
    Ok(bare.map(|colour| colour.at).into_iter().collect())
}

/// A heavy first coat over a dye that it dissolves, or an ordinary coat of clear where no sealer holds the dye.
fn dye_flooded(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for stain in view.all(&[Operation::Stain]) {
        let Some(next) = view.after(stain.at, LAID).filter(|next| COATS.contains(&next.op())) else {
            continue;
        };
        if stain.is(Manner::Dye)? && (next.is(Manner::Heavy)? || CLEARS.contains(&next.op())) {
            found.push(next.at);
        }
    }
    Ok(found)
}

/// Scuffed or levelled with colour uppermost; nibbing single specks is none of it.
fn colour_scuffed(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for cut in view.all(super::operation::ABRADES) {
        let under_clear = cut.op() == Operation::Level && view.taken(Operation::Clear);
        let top = view.before(cut.at, COATS).filter(|_| !under_clear);
        if top.is_some_and(|coat| FILM_COLOUR.contains(&coat.op())) && !cut.is(Manner::NibsOnly)? {
            found.push(cut.at);
        }
    }
    Ok(found)
}

/// Wiped pigment stain with no washcoat and no approved sample.
fn blotch_risked(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for stain in view.all(&[Operation::Stain]) {
        let risky = view.part.has(WoodTrouble::Blotching) && view.lacks_before(stain.at, Operation::Washcoat);
        if risky && stain.is(Manner::Pigment)? && !stain.is(Manner::Sample)? {
            found.push(stain.at);
        }
    }
    Ok(found)
}

/// Wiped over a full coat; a thin seal is no more than a washcoat.
fn stain_over_seal(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for stain in view.all(&[Operation::Stain]) {
        for coat in view.all(COATS).filter(|coat| coat.at < stain.at) {
            if !coat.is(Manner::Thin)? && !found.contains(&stain.at) {
                found.push(stain.at);
            }
        }
    }
    Ok(found)
}
