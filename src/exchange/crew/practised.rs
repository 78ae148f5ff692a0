//! Kinds of card that nobody was asked in a check: no figures are told of them, and they can be wrong all the same.

use crate::card::Mark;
use crate::record::{CardKind, Entry, Event, EventName, Help, Within};
use crate::rules::sorted::sorted;
use std::collections::{BTreeMap, BTreeSet};

/// Answers to one of them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Practised {
    /// The cards.
    pub kind: CardKind,
    /// Answers.
    pub answers: usize,
    /// Wholly right ones.
    pub right: usize,
    /// The latest wrong answer, or the latest of all.
    pub example: EventName,
}

/// Kinds that have answers from practice, from paper or with help alone, those answered wrong most often first.
#[must_use]
pub fn practised<'a>(events: impl IntoIterator<Item = &'a Event>) -> Vec<Practised> {
    let mut checked = BTreeSet::new();
    let mut found = BTreeMap::<(&str, u32), (Practised, &Entry)>::new();
    for entry in events.into_iter().filter_map(Event::answer) {
        let kind = (entry.family.as_str(), entry.version);
        if entry.help == Help::None && matches!(entry.within, Within::Check { .. }) {
            checked.insert(kind);
            continue;
        }
        let (one, latest) = found.entry(kind).or_insert_with(|| {
            let kind = CardKind { family: entry.family.clone(), version: entry.version };
            (Practised { kind, answers: 0, right: 0, example: entry.stamp.name() }, entry)
        });
        one.answers += 1;
        one.right += usize::from(entry.mark == Mark::Right);
        if entry.mark != Mark::Right || latest.mark == Mark::Right {
            (one.example, *latest) = (entry.stamp.name(), entry);
        }
    }
    found.retain(|kind, _| !checked.contains(kind));
    let all: Vec<Practised> = found.into_values().map(|(one, _)| one).collect();
    sorted(all, |a, b| (b.answers - b.right).cmp(&(a.answers - a.right)))
}
