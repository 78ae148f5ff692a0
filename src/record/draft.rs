//! The card that lies on the desk: enough to go on with it after a reload, before or after it was handed in.

use super::{Certainty, SheetName};
use crate::card::{Card, Slate};
use crate::rules::term::Stage;
use serde::{Deserialize, Serialize};

/// The name of a card: it can be dealt again from it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CardName {
    /// Family.
    pub family: String,
    /// Version of the family.
    pub version: u32,
    /// Seed.
    pub seed: u32,
    /// Shop sheet.
    pub sheet: SheetName,
}

/// A card being answered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Draft {
    /// Who answers it.
    pub person: String,
    /// The card.
    pub card: CardName,
    /// The stage practised, or all of them.
    pub within: Option<Stage>,
    /// The check that it is a card of; none in practice.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub attempt: Option<String>,
    /// The answer so far.
    pub slate: Slate,
    /// How far the person would go on it.
    pub certainty: Option<Certainty>,
    /// Sequence number of its entry, once handed in.
    pub handed: Option<u64>,
    /// Whether an answer that was wrong and sure was worked once more.
    pub reworked: bool,
    /// Cards of the round that are done.
    pub done: u32,
}

impl Draft {
    /// A fresh card on the desk.
    #[must_use]
    pub fn new(person: &str, card: &Card, sheet: SheetName, within: Option<Stage>, done: u32) -> Self {
        let card_name =
            CardName { family: card.family.clone(), version: card.version, seed: card.seed, sheet };
        Self {
            person: person.to_owned(),
            card: card_name,
            within,
            attempt: None,
            slate: Slate::for_card(card),
            certainty: None,
            handed: None,
            reworked: false,
            done,
        }
    }
}
