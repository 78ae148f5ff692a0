//! What is read and answered.

use super::response::{NOT_ENOUGH, RESPONSE, letter};
use super::xml::{element, empty, text};
use crate::card::{Card, Kind, Voice};

/// The body of an item.
pub(super) fn body(voice: &Voice<'_>, card: &Card) -> String {
    let line = |words: &str| element("p", &[], &text(words));
    let told: String = voice
        .facts(card)
        .iter()
        .map(|(name, value)| element("li", &[], &text(&format!("{name}: {value}"))))
        .collect();
    let told = if told.is_empty() { told } else { element("ul", &[], &told) };
    let story = line(&voice.story(card)) + &told;
    let ask = voice.ask(card);
    let options: String = card
        .options
        .iter()
        .enumerate()
        .map(|(place, option)| choice(&letter(place), &voice.answer(&card.family, option)))
        .collect();
    let prompt = element("qti-prompt", &[], &text(&ask));
    let asked = match card.kind {
        Kind::Order => {
            let said = [("response-identifier", RESPONSE), ("shuffle", "false")];
            element("qti-order-interaction", &said, &(prompt + &options))
        }
        Kind::Number => {
            let unit = card.unit.map(|unit| unit.symbol()).unwrap_or_default();
            let blank = empty("qti-text-entry-interaction", &[("response-identifier", RESPONSE)]);
            line(&ask) + &element("p", &[], &format!("{blank} {}", text(unit)))
        }
        kind => {
            let most = if kind == Kind::ChooseOne { "1" } else { "0" };
            let said = [("response-identifier", RESPONSE), ("shuffle", "false"), ("max-choices", most)];
            let none = choice(NOT_ENOUGH, voice.texts.get("answer.not-enough"));
            element("qti-choice-interaction", &said, &(prompt + &options + &none))
        }
    };
    element("qti-item-body", &[], &(story + &asked))
}

fn choice(name: &str, words: &str) -> String {
    element("qti-simple-choice", &[("identifier", name)], &text(words))
}
