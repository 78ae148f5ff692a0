//! Departures from the order that the shop sheet names. They are no errors of the trade: another shop may do so.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::operation::{COATS, FILM_COLOUR, Operation};
use super::view::{Placed, View};
use crate::rules::sheet::Setting;

pub(super) const RULES: &[Rule] = &[
    (OrderError::ShopStain, stain_place),
    (OrderError::ShopWashcoat, washcoat_place),
    (OrderError::ShopProtective, protective_place),
];

fn stain_place(view: &View<'_>) -> Shape {
    let (Some(stain), Some(fill)) = (view.first(&[Operation::Stain]), view.first(&[Operation::Fill])) else {
        return Ok(Vec::new());
    };
    let stain_first = view.sheet.is_on(Setting::StainFirst);
    let later = stain.at.max(fill.at);
    Ok((stain_first != (stain.at < fill.at)).then_some(later).into_iter().collect())
}

/// Between stain and filler where the sheet asks for it; never after filler or a coat.
fn washcoat_place(view: &View<'_>) -> Shape {
    if !view.sheet.is_on(Setting::WashcoatBeforeFill) {
        return Ok(Vec::new());
    }
    let (stain, fill) = (view.first(&[Operation::Stain]), view.first(&[Operation::Fill]));
    let mut found = Vec::new();
    if let (Some(stain), Some(fill)) = (stain, fill)
        && stain.at < fill.at
        && view.lacks_between(stain.at, fill.at, Operation::Washcoat)
    {
        found.push(fill.at);
    }
    for washcoat in view.all(&[Operation::Washcoat]) {
        let early = stain.is_some_and(|stain| stain.at > washcoat.at) && view.job.wants_filler(view.part);
        let over = fill.is_some_and(|fill| fill.at < washcoat.at);
        if early || over || view.before(washcoat.at, COATS).is_some() {
            found.push(washcoat.at);
        }
    }
    Ok(found)
}

/// Between colour and scraping where the sheet asks for it, so that the work is judged under clear.
fn protective_place(view: &View<'_>) -> Shape {
    if !view.sheet.is_on(Setting::ProtectiveClear) {
        return Ok(Vec::new());
    }
    let mut found = Vec::new();
    if let (Some(colour), Some(scrape)) = (view.last(FILM_COLOUR), view.first(&[Operation::Scrape]))
        && colour.at < scrape.at
        && view.lacks_between(colour.at, scrape.at, Operation::Protect)
    {
        found.push(scrape.at);
    }
    let judged =
        |protect: &Placed<'_>| view.before(protect.at, &[Operation::Scrape, Operation::Inspect]).is_some();
    found.extend(view.all(&[Operation::Protect]).filter(judged).map(|protect| protect.at));
    Ok(found)
}
