//! What was found wrong after it had counted. Nothing is erased: the answers stay, and no longer count.

use super::{AssessorName, Decided, Entry, Event, EventName, Exercised, NOTE_MOST, Stamp, is_plain, plain};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// Cards of a family in one of its versions.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CardKind {
    /// The family.
    pub family: String,
    /// Its version. Whoever mends what was wrong raises it, or the mended cards would not count either.
    pub version: u32,
}

/// What was found wrong.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Wrong {
    /// The cards of a family.
    Cards(CardKind),
    /// A rule, and with it all cards of which it may decide one.
    Rule {
        /// Its id.
        rule: String,
        /// Those cards, as they were when it was voided.
        cards: Vec<CardKind>,
    },
    /// A scenario set.
    Set {
        /// As checks name it.
        set: String,
    },
    /// An earlier voiding: what it touched counts again.
    Void {
        /// The voiding, as it was first written.
        void: EventName,
    },
}

/// Something was found wrong: what rests on it no longer counts, on whichever day it was answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Voided {
    /// Where and when; the person is empty.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// What.
    pub wrong: Wrong,
    /// Why.
    pub reason: String,
    /// Who found it: shop number and name, empty where nobody was named.
    pub by: AssessorName,
    /// The event that it was taken over from, where it was first written on another tablet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<EventName>,
}

impl Voided {
    /// The event that it was first written as: the same on every tablet that took it over.
    #[must_use]
    pub fn origin(&self) -> EventName {
        self.from.clone().unwrap_or_else(|| self.stamp.name())
    }

    /// Whether it says why, in words that can be shown; else it voids nothing.
    #[must_use]
    pub fn is_fit(&self) -> bool {
        !plain(&self.reason).is_empty() && is_plain(&self.reason, NOTE_MOST)
    }
}

/// What is void, by what an answer tells of itself.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Voids<'a> {
    cards: BTreeMap<(&'a str, u32), &'a Voided>,
    rules: BTreeMap<&'a str, &'a Voided>,
    sets: BTreeMap<&'a str, &'a Voided>,
}

impl<'a> Voids<'a> {
    /// What these events void, whatever their order.
    #[must_use]
    pub fn of(events: impl IntoIterator<Item = &'a Event>) -> Self {
        let of = |event: &'a Event| if let Event::Voided(voided) = event { Some(&**voided) } else { None };
        let all: Vec<&Voided> = events.into_iter().filter_map(of).filter(|one| one.is_fit()).collect();
        let lifted: BTreeSet<&EventName> = all
            .iter()
            .filter_map(|one| if let Wrong::Void { void } = &one.wrong { Some(void) } else { None })
            .collect();
        let mut voids = Self::default();
        for one in all.iter().filter(|one| !lifted.contains(&one.origin())) {
            match &one.wrong {
                Wrong::Cards(cards) => voids.take(std::slice::from_ref(cards), one),
                Wrong::Rule { rule, cards } => {
                    voids.rules.entry(rule).or_insert(one);
                    voids.take(cards, one);
                }
                Wrong::Set { set } => {
                    voids.sets.entry(set).or_insert(one);
                }
                Wrong::Void { .. } => {}
            }
        }
        voids
    }

    fn take(&mut self, cards: &'a [CardKind], by: &'a Voided) {
        for one in cards {
            self.cards.entry((&one.family, one.version)).or_insert(by);
        }
    }

    /// Why an answer no longer counts; `None` where it does.
    #[must_use]
    pub fn touches(&self, entry: &Entry) -> Option<&'a Voided> {
        let by_set = entry.within.set().and_then(|set| self.sets.get(set));
        by_set.or_else(|| self.cards.get(&(entry.family.as_str(), entry.version))).copied()
    }

    /// Why what a decision says of a family no longer counts: cards of it are void, or all rules are that it broke.
    #[must_use]
    pub fn touches_exercised(&self, one: &Exercised) -> Option<&'a Voided> {
        self.of_cards(&one.family, one.version).or_else(|| self.of_all(one.broke.iter().map(String::as_str)))
    }

    /// Why what is told of a decision no longer counts: where it is wrong, each rule that it broke is void, or so are all
    /// families that it broke it in; where it is right, all families that it exercises.
    #[must_use]
    pub fn touches_decided(&self, decided: &Decided) -> Option<&'a Voided> {
        let of_families = |mut of: Vec<&Exercised>| {
            let last = of.pop()?;
            of.into_iter().try_fold(self.touches_exercised(last)?, |_, one| self.touches_exercised(one))
        };
        let of_rule = |rule: &String| {
            let broke_it = decided.exercised.iter().filter(|one| one.broke.contains(rule));
            self.of_rule(rule).or_else(|| of_families(broke_it.collect()))
        };
        match decided.broke.as_slice() {
            [] => of_families(decided.exercised.iter().collect()),
            [first, others @ ..] => others.iter().try_fold(of_rule(first)?, |_, rule| of_rule(rule)),
        }
    }

    /// Why rules no longer count that were broken together: all of them are void.
    #[must_use]
    pub fn of_all<'b>(&self, mut rules: impl Iterator<Item = &'b str>) -> Option<&'a Voided> {
        let first = self.of_rule(rules.next()?)?;
        rules.all(|rule| self.of_rule(rule).is_some()).then_some(first)
    }

    /// Why cards of that kind no longer count.
    #[must_use]
    pub fn of_cards(&self, family: &str, version: u32) -> Option<&'a Voided> {
        self.cards.get(&(family, version)).copied()
    }

    /// Why a set no longer counts.
    #[must_use]
    pub fn of_set(&self, set: &str) -> Option<&'a Voided> {
        self.sets.get(set).copied()
    }

    /// Why a rule no longer counts.
    #[must_use]
    pub fn of_rule(&self, rule: &str) -> Option<&'a Voided> {
        self.rules.get(rule).copied()
    }

    /// Whether nothing is void.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.cards.is_empty() && self.rules.is_empty() && self.sets.is_empty()
    }
}
