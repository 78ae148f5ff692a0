//! Puts the next card on the desk.

use crate::app::state::Shop;
use crate::card::{self, Card, scene};
use crate::content::World;
use crate::learn::{self, Past};
use crate::picture::Recipe;
use crate::record::{CardName, Draft, Journal, SheetName};
use crate::rules::term::Stage;

/// Seeds tried when a sheet gives no fair question for one.
const TRIES: u32 = 8;

/// The next sensible card of all stages or of one, or another of the same family.
pub(super) fn fresh(
    shop: &Shop,
    journal: &Journal,
    within: Option<Stage>,
    like: Option<&str>,
    done: u32,
) -> Option<Draft> {
    let person = shop.settings.person.as_str();
    let past = Past::of(journal, person);
    let family = match like {
        Some(family) => family,
        None => &learn::next(shop.content(), &past, within)?.family.id,
    };
    let sheet = shop.sheet()?;
    let world = World { content: shop.content(), sheet };
    let begun = u32::try_from(past.len()).unwrap_or(u32::MAX);
    let card = (0..TRIES).find_map(|again| {
        // A seed passed over is skipped for good: the next card starts from another count.
        let seed = learn::seed(person, begun.wrapping_add(again.wrapping_mul(1 << 24)));
        card::deal(&world, family, seed).ok()
    })?;
    Some(Draft::new(person, &card, SheetName::of(sheet), within, done))
}

/// The panels that the card of a draft shows.
pub(super) fn panels(shop: &Shop, draft: &Draft) -> Vec<Recipe> {
    again(shop, &draft.card).map(|card| scene::panels(&card, shop.content())).unwrap_or_default()
}

/// Deals a card again from its name; `None` where family or sheet have changed since.
pub(super) fn again(shop: &Shop, name: &CardName) -> Option<Card> {
    let world = shop.world(&name.sheet.slug)?;
    let card = card::deal(&world, &name.family, name.seed).ok()?;
    (card.version == name.version && card.sheet == name.sheet.hash).then_some(card)
}
