//! The cards of a set as a screen holds them.

use crate::app::state::Shop;
use crate::card::Card;
use crate::content::World;
use crate::exchange::set::{OwnCard, Set, SetCard, cards};
use crate::rules::sheet::Sheet;
use std::rc::Rc;

#[derive(Debug, Clone, PartialEq)]
pub(super) enum Dealt {
    Computed(Rc<Card>),
    Own(Rc<OwnCard>),
}

impl Dealt {
    /// The cards of a set for a person in an attempt.
    pub(super) fn of(
        shop: &Shop,
        id: &str,
        set: &Set,
        sheet: &Sheet,
        person: &str,
        attempt: &str,
    ) -> Vec<Self> {
        let world = World { content: shop.content(), sheet };
        let kept = |card: SetCard<'_>| match card {
            SetCard::Computed(card) => Self::Computed(Rc::new(card)),
            SetCard::Own(_, card) => Self::Own(Rc::new(card.clone())),
        };
        cards(set, id, &world, person, attempt).into_iter().map(kept).collect()
    }

    /// The family under which it is answered.
    pub(super) fn family(&self) -> String {
        match self {
            Self::Computed(card) => card.family.clone(),
            Self::Own(card) => card.id(),
        }
    }
}
