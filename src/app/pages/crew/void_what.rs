//! What can be voided, and what of it is void.

use crate::app::state::{BookContext, CrewContext, SetsContext, Shop};
use crate::card;
use crate::content::Content;
use crate::device::Slices;
use crate::exchange::crew::decides;
use crate::exchange::set::OWN_CARD;
use crate::learn::items::card_of;
use crate::record::{CardKind, Decided, Entry, Event, Voided, Voids, Wrong};
use crate::rules::verdict::RuleId;
use yew::prelude::*;

/// What can be voided.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum VoidWhat {
    /// Cards of a family.
    Cards(CardKind),
    /// A rule.
    Rule(String),
    /// A set.
    Set(String),
}

impl VoidWhat {
    /// What voids it.
    pub(super) fn standing<'a>(&self, voids: &Voids<'a>) -> Option<&'a Voided> {
        match self {
            Self::Cards(kind) => voids.of_cards(&kind.family, kind.version),
            Self::Rule(rule) => voids.of_rule(rule),
            Self::Set(set) => voids.of_set(set),
        }
    }
}

/// What is written down for it; a rule takes all cards with it of which it decides one.
pub(super) async fn wrong(content: &Content, what: VoidWhat) -> Wrong {
    match what {
        VoidWhat::Cards(kind) => Wrong::Cards(kind),
        VoidWhat::Set(set) => Wrong::Set { set },
        VoidWhat::Rule(rule) => {
            let (mut cards, mut slices) = (Vec::new(), Slices::begin());
            for family in &content.families {
                if decides(content, &rule, &family.id) {
                    cards.push(CardKind { family: family.id.clone(), version: family.version });
                }
                slices.rest().await;
            }
            Wrong::Rule { rule, cards }
        }
    }
}

/// Cards of one kind, and the rules that decide one of them.
pub(super) fn of_cards(shop: &Shop, kind: CardKind, decided: &[RuleId]) -> Vec<(VoidWhat, AttrValue)> {
    let own = kind.family.starts_with(OWN_CARD);
    let cards = shop.say(if own { "crew.void.this-card" } else { "crew.void.these-cards" });
    let rules = decided.iter().map(|rule| of_rule(shop, rule.0));
    [(VoidWhat::Cards(kind), cards)].into_iter().chain(rules).collect()
}

/// What can be wrong with the card of an answer, and with the set that it was asked in.
pub(super) fn of_answer(shop: &Shop, sets: &SetsContext, entry: &Entry) -> Vec<(VoidWhat, AttrValue)> {
    let kind = CardKind { family: entry.family.clone(), version: entry.version };
    let mut all = of_cards(shop, kind, &decided_by(shop, entry));
    all.extend(entry.within.set().map(|set| {
        let title = super::done::set_title(shop, sets, set).to_string();
        (VoidWhat::Set(set.to_owned()), shop.say_with("crew.void.set", &[("set", title)]))
    }));
    all
}

/// What can be wrong with what a decision of a walk was held against: its rules, and the kinds of card that it exercises.
pub(super) fn of_decision(shop: &Shop, decided: &Decided) -> Vec<(VoidWhat, AttrValue)> {
    let rules = decided.broke.iter().map(|rule| of_rule(shop, rule));
    let cards = decided.exercised.iter().map(|one| {
        let kind = CardKind { family: one.family.clone(), version: one.version };
        let family = shop.family_title(&one.family).to_string();
        (VoidWhat::Cards(kind), shop.say_with("walked.void-cards", &[("family", family)]))
    });
    rules.chain(cards).collect()
}

fn of_rule(shop: &Shop, rule: &str) -> (VoidWhat, AttrValue) {
    let words = shop.text(&format!("rule.{rule}")).to_string();
    (VoidWhat::Rule(rule.to_owned()), shop.say_with("crew.void.this-rule", &[("rule", words)]))
}

/// The rules that decide the card of an answer.
pub(super) fn decided_by(shop: &Shop, entry: &Entry) -> Vec<RuleId> {
    let solution = card_of(shop.content(), entry).and_then(|(card, world)| card::solve(&card, &world));
    solution.map(|solution| solution.rules).unwrap_or_default()
}

/// All voidings that are known here: those of this tablet, and of others.
pub(super) fn known_voidings(books: &BookContext, crew: &CrewContext) -> Vec<Event> {
    let own = books.book.journal.events().iter().filter(|event| matches!(event, Event::Voided(_)));
    own.chain(crew.gathered.iter().flat_map(|all| all.voided())).cloned().collect()
}
