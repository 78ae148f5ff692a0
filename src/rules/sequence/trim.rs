//! Errors with binding and masks.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::manner::Manner;
use super::operation::{CLEARS, COATS, FILM_COLOUR, Operation};
use super::plan::{self, Told};
use super::view::{Placed, View};
use crate::rules::drying::waits::coat_setting;
use crate::rules::verdict::CannotJudge;

pub(super) const RULES: &[Rule] = &[
    (OrderError::TrimOverOpenColour, trim_not_ready),
    (OrderError::TrimAfterClear, scraped_after_clear),
    (OrderError::MaskLeftOn, mask_left_on),
    (OrderError::MaskPulledWet, mask_pulled_wet),
];

/// Trim not levelled before the first coat, or scraped over open colour; scraping through the clear build is `se-04`.
fn trim_not_ready(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    if !view.job.is_bound() {
        return Ok(found);
    }
    if let Some(coat) = view.first(COATS)
        && view.lacks_before(coat.at, Operation::Trim)
    {
        found.push(coat.at);
    }
    let open = |scrape: &Placed<'_>| {
        view.before(scrape.at, FILM_COLOUR).is_some() && view.before(scrape.at, &[Operation::Clear]).is_none()
    };
    found.extend(view.all(&[Operation::Scrape]).filter(open).map(|scrape| scrape.at));
    Ok(found)
}

/// Scraped with clear already over the colour; colour that is ordered and not listed counts as laid in its place.
fn scraped_after_clear(view: &View<'_>) -> Shape {
    let scrapes = view.all(&[Operation::Scrape]);
    Ok(scrapes
        .filter(|scrape| {
            let taken = FILM_COLOUR.iter().all(|op| view.taken(*op)) && view.job.colours_film();
            let clear = view.before(scrape.at, CLEARS);
            clear.is_some_and(|clear| taken || view.before(clear.at, FILM_COLOUR).is_some())
        })
        .map(|scrape| scrape.at)
        .collect())
}

/// A mask laid before colour that is still on when the clear build begins.
fn mask_left_on(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    let Some(clear) = view.first(&[Operation::Clear]) else { return Ok(found) };
    for mask in view.all(&[Operation::Mask]) {
        let colour = view.after(mask.at, FILM_COLOUR).filter(|colour| colour.at < clear.at);
        if colour.is_some() && view.lacks_between(mask.at, clear.at, Operation::Unmask) {
            found.push(mask.at);
        }
    }
    Ok(found)
}

/// Pulled before the coat is touch-dry; a coat that may be recoated is touch-dry.
fn mask_pulled_wet(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for pull in view.all(&[Operation::Unmask]) {
        if let Some(coat) = view.before(pull.at, COATS)
            && view.elapsed(coat.at, pull.at).short_of(view.wait(coat_setting(coat.op())))?
        {
            found.push(pull.at);
        }
    }
    Ok(found)
}

/// Whether a single thin protective coat is all the clear that lies before a step.
pub(super) fn only_protected(view: &View<'_>, at: usize) -> Result<bool, CannotJudge> {
    let mut coats = 0;
    for clear in view.all(CLEARS).filter(|clear| clear.at < at) {
        let single = match clear.step.coats {
            Told::Kept => true,
            Told::Is(coats) => coats == 1,
            Told::Untold => return Err(CannotJudge::without(plan::COATS)),
        };
        if clear.op() != Operation::Protect || !single || clear.is(Manner::Heavy)? {
            return Ok(false);
        }
        coats += 1;
    }
    Ok(coats == 1 || (coats == 0 && !view.lacks_before(at, Operation::Protect)))
}
