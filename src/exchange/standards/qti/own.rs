//! A card of the shop's own as an item: fixed text, one or all that apply. "Not enough is told" is no answer to it.

use super::response::{declared, letter, templated};
use super::xml::{element, text};
use super::{Told, whole};
use crate::exchange::set::OwnCard;

/// Its name and text.
pub(super) fn item(card: &OwnCard) -> (String, String) {
    let right: Vec<String> = card
        .right
        .iter()
        .filter_map(|place| usize::try_from(place.checked_sub(1)?).ok())
        .map(letter)
        .collect();
    let (most, cardinality) = if card.asks_all() { ("0", "multiple") } else { ("1", "single") };
    let choice = |(place, words): (usize, &String)| {
        element("qti-simple-choice", &[("identifier", &letter(place))], &text(words))
    };
    let options: String = card.options.iter().enumerate().map(choice).collect();
    let prompt = element("qti-prompt", &[], &text(&card.question));
    let said =
        [("response-identifier", super::response::RESPONSE), ("shuffle", "false"), ("max-choices", most)];
    let asked = element("qti-choice-interaction", &said, &(prompt + &options));
    let told = Told {
        title: &card.question,
        declaration: declared(cardinality, "identifier", &right),
        body: element("qti-item-body", &[], &asked),
        processing: templated(),
    };
    whole(&card.id(), &told)
}
