//! What a kind of card is called, the shop's own cards by what they ask.

use crate::app::state::{SetsContext, Shop};
use crate::exchange::set::OWN_CARD;
use yew::AttrValue;

/// The title of a family; of a card of the shop's own its question, where a set that holds it is here.
pub(super) fn card_title(shop: &Shop, sets: &SetsContext, family: &str) -> AttrValue {
    match sets.own_card_of(family) {
        Some(card) => AttrValue::from(card.question.clone()),
        None if family.starts_with(OWN_CARD) => shop.say("crew.own-card"),
        None => shop.family_title(family),
    }
}
