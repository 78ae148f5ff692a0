//! The results of a tablet as a file: its journal, and the shop's own sheets that its cards were dealt on.

mod fit;
mod person;
mod reading;
mod walked;
mod writing;

pub use person::Named;
pub use reading::Reading;
pub use writing::Writing;

use super::{Kind, OwnSheet, Refused, save_name};
use crate::content::Content;
use crate::record::{Event, Journal, LocalDate};
use std::collections::BTreeSet;

/// The file of results. An answer takes some 450 bytes; a tablet with 100,000 of them is more than a shop ever fills.
pub const RESULTS: Kind = Kind { format: "stepboard-results", version: 1, most: 64 * 1024 * 1024 };

/// What happened on a tablet, as it stood when the file was made.
#[derive(Debug, Clone, PartialEq)]
pub struct Results {
    /// Random name of the tablet that made the file.
    pub device: String,
    /// When it was made, as ISO 8601 text in universal time.
    pub at: String,
    /// The apprentices of that tablet.
    pub people: Vec<Named>,
    /// The shop's own sheets that the events stand on, whole.
    pub sheets: Vec<OwnSheet>,
    /// The sets that the events stand on and that do not ship, by the name that a check has for them.
    pub sets: Vec<String>,
    /// The events as they are stored, those of a device in the order of their numbers.
    pub events: Vec<Event>,
}

impl Results {
    /// The results of this tablet; `own` are the sheets of the shop's own that it knows.
    #[must_use]
    pub fn of(
        content: &Content,
        journal: &Journal,
        own: &[OwnSheet],
        people: Vec<Named>,
        (device, at): (&str, &str),
    ) -> Self {
        let of_walks = journal.events().iter().filter_map(|event| event.walked()?.decided());
        let of_walks = of_walks.map(|decided| decided.sheet.slug.as_str());
        let on: BTreeSet<&str> =
            journal.answers().map(|entry| entry.sheet.slug.as_str()).chain(of_walks).collect();
        let sets: BTreeSet<&str> = journal
            .answers()
            .filter_map(|entry| entry.within.set())
            .filter(|set| content.sets.iter().all(|ships| ships.slug != *set))
            .collect();
        Self {
            device: device.to_owned(),
            at: at.to_owned(),
            people,
            sheets: own.iter().filter(|sheet| on.contains(sheet.slug().as_str())).cloned().collect(),
            sets: sets.into_iter().map(str::to_owned).collect(),
            events: journal.events().to_vec(),
        }
    }

    /// The name under which it is saved: whose answers it holds, by name and number where they are known, and the day.
    #[must_use]
    pub fn save_name(&self, day: Option<LocalDate>) -> String {
        let mut whose: Vec<&str> = Vec::new();
        for entry in self.events.iter().filter_map(Event::answer) {
            let person = entry.stamp.person.as_str();
            if !person.is_empty() && !whose.contains(&person) {
                whose.push(person);
            }
        }
        let called = |person: &str| {
            let known = self.people.iter().find(|one| one.journal == person);
            known.map_or_else(|| person.to_owned(), |one| format!("{} {}", one.name, one.number))
        };
        let called: Vec<String> = whose.into_iter().map(called).collect();
        save_name(RESULTS.format, &called.join(" "), day, "json")
    }

    /// The text of the file, an event a line.
    ///
    /// # Errors
    /// [`Refused::Form`] for what JSON cannot say; nothing that was read is such a thing.
    pub fn text(&self) -> Result<String, Refused> {
        let mut writing = Writing::begin(self)?;
        while writing.write_some(usize::MAX)? {}
        Ok(writing.text())
    }

    /// Reads the file, or the bare list of events that the app saved before there was such a file.
    ///
    /// # Errors
    /// [`Refused`]; an event that is not allowed is told by its place from 1: `events.17`.
    pub fn read(bytes: &[u8]) -> Result<Self, Refused> {
        let mut reading = Reading::begin(bytes)?;
        while reading.read_some(usize::MAX)? {}
        Ok(reading.results())
    }
}
