//! Binding and masks.

use super::{Made, Now};
use crate::process::hidden::What;
use crate::process::part::PartState;
use crate::rules::drying::waits::coat_setting;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{CLEARS, COATS, FILM_COLOUR, Operation};
use crate::rules::term::Binding;

pub(super) fn check(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let op = now.operation();
    match op {
        Operation::Scrape => scraping(part, now, made),
        Operation::Inspect => inspecting(part, now, made),
        Operation::Unmask if pulls_wet(part, now) => made.push(now.error(OrderError::MaskPulledWet)),
        Operation::Clear => masks_under(part, now, made),
        _ => {}
    }
    let first_coat = COATS.contains(&op) && part.film().is_none();
    if first_coat && now.job.is_bound() && !part.did(&[Operation::Trim]) {
        made.push(now.error(OrderError::TrimOverOpenColour));
    }
}

/// Colour is scraped off binding that it cannot soak into, or from under one protective coat, and before the clear.
fn scraping(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let protected = part.only_protected();
    let coloured = part.is_coloured();
    if now.job.is_bound()
        && coloured
        && !part.did(&[Operation::Clear])
        && !protected
        && !trim_is_closed(part, now)
    {
        made.push(now.error(OrderError::TrimOverOpenColour));
    }
    let last_clear = part.laid.iter().rposition(|layer| CLEARS.contains(&layer.operation));
    let under_clear = last_clear.is_some_and(|place| {
        part.laid.iter().take(place).any(|layer| FILM_COLOUR.contains(&layer.operation))
    });
    if under_clear && !protected {
        made.push(now.error(OrderError::TrimAfterClear));
    }
    if part.did(&[Operation::Level, Operation::Buff]) {
        made.push(now.error(OrderError::Clear));
    } else {
        made.push(now.hidden(What::Scraped));
    }
}

/// Whether colour cannot soak into the trim: plastic, or sealed before the colour.
fn trim_is_closed(part: &PartState, now: &Now<'_>) -> bool {
    let colour = part.done.iter().position(|op| FILM_COLOUR.contains(op));
    let sealed = part.done.iter().take(colour.unwrap_or(0)).any(|op| *op == Operation::Seal);
    now.job.binding == Binding::Plastic || sealed || now.is(Manner::TrimSealed)
}

/// Judged before the clear build covers it.
fn inspecting(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    if part.did(&[Operation::Clear, Operation::Level, Operation::Buff]) {
        made.push(now.error(OrderError::Clear));
    } else {
        made.push(now.hidden(What::Inspected));
    }
}

/// A mask comes off when the coat is touch-dry, or soft and past running.
fn pulls_wet(part: &PartState, now: &Now<'_>) -> bool {
    let Some(coat) = part.film() else { return false };
    let soft = now.is(Manner::PastRunning) && !coat.is(Manner::Heavy);
    !soft && now.too_soon(coat.ended, now.wait(coat_setting(coat.operation)))
}

/// Colour masks that the first clear finds still on: over a part that stays bare they may be right.
fn masks_under(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    if part.did(&[Operation::Clear]) {
        return;
    }
    for mask in part.masks.iter().filter(|mask| mask.coloured) {
        let under = if mask.over_bare_part {
            now.hidden(What::MaskUnderClear)
        } else {
            now.error(OrderError::MaskLeftOn)
        };
        made.push(Made { place: mask.made, ..under });
    }
}
