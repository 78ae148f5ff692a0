//! The journal of one device: everything that happened, in order. Events are added, never changed.

use super::{Entry, Erased, Event};
use crate::content::Content;
use crate::rules::sorted::sorted;
use crate::rules::term::Stage;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// Events in the order of their sequence numbers. As JSON it is the list of those that can be read.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Journal {
    events: Vec<Event>,
    /// Numbers under which something is stored that cannot be read; it stays stored, and the number stays taken.
    #[serde(skip)]
    unreadable: BTreeSet<u64>,
}

impl Journal {
    /// The number of the first event.
    pub const FIRST: u64 = 1;

    /// A journal from stored events, in any order.
    #[must_use]
    pub fn new(events: Vec<Event>) -> Self {
        let number = |event: &Event| event.stamp().sequence;
        // A long journal comes in order, and is looked through once.
        let in_order = events.is_sorted_by_key(number);
        let events = if in_order { events } else { sorted(events, |a, b| number(a).cmp(&number(b))) };
        Self { events, unreadable: BTreeSet::new() }
    }

    /// A journal as it was found: the events that could be read, in any order, and all numbers under which something is
    /// stored.
    #[must_use]
    pub fn stored(events: Vec<Event>, numbers: impl IntoIterator<Item = u64>) -> Self {
        let mut journal = Self::new(events);
        journal.unreadable = numbers.into_iter().filter(|number| journal.at(*number).is_none()).collect();
        journal
    }

    /// How many stored events cannot be read, as those that a later program wrote. What they say is no part of the
    /// evidence, which is asked with their number.
    #[must_use]
    pub fn unreadable(&self) -> u32 {
        u32::try_from(self.unreadable.len()).unwrap_or(u32::MAX)
    }

    /// All events, oldest first.
    #[must_use]
    pub fn events(&self) -> &[Event] {
        &self.events
    }

    /// The answers, oldest first.
    pub fn answers(&self) -> impl DoubleEndedIterator<Item = &Entry> {
        self.events.iter().filter_map(Event::answer)
    }

    /// The sequence number that the next event gets: behind all that are taken.
    #[must_use]
    pub fn next_sequence(&self) -> u64 {
        let last = self.events.last().map(|event| event.stamp().sequence);
        last.max(self.unreadable.last().copied()).map_or(Self::FIRST, |last| last.saturating_add(1))
    }

    /// The same journal with one more event, at its place.
    #[must_use]
    pub fn with(mut self, event: Event) -> Self {
        let sequence = event.stamp().sequence;
        let place = self.events.partition_point(|other| other.stamp().sequence <= sequence);
        self.events.insert(place, event);
        self
    }

    /// The same journal after an event that erases others.
    #[must_use]
    pub fn after(mut self, erased: Erased) -> Self {
        let gone: BTreeSet<u64> = erased.numbers.iter().copied().collect();
        self.events.retain(|event| !gone.contains(&event.stamp().sequence));
        self.with(erased.into())
    }

    /// The same journal with what was stored since: events that it lacks, and without those that were erased meanwhile. Where both
    /// have one of a number its own stays, since it may still wait to be stored under another.
    #[must_use]
    pub fn caught_up(mut self, stored: Self) -> Self {
        let mut gone = BTreeSet::new();
        for event in stored.events {
            if self.has(event.stamp().sequence) {
                continue;
            }
            if let Event::Erased(erased) = &event {
                gone.extend(erased.numbers.iter().copied());
            }
            self = self.with(event);
        }
        self.events.retain(|event| !gone.contains(&event.stamp().sequence));
        self.unreadable.extend(stored.unreadable);
        self
    }

    /// The events of one person, under the numbers that they have.
    #[must_use]
    pub fn of_person(&self, person: &str) -> Self {
        let own = |event: &&Event| event.stamp().person == person;
        Self::new(self.events.iter().filter(own).cloned().collect())
    }

    /// Whether that number is taken, by an event that can be read or by one that cannot.
    #[must_use]
    pub fn has(&self, sequence: u64) -> bool {
        self.unreadable.contains(&sequence) || self.at(sequence).is_some()
    }

    /// The answer of that number.
    #[must_use]
    pub fn find(&self, sequence: u64) -> Option<&Entry> {
        self.at(sequence)?.answer()
    }

    /// The event of that number.
    fn at(&self, sequence: u64) -> Option<&Event> {
        let place = self.events.partition_point(|event| event.stamp().sequence < sequence);
        self.events.get(place).filter(|event| event.stamp().sequence == sequence)
    }

    /// One person's answers, oldest first.
    pub fn of<'a>(&'a self, person: &'a str) -> impl DoubleEndedIterator<Item = &'a Entry> {
        self.answers().filter(move |entry| entry.stamp.person == person)
    }

    /// One person's answers of a stage, oldest first.
    #[must_use]
    pub fn of_stage<'a>(&'a self, content: &Content, person: &'a str, stage: Stage) -> Vec<&'a Entry> {
        let in_stage = |entry: &&Entry| content.family(&entry.family).is_some_and(|one| one.stage == stage);
        self.of(person).filter(in_stage).collect()
    }

    /// Everyone about whom anything stands here, each once.
    #[must_use]
    pub fn everyone(&self) -> BTreeSet<&str> {
        let people = self.events.iter().map(|event| event.stamp().person.as_str());
        people.filter(|person| !person.is_empty()).collect()
    }

    /// Everyone who answered or walked, each once, in the order in which they first did.
    #[must_use]
    pub fn people(&self) -> Vec<&str> {
        let mut people: Vec<&str> = Vec::new();
        let did = |event: &&Event| event.answer().is_some() || event.walked().is_some();
        for event in self.events.iter().filter(did) {
            let person = event.stamp().person.as_str();
            if !person.is_empty() && !people.contains(&person) {
                people.push(person);
            }
        }
        people
    }
}
