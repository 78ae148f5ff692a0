//! Puts the next card on the desk.

use crate::app::state::{Shop, Told};
use crate::card::{self, Card, scene};
use crate::content::World;
use crate::device::clock;
use crate::learn::memory::{Day, Pick, Reason, candidates, pick};
use crate::learn::{Known, seed};
use crate::picture::Recipe;
use crate::record::{CardName, Draft, LocalDate, SheetName};
use crate::rules::term::Stage;
use std::collections::BTreeMap;

/// Seeds tried when a sheet gives no fair question for one.
const TRIES: u32 = 8;

/// The next sensible card of all stages or of one, or another of the same family.
pub(super) fn fresh(
    shop: &Shop,
    told: &Told,
    within: Option<Stage>,
    like: Option<&str>,
    done: u32,
) -> Option<Draft> {
    clock::measured("picked", || dealt(shop, told, within, like, done))
}

fn dealt(shop: &Shop, told: &Told, within: Option<Stage>, like: Option<&str>, done: u32) -> Option<Draft> {
    let person = shop.settings.person.as_str();
    let family = match like {
        Some(family) => family.to_owned(),
        None => next(shop, (&told.known, &told.ends), within)?.0,
    };
    let sheet = shop.sheet()?;
    let world = World { content: shop.content(), sheet };
    let card = (0..TRIES).find_map(|again| {
        // A seed passed over is skipped for good: the next card starts from another count.
        let seed = seed(person, told.answers.wrapping_add(again.wrapping_mul(1 << 24)));
        card::deal(&world, &family, seed).ok()
    })?;
    Some(Draft::new(person, &card, SheetName::of(sheet), within, done))
}

/// The family that comes next in practice, of all stages or of one, and why. `ends` are the days on which what is signed for
/// competencies expires.
pub(super) fn next(
    shop: &Shop,
    (known, ends): (&Known, &BTreeMap<String, Day>),
    within: Option<Stage>,
) -> Option<(String, Reason)> {
    let candidates = candidates(shop.content(), within, &|slug| ends.get(slug).copied());
    // Without a day nothing is forgotten.
    let today = Day(clock::today().map_or(0, LocalDate::number));
    pick(&candidates, &known.remembered, today).map(|Pick { family, reason }| (family.to_owned(), reason))
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
