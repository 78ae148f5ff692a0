//! What can be seen of a part, in words.

use crate::app::state::Shop;
use crate::process::lying::{Laid, Lying};
use crate::walk::names::Operation;

/// A part as it lies there: what lies on the wood, and how the top of it was left.
pub(super) fn seen(shop: &Shop, lying: &Lying) -> String {
    let mut told: Vec<String> = Vec::new();
    let bare = lying.laid.is_empty();
    if bare {
        let sanded = lying.done.contains(&Operation::Sand);
        told.push(shop.say(if sanded { "walk.seen.sanded" } else { "walk.seen.raw" }).to_string());
    }
    for laid in &lying.laid {
        told.push(layer(shop, laid));
    }
    if lying.masks > 0 {
        told.push(shop.say("walk.seen.masked").to_string());
    }
    if lying.scraped && lying.done.contains(&Operation::Scrape) {
        told.push(shop.say("walk.seen.scraped").to_string());
    }
    let scuffed = lying.film().is_some_and(|film| film.abraded) && !lying.levelled;
    let top = match (lying.buffed, lying.levelled, scuffed) {
        (true, ..) => Some("walk.seen.buffed"),
        (_, true, _) => Some("walk.seen.levelled"),
        (.., true) => Some("walk.seen.scuffed"),
        _ => None,
    };
    told.extend(top.map(|key| shop.say(key).to_string()));
    told.join(", ")
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
