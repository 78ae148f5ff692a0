//! Cards of a worksheet as a screen holds them, and answers to those of the shop's own.

use crate::card::{Answer, Card};
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

/// The options that are picked after one more was touched.
pub(super) fn picked(now: &[usize], option: usize, many: bool) -> Vec<usize> {
    if !many {
        return vec![option];
    }
    let mut picked: Vec<usize> = now.iter().copied().filter(|one| *one != option).collect();
    if picked.len() == now.len() {
        picked.push(option);
    }
    picked
}

/// What picked options answer; `None` where none is.
pub(super) fn answer(card: &OwnCard, picked: &[usize]) -> Option<Answer> {
    let term = |option: &usize| u32::try_from(option + 1).ok().map(OwnCard::term);
    let terms: Vec<String> = picked.iter().filter_map(term).collect();
    let first = terms.first()?.clone();
    Some(if card.asks_all() { Answer::Terms(terms) } else { Answer::Term(first) })
}
