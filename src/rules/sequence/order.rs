//! The base line: work runs from wood through colour and clear to the finish, and nothing that was ordered is left out.
//!
//! Source of the base line: a guitar repair handbook's basic schedule (wood preparation, stain, washcoat, filler,
//! sealer, colour, clear, rubbing out), as `faults` of the published rows quote it.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::manner::Manner;
use super::operation::{BARE_WOOD, CLEARS, COATS, FILM_COLOUR, LAID, Operation};
use super::view::{Placed, View};
use crate::rules::term::ColourPlan;

pub(super) const RULES: &[Rule] = &[
    (OrderError::Wood, bare_wood_first),
    (OrderError::Fill, fill_in_place),
    (OrderError::Colour, colour_in_place),
    (OrderError::Clear, clear_last_of_coats),
    (OrderError::Finish, finish_last),
];

/// What is done on a film: wood is not stained, filled or sealed after it.
const ON_FILM: &[Operation] = &[Operation::Scrape, Operation::Inspect, Operation::Level, Operation::Buff];
/// What is laid into or onto the wood itself.
const INTO_WOOD: &[Operation] = &[Operation::Stain, Operation::Washcoat, Operation::Fill];

fn places<'a>(steps: impl Iterator<Item = Placed<'a>>) -> Vec<usize> {
    steps.map(|step| step.at).collect()
}

/// Sanding, damping and glue checks on bare wood; a thin seal may still be sanded.
fn bare_wood_first(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for work in view.all(BARE_WOOD) {
        for coat in view.all(COATS).filter(|coat| coat.at < work.at) {
            if !coat.is(Manner::Thin)? && !found.contains(&work.at) {
                found.push(work.at);
            }
        }
    }
    for work in view.all(&[Operation::Damp, Operation::GlueCheck]) {
        if view.before(work.at, &[Operation::Stain, Operation::Fill]).is_some() && !found.contains(&work.at) {
            found.push(work.at);
        }
    }
    let late = |laid: &Placed<'_>| view.before(laid.at, ON_FILM).is_some();
    found.extend(places(view.all(INTO_WOOD).filter(late)));
    Ok(found)
}

/// Filler goes on before any coat (seal, fill, seal is a variant), and is laid before it is wiped and sanded.
fn fill_in_place(view: &View<'_>) -> Shape {
    let mut found = places(view.all(&[Operation::Fill]).filter(|fill| view.before(fill.at, COATS).is_some()));
    let listed = view.first(&[Operation::Fill]).is_some();
    let tidies = view.all(&[Operation::WipeFiller, Operation::SandFiller]);
    found.extend(places(tidies.filter(|tidy| listed && view.before(tidy.at, &[Operation::Fill]).is_none())));
    Ok(found)
}

/// Colour lies under the clear build and solid colour under the shading; what is missing is reported at the first clear.
fn colour_in_place(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for colour in view.all(FILM_COLOUR) {
        let over_clear = view.before(colour.at, &[Operation::Clear]).is_some();
        let sealed_by_clear = view.first(&[Operation::Clear]).is_some_and(|first| {
            view.between(first.at, colour.at, &[Operation::Clear]).is_none()
                && matches!(first.is(Manner::Mist), Ok(true))
        });
        let over_shade = colour.op() == Operation::Colour
            && view.job.colour == ColourPlan::Solid
            && view.before(colour.at, &[Operation::Shade]).is_some();
        if (over_clear && !sealed_by_clear) || over_shade {
            found.push(colour.at);
        }
    }
    if let Some(clear) = view.first(&[Operation::Clear])
        && missing_colour(view)
    {
        found.push(clear.at);
    }
    Ok(found)
}

/// Whether a colour step is surely missing, of whatever kind; the variant tells which of them the ticket orders. Colour
/// on one part is colour: a ticket may leave the others bare.
fn missing_colour(view: &View<'_>) -> bool {
    [Operation::Stain, Operation::Colour, Operation::Shade].iter().any(|step| view.nowhere(*step))
}

/// The protective coat follows the colour; scraping and inspection come before the clear build.
fn clear_last_of_coats(view: &View<'_>) -> Shape {
    const CLOSED: &[Operation] = &[Operation::Clear, Operation::Level, Operation::Buff];
    let mut found = places(view.all(&[Operation::Protect]).filter(|protect| {
        let early = view.after(protect.at, FILM_COLOUR).is_some();
        early || view.before(protect.at, &[Operation::Clear]).is_some()
    }));
    for inspect in view.all(&[Operation::Inspect]) {
        let covered = view.before(inspect.at, CLOSED).is_some();
        let unscraped = view.after(inspect.at, &[Operation::Scrape]).is_some();
        let uncoloured = view.after(inspect.at, FILM_COLOUR).is_some();
        if covered || unscraped || uncoloured {
            found.push(inspect.at);
        }
    }
    for scrape in view.all(&[Operation::Scrape]) {
        let cut = view.before(scrape.at, &[Operation::Level, Operation::Buff]).is_some();
        if cut || view.after(scrape.at, FILM_COLOUR).is_some() {
            found.push(scrape.at);
        }
    }
    let late =
        |seal: &Placed<'_>| view.before(seal.at, CLEARS).is_some() || view.before(seal.at, ON_FILM).is_some();
    found.extend(places(view.all(&[Operation::Seal]).filter(late)));
    Ok(found)
}

/// Nothing is laid or levelled once it was buffed; levelling has clear under it; gloss work is not left off the gun.
fn finish_last(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for buff in view.all(&[Operation::Buff]) {
        if view.after(buff.at, LAID).is_some() || view.after(buff.at, &[Operation::Level]).is_some() {
            found.push(buff.at);
        }
    }
    for level in view.all(&[Operation::Level]) {
        let clear_under = view.before(level.at, CLEARS).is_some();
        if (view.after(level.at, COATS).is_some() && !clear_under)
            || view.after(level.at, INTO_WOOD).is_some()
        {
            found.push(level.at);
        }
    }
    if let Some(clear) = view.last(&[Operation::Clear])
        && view.lacks(Operation::Level)
        && view.lacks(Operation::Buff)
    {
        found.push(clear.at);
    }
    Ok(found)
}
