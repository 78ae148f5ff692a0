//! An attempt at a set as the screen on which it is taken needs it.

use super::super::dealt::Dealt;
use super::taken::latest;
use crate::app::state::{KeptSet, Shop};
use crate::content::World;
use crate::exchange::set::cards;
use crate::learn::check::answers_of;
use crate::record::{Draft, Entry, Journal, SheetName, Standing, Within};

/// The attempt, worked out once an event.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct View {
    pub(super) attempt: String,
    /// Whether it is evidence for something.
    pub(super) counts: bool,
    /// Number of its latest step, and whether it was left with it.
    step: u64,
    left: bool,
    pub(super) sheet: SheetName,
    pub(super) cards: Vec<Dealt>,
    answers: Vec<Entry>,
}

impl View {
    pub(super) fn of(shop: &Shop, kept: &KeptSet, journal: &Journal) -> Option<Self> {
        let attempt = latest(shop, journal, &kept.id)?;
        let sheet = kept.set.sheet_of(shop.content()).ok()?;
        let world = World { content: shop.content(), sheet: &sheet };
        let dealt = cards(&kept.set, &kept.id, &world, attempt.person, attempt.id);
        let answers = answers_of(journal.events(), attempt.device, attempt.id);
        Some(Self {
            attempt: attempt.id.to_owned(),
            counts: !attempt.competencies.is_empty(),
            step: attempt.step,
            left: attempt.standing == Standing::Left,
            sheet: SheetName::of(&sheet),
            cards: dealt.into_iter().map(Dealt::from).collect(),
            answers: answers.into_iter().cloned().collect(),
        })
    }

    pub(super) fn within(&self, set: &str) -> Within {
        let (attempt, set) = (self.attempt.clone(), set.to_owned());
        if self.counts { Within::Check { attempt, set } } else { Within::Set { attempt, set } }
    }

    /// How many cards are answered: the place of the one that comes next.
    pub(super) fn at(&self) -> usize {
        self.answers.len()
    }

    /// The card that comes next.
    pub(super) fn card(&self) -> Option<&Dealt> {
        self.cards.get(self.at())
    }

    /// The answer that was given last, with its card.
    pub(super) fn last(&self) -> Option<(Entry, Dealt)> {
        let card = self.cards.get(self.at().checked_sub(1)?)?;
        Some((self.answers.last()?.clone(), card.clone()))
    }

    /// Whether it was begun, or taken up again, since the page was opened.
    pub(super) fn begun_since(&self, opened_at: u64) -> bool {
        !self.left && self.step >= opened_at
    }

    /// Whether a draft is that of the card that comes next.
    pub(super) fn is_next(&self, draft: &Draft) -> bool {
        let named = (draft.card.family.clone(), draft.card.seed);
        draft.attempt.as_deref() == Some(&self.attempt)
            && self.card().is_some_and(|card| card.named() == named)
    }

    /// A draft of the card that comes next; none of a card of the shop's own.
    pub(super) fn draft(&self, person: &str) -> Option<Draft> {
        let Dealt::Computed(card) = self.card()? else { return None };
        let draft = Draft::new(person, card, self.sheet.clone(), None, count(self.at()));
        Some(Draft { attempt: Some(self.attempt.clone()), ..draft })
    }
}

/// A number of cards as drafts and marks count them.
pub(super) fn count(cards: usize) -> u32 {
    u32::try_from(cards).unwrap_or(u32::MAX)
}
