//! The journal of one device: everything that happened, in order. Events are added, never changed.

use super::{Entry, Event};
use crate::content::Content;
use crate::rules::sorted::sorted;
use crate::rules::term::Stage;
use serde::{Deserialize, Serialize};

/// Events in the order of their sequence numbers.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Journal(Vec<Event>);

impl Journal {
    /// A journal from stored events, in any order.
    #[must_use]
    pub fn new(events: Vec<Event>) -> Self {
        Self(sorted(events, |a, b| a.stamp().sequence.cmp(&b.stamp().sequence)))
    }

    /// All events, oldest first.
    #[must_use]
    pub fn events(&self) -> &[Event] {
        &self.0
    }

    /// The answers, oldest first.
    pub fn answers(&self) -> impl DoubleEndedIterator<Item = &Entry> {
        self.0.iter().filter_map(Event::answer)
    }

    /// The sequence number that the next event gets.
    #[must_use]
    pub fn next_sequence(&self) -> u64 {
        self.0.last().map_or(1, |event| event.stamp().sequence + 1)
    }

    /// The same journal with one more event.
    #[must_use]
    pub fn with(&self, event: Event) -> Self {
        let mut events = self.0.clone();
        events.push(event);
        Self::new(events)
    }

    /// Whether an event has that number.
    #[must_use]
    pub fn has(&self, sequence: u64) -> bool {
        self.0.iter().any(|event| event.stamp().sequence == sequence)
    }

    /// The answer of that number.
    #[must_use]
    pub fn find(&self, sequence: u64) -> Option<&Entry> {
        self.answers().find(|entry| entry.stamp.sequence == sequence)
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

    /// Everyone who answered, each once, in the order of their first answer.
    #[must_use]
    pub fn people(&self) -> Vec<&str> {
        let mut people: Vec<&str> = Vec::new();
        for entry in self.answers() {
            let person = entry.stamp.person.as_str();
            if !person.is_empty() && !people.contains(&person) {
                people.push(person);
            }
        }
        people
    }
}
