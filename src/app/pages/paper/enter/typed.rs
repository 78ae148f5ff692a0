//! The answer to a card as it is typed in, and how sure whoever gave it was.

use crate::app::pages::dealt::Dealt;
use crate::app::state::Shop;
use crate::card::{Answer, Card, Slate};
use crate::record::Certainty;
use yew::prelude::*;

pub(super) struct Typed {
    /// What is set of a computed card, with the place of that card.
    slate: UseStateHandle<Option<(usize, Slate)>>,
    /// What is marked of a card of the shop's own.
    pub(super) own_marks: UseStateHandle<Vec<u32>>,
    pub(super) certainty: UseStateHandle<Option<Certainty>>,
}

#[hook]
pub(super) fn use_typed() -> Typed {
    Typed { slate: use_state(|| None), own_marks: use_state(Vec::new), certainty: use_state(|| None) }
}

impl Typed {
    /// What is set of a computed card, the blank one where nothing is.
    pub(super) fn slate(&self, nth: usize, card: &Card) -> Slate {
        match &*self.slate {
            Some((at, slate)) if *at == nth => slate.clone(),
            _ => Slate::for_card(card),
        }
    }

    /// Sets it.
    pub(super) fn on_slate(&self, nth: usize) -> Callback<Slate> {
        let set = self.slate.setter();
        Callback::from(move |to: Slate| set.set(Some((nth, to))))
    }

    /// Sets how sure they were.
    pub(super) fn on_certainty(&self) -> Callback<Certainty> {
        let set = self.certainty.setter();
        Callback::from(move |to: Certainty| set.set(Some(to)))
    }

    /// The answer, as far as there is one.
    fn answer(&self, nth: usize, card: &Dealt) -> Option<Answer> {
        match card {
            Dealt::Computed(card) => self.slate(nth, card).answer(card),
            Dealt::Own(card) => card.answer(&self.own_marks),
        }
    }

    /// What can be graded; in words what is missing before.
    pub(super) fn ready(
        &self,
        shop: &Shop,
        nth: usize,
        card: &Dealt,
    ) -> Result<(Answer, Certainty), AttrValue> {
        let answer = self.answer(nth, card).ok_or_else(|| shop.say("worksheet.need-answer"))?;
        let certainty = self.certainty.ok_or_else(|| shop.say("worksheet.need-certainty"))?;
        Ok((answer, certainty))
    }

    /// What clears it for the next card.
    pub(super) fn clearing(&self) -> impl Fn() + 'static {
        let (certainty, own_marks) = (self.certainty.setter(), self.own_marks.setter());
        move || {
            certainty.set(None);
            own_marks.set(Vec::new());
        }
    }
}
