//! What can be seen of a part, in words.

use crate::app::state::Shop;
use crate::process::lying::{Laid, Lying};
use crate::walk::names::Operation;

/// A part as it lies there, from its top down: how the top of it was left, what lies on the wood, how its binding is.
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
    let first = [top, (lying.masks > 0).then_some("walk.seen.masked")];
    let last = [scraped.then_some("walk.seen.scraped"), lying.laid.is_empty().then_some(bare)];
    let say = |key: &str| shop.say(key).to_string();
    let named = first.into_iter().flatten().map(say).chain(layers(shop, lying));
    named.chain(last.into_iter().flatten().map(say)).collect::<Vec<_>>().join(", ")
}

/// What lies on the wood, from the top down; coats of one kind that follow each other are counted together.
fn layers(shop: &Shop, lying: &Lying) -> Vec<String> {
    let mut all: Vec<(&str, u32)> = Vec::new();
    for laid in lying.laid.iter().rev() {
        match all.last_mut().filter(|(key, _)| *key == kind(laid)) {
            Some((_, coats)) => *coats += laid.coats,
            None => all.push((kind(laid), laid.coats)),
        }
    }
    all.into_iter().map(|(key, coats)| shop.say_with(key, &[("n", coats.to_string())]).to_string()).collect()
}

/// The text of what a layer is.
fn kind(laid: &Laid) -> &'static str {
    match laid.operation {
        Operation::Stain => "walk.seen.stained",
        Operation::Fill if laid.wiped => "walk.seen.filled",
        Operation::Fill => "walk.seen.filler-on",
        Operation::Washcoat => "walk.seen.washcoat",
        Operation::Seal => "walk.seen.sealed",
        Operation::Colour => "walk.seen.coloured",
        Operation::Shade => "walk.seen.shaded",
        Operation::Protect => "walk.seen.protected",
        _ => "walk.seen.clear",
    }
}
