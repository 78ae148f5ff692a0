//! What the first answers of checks say of people, of card families and of sets.

use super::{Flag, Item, Reliability, Scores, flags, items, reliability};
use crate::card::Mark;
use crate::content::Content;
use crate::learn::slip;
use crate::record::{Entry, Event, Help, Within};
use std::collections::{BTreeMap, BTreeSet};

/// Share of right answers that passes, for how sure passing is. Common practice, no source.
const CUT_SHARE: f64 = 0.8;

/// What answers say.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// Answers that were read.
    pub answers: usize,
    /// Those that count here: the first of a person to a family in its present version, in a check and without help.
    pub counted: usize,
    /// People, by name.
    pub people: Vec<PersonReport>,
    /// Families, those to look at first: with most flags, then the hardest.
    pub families: Vec<FamilyReport>,
    /// Sets, by name.
    pub sets: Vec<SetReport>,
}

/// What answers say of a person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PersonReport {
    /// As they stand in the journal.
    pub person: String,
    /// Answers that count.
    pub answers: usize,
    /// Right ones among them.
    pub right: usize,
    /// Those that were wrong and would have been done on the job.
    pub sure_and_wrong: usize,
}

/// What answers say of a card family.
#[derive(Debug, Clone, PartialEq)]
pub struct FamilyReport {
    /// The family.
    pub family: String,
    /// Its version: another one is another item.
    pub version: u32,
    /// How hard it is, and whether it goes with the rest.
    pub item: Item,
    /// Mean luck at the cards that were answered, where it is known.
    pub luck: Option<f64>,
    /// Answers that were wrong and would have been done on the job.
    pub sure_and_wrong: usize,
    /// What was misread, by the slip's id, and how often; told of cards on shop sheets that are known here.
    pub slips: BTreeMap<String, usize>,
    /// Why to look at it.
    pub flags: Vec<Flag>,
}

/// What answers say of a set.
#[derive(Debug, Clone, PartialEq)]
pub struct SetReport {
    /// The set.
    pub set: String,
    /// How far it agrees with itself, over those who were asked every family of it that anybody was asked.
    pub reliability: Option<Reliability>,
}

/// What events say, those of several tablets as they were merged.
#[must_use]
pub fn report(content: &Content, events: &[Event]) -> Report {
    let answers = events.iter().filter_map(Event::answer);
    let counted = first_answers(events);
    let people: BTreeSet<&str> = counted.iter().map(|entry| entry.stamp.person.as_str()).collect();
    let names: Vec<&str> = people.iter().copied().collect();
    Report {
        answers: answers.count(),
        counted: counted.len(),
        people: names.iter().map(|name| person(name, &counted)).collect(),
        families: families(content, &names, &counted),
        sets: sets(&names, events),
    }
}

/// The first answer of each person to each family and version, in checks, without help.
fn first_answers(events: &[Event]) -> Vec<&Entry> {
    first(in_checks(events).map(|(_, entry)| entry))
}

/// Answers of checks without help, each with its set.
fn in_checks(events: &[Event]) -> impl Iterator<Item = (&str, &Entry)> {
    events.iter().filter_map(Event::answer).filter(|entry| entry.help == Help::None).filter_map(|entry| {
        if let Within::Check { set, .. } = &entry.within { Some((set.as_str(), entry)) } else { None }
    })
}

fn first<'a>(entries: impl Iterator<Item = &'a Entry>) -> Vec<&'a Entry> {
    let mut seen = BTreeSet::new();
    entries
        .filter(|entry| seen.insert((entry.stamp.person.as_str(), entry.family.as_str(), entry.version)))
        .collect()
}

fn person(name: &str, counted: &[&Entry]) -> PersonReport {
    let theirs: Vec<&&Entry> = counted.iter().filter(|entry| entry.stamp.person == name).collect();
    PersonReport {
        person: name.to_owned(),
        answers: theirs.len(),
        right: theirs.iter().filter(|entry| entry.mark == Mark::Right).count(),
        sure_and_wrong: theirs.iter().filter(|entry| entry.sure_and_wrong()).count(),
    }
}

type Asked<'a> = BTreeMap<(&'a str, u32), Vec<&'a Entry>>;

fn by_family<'a>(counted: &[&'a Entry]) -> Asked<'a> {
    let mut asked = Asked::new();
    for entry in counted {
        asked.entry((entry.family.as_str(), entry.version)).or_default().push(entry);
    }
    asked
}

/// A row a person, a column a family.
fn scores(names: &[&str], asked: &Asked<'_>) -> Option<Scores> {
    let answer = |name: &str, entries: &[&Entry]| {
        entries.iter().find(|entry| entry.stamp.person == name).map(|entry| entry.mark == Mark::Right)
    };
    let row = |name: &&str| asked.values().map(|entries| answer(name, entries)).collect();
    Scores::new(names.iter().map(row).collect()).ok()
}

fn families(content: &Content, names: &[&str], counted: &[&Entry]) -> Vec<FamilyReport> {
    let asked = by_family(counted);
    let found = scores(names, &asked).map(|scores| items(&scores)).unwrap_or_default();
    let told = asked.into_iter().zip(found).filter_map(|(((family, version), entries), item)| {
        let item = item?;
        let lucks: Vec<f64> = entries.iter().filter_map(|entry| entry.guess).collect();
        Some(FamilyReport {
            family: family.to_owned(),
            version,
            luck: super::moments::mean(&lucks),
            sure_and_wrong: entries.iter().filter(|entry| entry.sure_and_wrong()).count(),
            slips: slips(content, &entries),
            flags: flags(&item, &[]),
            item,
        })
    });
    let mut told: Vec<FamilyReport> = told.collect();
    told.sort_by(|a, b| {
        let by_flags = b.flags.len().cmp(&a.flags.len());
        by_flags.then(a.item.difficulty.total_cmp(&b.item.difficulty)).then(a.family.cmp(&b.family))
    });
    told
}

/// What was misread: each card dealt again as it was, where its shop sheet is one of the content's.
fn slips(content: &Content, entries: &[&Entry]) -> BTreeMap<String, usize> {
    let mut slips = BTreeMap::new();
    for entry in entries {
        if let Some(slip) = slip(content, entry) {
            *slips.entry(slip.to_owned()).or_insert(0) += 1;
        }
    }
    slips
}

/// Each set by itself: what somebody met in another set before is as new in this one as it is to the others.
fn sets(names: &[&str], events: &[Event]) -> Vec<SetReport> {
    let mut sets: BTreeMap<&str, Vec<&Entry>> = BTreeMap::new();
    for (set, entry) in in_checks(events) {
        sets.entry(set).or_default().push(entry);
    }
    let told = |(set, entries): (&str, Vec<&Entry>)| {
        let asked = by_family(&first(entries.into_iter()));
        #[allow(clippy::cast_precision_loss, reason = "far fewer than 2^53 families")]
        let cut = CUT_SHARE * asked.len() as f64;
        let reliability = scores(names, &asked).and_then(|scores| reliability(&scores, cut));
        SetReport { set: set.to_owned(), reliability }
    };
    sets.into_iter().map(told).collect()
}
