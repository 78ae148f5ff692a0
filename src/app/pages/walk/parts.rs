//! What can be seen of a part, in words.

use crate::app::state::Shop;
use crate::process::lying::{Laid, Lying};
use crate::walk::names::Operation;

/// A part as it lies there, from its top down: how the top of it was left, then what lies on the wood.
pub(super) fn seen(shop: &Shop, lying: &Lying) -> String {
    let scuffed = lying.film().is_some_and(|film| film.abraded) && !lying.levelled;
    let top = match (lying.buffed, lying.levelled, scuffed) {
        (true, ..) => Some("walk.seen.buffed"),
        (_, true, _) => Some("walk.seen.levelled"),
        (.., true) => Some("walk.seen.scuffed"),
        _ => None,
    };
    let scraped = lying.scraped && lying.done.contains(&Operation::Scrape);
    let sanded = lying.done.contains(&Operation::Sand);
    let bare = if sanded { "walk.seen.sanded" } else { "walk.seen.raw" };
    let keys = [
        top,
        (lying.masks > 0).then_some("walk.seen.masked"),
        scraped.then_some("walk.seen.scraped"),
        lying.laid.is_empty().then_some(bare),
    ];
    let named = keys.into_iter().flatten().map(|key| shop.say(key).to_string());
    named.chain(lying.laid.iter().rev().map(|laid| layer(shop, laid))).collect::<Vec<_>>().join(", ")
}

fn layer(shop: &Shop, laid: &Laid) -> String {
    let key = match laid.operation {
        Operation::Stain => "walk.seen.stained",
        Operation::Fill if laid.wiped => "walk.seen.filled",
        Operation::Fill => "walk.seen.filler-on",
        Operation::Washcoat => "walk.seen.washcoat",
        Operation::Seal => "walk.seen.sealed",
        Operation::Colour => "walk.seen.coloured",
        Operation::Shade => "walk.seen.shaded",
        Operation::Protect => "walk.seen.protected",
        _ => "walk.seen.clear",
    };
    shop.say_with(key, &[("n", laid.coats.to_string())]).to_string()
}
