//! Cards of a worksheet as a screen holds them.

use crate::card::Card;
use crate::exchange::set::{OwnCard, SetCard};

/// A card, owned.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Kept {
    Computed(Card),
    Own(OwnCard),
}

impl Kept {
    pub(super) fn of(card: SetCard<'_>) -> Self {
        match card {
            SetCard::Computed(card) => Self::Computed(card),
            SetCard::Own(_, card) => Self::Own(card.clone()),
        }
    }

    /// Family and seed under which it is answered.
    pub(super) fn named(&self) -> (String, u32) {
        match self {
            Self::Computed(card) => (card.family.clone(), card.seed),
            Self::Own(card) => (card.id(), 0),
        }
    }
}
