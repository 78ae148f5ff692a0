//! Reads results a few events at a time, so that a screen can go on meanwhile.

use super::fit::{Places, fit_head};
use super::{Named, RESULTS, Results};
use crate::exchange::{OwnSheet, Refused, read};
use crate::record::Event;
use serde::Deserialize;
use serde_json::value::RawValue;

/// The file with its events still as text.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Unread {
    device: String,
    at: String,
    #[serde(default)]
    people: Vec<Named>,
    #[serde(default)]
    sheets: Vec<OwnSheet>,
    #[serde(default)]
    sets: Vec<String>,
    events: Vec<Box<RawValue>>,
}

/// A file that is being read.
#[derive(Debug)]
pub struct Reading {
    results: Results,
    unread: std::vec::IntoIter<Box<RawValue>>,
    places: Places,
    bare: bool,
}

impl Reading {
    /// Begins: everything but the events is read and checked.
    ///
    /// # Errors
    /// [`Refused`].
    pub fn begin(bytes: &[u8]) -> Result<Self, Refused> {
        if bytes.len() > RESULTS.most {
            return Err(Refused::TooLarge { bytes: bytes.len(), most: RESULTS.most });
        }
        let bare = bytes.iter().find(|byte| !byte.is_ascii_whitespace()) == Some(&b'[');
        let unread = if bare {
            let events = serde_json::from_slice(bytes)?;
            let (device, at) = (String::new(), String::new());
            Unread { device, at, people: Vec::new(), sheets: Vec::new(), sets: Vec::new(), events }
        } else {
            read::<Unread>(bytes, RESULTS)?
        };
        let Unread { device, at, people, sheets, sets, events } = unread;
        let results = Results { device, at, people, sheets, sets, events: Vec::with_capacity(events.len()) };
        if !bare {
            fit_head(&results)?;
        }
        Ok(Self { results, unread: events.into_iter(), places: Places::default(), bare })
    }

    /// Reads so many events more; whether there are others left.
    ///
    /// # Errors
    /// [`Refused`] naming the event by its place: nothing of the file is to be used then.
    pub fn read_some(&mut self, events: usize) -> Result<bool, Refused> {
        for text in self.unread.by_ref().take(events) {
            let place = format!("events.{}", self.results.events.len() + 1);
            let event = Event::read(text.get())
                .map_err(|why| Refused::value(place.as_str(), short_of(text.get()), why.to_string()))?;
            self.places.fit(&place, &event, text.get())?;
            self.results.events.push(event);
        }
        Ok(self.unread.len() > 0)
    }

    /// What the file says of itself; of its events those that were read.
    #[must_use]
    pub const fn head(&self) -> &Results {
        &self.results
    }

    /// How many events it holds.
    #[must_use]
    pub fn events(&self) -> usize {
        self.results.events.len() + self.unread.len()
    }

    /// Whether it tells of nobody and holds nothing but what was found wrong.
    #[must_use]
    pub fn is_finding(&self) -> bool {
        let found = |event: &Event| matches!(event, Event::Voided(_));
        let read = &self.results.events;
        self.events() > 0
            && self.results.people.is_empty()
            && read.iter().all(found)
            && self
                .unread
                .as_slice()
                .iter()
                .all(|text| Event::read(text.get()).is_ok_and(|event| found(&event)))
    }

    /// What was read.
    #[must_use]
    pub fn results(mut self) -> Results {
        // A bare list does not tell who made it and when: its last event does.
        if let (true, Some(last)) = (self.bare, self.results.events.last()) {
            (self.results.device, self.results.at) = (last.stamp().device.clone(), last.stamp().at.clone());
        }
        self.results
    }
}

/// An event as it is told in a refusal.
fn short_of(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
