//! The cards of a set as a screen holds them.

use crate::card::Card;
use crate::exchange::set::{OwnCard, SetCard};
use std::rc::Rc;

/// A card of a set, shared.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Dealt {
    Computed(Rc<Card>),
    Own(Rc<OwnCard>),
}

impl From<SetCard<'_>> for Dealt {
    fn from(card: SetCard<'_>) -> Self {
        match card {
            SetCard::Computed(card) => Self::Computed(Rc::new(card)),
            SetCard::Own(_, card) => Self::Own(Rc::new(card.clone())),
        }
    }
}

impl Dealt {
    /// Family and seed under which it is answered.
    pub(super) fn named(&self) -> (String, u32) {
        match self {
            Self::Computed(card) => (card.family.clone(), card.seed),
            Self::Own(card) => (card.id(), 0),
        }
    }
}
