//! The report, worked out a family at a time, so that a screen can go on meanwhile.

use super::report::{CUT_SHARE, FamilyReport, PersonReport, Report, SetReport};
use super::{Dealt, Item, RIGHT, Redealt, Scores, Taken, flags, items, option_uses, reliability};
use crate::card::Mark;
use crate::content::Content;
use crate::record::{Entry, Event, Help, Voids, Within};
use crate::rules::sorted::sorted;
use std::collections::{BTreeMap, BTreeSet};

/// What is reckoned with: answers that count, by people and families.
#[derive(Debug)]
pub struct Plan<'a> {
    answers: usize,
    /// People, by name.
    names: Vec<&'a str>,
    counted: Vec<&'a Entry>,
    families: Vec<(Kind<'a>, Vec<&'a Entry>)>,
    scores: Scores,
    items: Vec<Option<Item>>,
    sets: BTreeMap<&'a str, Vec<&'a Entry>>,
}

/// A family and its version: another version is another item.
type Kind<'a> = (&'a str, u32);

impl<'a> Plan<'a> {
    /// What events give, those of a person oldest first.
    #[must_use]
    pub fn of(events: impl IntoIterator<Item = &'a Event>) -> Self {
        let events: Vec<&Event> = events.into_iter().collect();
        let voids = Voids::of(events.iter().copied());
        let answers: Vec<&Entry> = events.into_iter().filter_map(Event::answer).collect();
        let in_checks =
            |entry: &&&Entry| entry.help == Help::None && matches!(entry.within, Within::Check { .. });
        let checked: Vec<&Entry> = answers.iter().filter(in_checks).copied().collect();
        let counted = first(checked.iter().copied(), &voids);
        let names: BTreeSet<&str> = counted.iter().map(|entry| entry.stamp.person.as_str()).collect();
        let names: Vec<&str> = names.into_iter().collect();
        let families = by_family(&counted);
        let scores = scores(&names, &families);
        let items = items(&scores);
        let mut sets: BTreeMap<&str, Vec<&Entry>> = BTreeMap::new();
        for entry in checked {
            if let Some(set) = entry.within.set() {
                sets.entry(set).or_default().push(entry);
            }
        }
        for entries in sets.values_mut() {
            *entries = first(entries.iter().copied(), &voids);
        }
        sets.retain(|_, entries| !entries.is_empty());
        Self { answers: answers.len(), names, counted, families, scores, items, sets }
    }

    /// How many families there are to work out.
    #[must_use]
    pub fn families(&self) -> usize {
        self.families.len()
    }

    /// Works one of them out; its cards are dealt again.
    #[must_use]
    pub fn family(&self, content: &Content, nth: usize) -> Option<FamilyReport> {
        let ((family, version), entries) = self.families.get(nth)?;
        let item = self.items.get(nth)?.clone()?;
        let lucks: Vec<f64> = entries.iter().filter_map(|entry| entry.guess).collect();
        let mut redealt = Redealt::new(content);
        let cards: Vec<(&Entry, Option<Dealt>)> =
            entries.iter().map(|entry| (*entry, redealt.of(entry).cloned())).collect();
        let mut slips = BTreeMap::new();
        for slip in cards.iter().filter_map(|(_, dealt)| dealt.as_ref()?.slip) {
            *slips.entry(slip.to_owned()).or_insert(0) += 1;
        }
        let undealt = cards.iter().filter(|(_, dealt)| dealt.is_none()).count();
        let options = self.options(nth, cards);
        Some(FamilyReport {
            family: (*family).to_owned(),
            version: *version,
            luck: super::moments::mean(&lucks),
            sure_and_wrong: entries.iter().filter(|entry| entry.sure_and_wrong()).count(),
            slips,
            undealt,
            flags: flags(&item, &options),
            options,
            example: entries.iter().max_by_key(|entry| telling(entry))?.stamp.name(),
            item,
        })
    }

    fn options(&self, nth: usize, cards: Vec<(&Entry, Option<Dealt>)>) -> Vec<super::OptionUse> {
        let mut taken: Vec<Option<Taken>> = vec![None; self.names.len()];
        for (entry, dealt) in cards {
            let person = self.names.binary_search(&entry.stamp.person.as_str()).ok();
            if let Some(place) = person.and_then(|person| taken.get_mut(person)) {
                *place = dealt.and_then(|dealt| dealt.taken);
            }
        }
        let offered: BTreeSet<&str> =
            taken.iter().flatten().flat_map(|one| &one.offered).map(String::as_str).collect();
        let wrong = offered.iter().copied().filter(|option| *option != RIGHT);
        let options: Vec<&str> = offered.get(RIGHT).copied().into_iter().chain(wrong).collect();
        option_uses(&self.scores, nth, &taken, &options, RIGHT)
    }

    /// Puts together what was worked out.
    #[must_use]
    pub fn report(&self, families: Vec<FamilyReport>) -> Report {
        let families = sorted(families, |a, b| {
            let by_flags = b.flags.len().cmp(&a.flags.len());
            by_flags.then(a.item.difficulty.total_cmp(&b.item.difficulty)).then(a.family.cmp(&b.family))
        });
        Report {
            answers: self.answers,
            counted: self.counted.len(),
            people: self.people(),
            families,
            sets: self.sets.iter().map(|(set, entries)| self.set(set, entries)).collect(),
        }
    }

    fn people(&self) -> Vec<PersonReport> {
        let nobody = |name: &&str| PersonReport { person: (*name).to_owned(), ..PersonReport::default() };
        let mut people: Vec<PersonReport> = self.names.iter().map(nobody).collect();
        for entry in &self.counted {
            let person = self.names.binary_search(&entry.stamp.person.as_str()).ok();
            if let Some(one) = person.and_then(|person| people.get_mut(person)) {
                one.answers += 1;
                one.right += usize::from(entry.mark == Mark::Right);
                one.sure_and_wrong += usize::from(entry.sure_and_wrong());
            }
        }
        people
    }

    /// A set by itself: what somebody met in another set before is as new in this one as it is to the others.
    fn set(&self, set: &str, entries: &[&'a Entry]) -> SetReport {
        let families = by_family(entries);
        #[allow(clippy::cast_precision_loss, reason = "far fewer than 2^53 families")]
        let cut = CUT_SHARE * families.len() as f64;
        let reliability = reliability(&scores(&self.names, &families), cut);
        SetReport { set: set.to_owned(), reliability }
    }
}

/// How much an answer tells of what is wrong with a card.
fn telling(entry: &Entry) -> (bool, bool) {
    (entry.sure_and_wrong(), entry.mark != Mark::Right)
}

/// The first answer of each person to each family and version, but for those that were found wrong: no second one moves up,
/// since who gives it has met the card.
fn first<'a>(entries: impl Iterator<Item = &'a Entry>, voids: &Voids<'_>) -> Vec<&'a Entry> {
    let mut seen = BTreeSet::new();
    entries
        .filter(|entry| seen.insert((entry.stamp.person.as_str(), entry.family.as_str(), entry.version)))
        .filter(|entry| voids.touches(entry).is_none())
        .collect()
}

fn by_family<'a>(counted: &[&'a Entry]) -> Vec<(Kind<'a>, Vec<&'a Entry>)> {
    let mut asked: BTreeMap<Kind<'_>, Vec<&Entry>> = BTreeMap::new();
    for entry in counted {
        asked.entry((entry.family.as_str(), entry.version)).or_default().push(entry);
    }
    asked.into_iter().collect()
}

/// A row a person, a column a family.
fn scores(names: &[&str], families: &[(Kind<'_>, Vec<&Entry>)]) -> Scores {
    let mut rows = vec![vec![None; families.len()]; names.len()];
    for (column, (_, entries)) in families.iter().enumerate() {
        for entry in entries {
            let row = names.binary_search(&entry.stamp.person.as_str()).ok();
            let place = row.and_then(|row| rows.get_mut(row)?.get_mut(column));
            if let Some(place) = place {
                *place = Some(entry.mark == Mark::Right);
            }
        }
    }
    Scores::even(rows, families.len())
}
