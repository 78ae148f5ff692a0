//! What keys do on a card before it is handed in.

use crate::card::{Card, Kind, Slate};
use crate::record::Certainty;

/// What a key is for.
pub(super) enum Key {
    Certain(Certainty),
    HandIn,
    Answer(Slate),
}

/// What a key is for on a card whose answer is made so far; `None` where it means nothing.
pub(super) fn meant(key: &str, card: &Card, slate: &Slate) -> Option<Key> {
    match key {
        // The last letters, since the first ones are those of the options.
        "x" | "X" => Some(Key::Certain(Certainty::AskFirst)),
        "y" | "Y" => Some(Key::Certain(Certainty::TestBoard)),
        "z" | "Z" => Some(Key::Certain(Certainty::OnTheJob)),
        "Enter" => Some(Key::HandIn),
        _ => slate_after(key, card, slate).map(Key::Answer),
    }
}

/// The answer after a key; `None` where the key means nothing on this card.
fn slate_after(key: &str, card: &Card, slate: &Slate) -> Option<Slate> {
    let mut letters = key.chars();
    let letter = letters.next().filter(|_| letters.next().is_none());
    match (card.kind, key, letter) {
        (_, "?", _) => Some(slate.clone().toggle_not_enough()),
        (Kind::Number, "Backspace", _) => Some(slate.clone().typed('\u{8}')),
        (Kind::Number, _, Some(key @ ('0'..='9' | '.' | ',' | '-'))) => Some(slate.clone().typed(key)),
        (Kind::ChooseOne | Kind::ChooseAll, _, Some(letter)) => {
            let digit = letter.to_digit(10).and_then(|digit| digit.checked_sub(1));
            let place = digit.or_else(|| u32::from(letter.to_ascii_lowercase()).checked_sub(u32::from('a')));
            let place = usize::try_from(place?).ok().filter(|place| *place < card.options.len())?;
            Some(slate.clone().pick(card.kind, place))
        }
        _ => None,
    }
}
