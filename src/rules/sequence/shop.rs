//! Departures from the order that the shop sheet names. They are no errors of the trade: another shop may do so.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::operation::{FILM_COLOUR, Operation};
use super::view::View;
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

fn washcoat_place(view: &View<'_>) -> Shape {
    let (Some(stain), Some(fill)) = (view.first(&[Operation::Stain]), view.first(&[Operation::Fill])) else {
        return Ok(Vec::new());
    };
    let bare = stain.at < fill.at && view.lacks_between(stain.at, fill.at, Operation::Washcoat);
    Ok((bare && view.sheet.is_on(Setting::WashcoatBeforeFill)).then_some(fill.at).into_iter().collect())
}

fn protective_place(view: &View<'_>) -> Shape {
    let (Some(colour), Some(scrape)) = (view.last(FILM_COLOUR), view.first(&[Operation::Scrape])) else {
        return Ok(Vec::new());
    };
    let open = colour.at < scrape.at && view.lacks_between(colour.at, scrape.at, Operation::Protect);
    Ok((open && view.sheet.is_on(Setting::ProtectiveClear)).then_some(scrape.at).into_iter().collect())
}
