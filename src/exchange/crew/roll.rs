//! Whose events are whose, over all tablets: by shop number where one is known, else by the name that was typed.

use super::Gathered;
use crate::exchange::{Named, Results};
use crate::record::{Event, EventName, Moment};
use crate::rules::sorted::sorted;
use std::borrow::Cow;
use std::collections::BTreeMap;

/// Where an event stands, so that those of several devices can be put in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Spot {
    /// The latest moment so far of its device: a clock set back moves nothing before what came earlier.
    at: Option<Moment>,
    device: usize,
    place: usize,
}

/// One person of the crew.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Person {
    /// Shop number, or the name where there is none.
    pub key: String,
    /// Shop number.
    pub number: Option<String>,
    /// Name.
    pub name: String,
    spots: Vec<Spot>,
}

impl Person {
    /// Whether that event is theirs.
    #[must_use]
    pub fn has(&self, gathered: &Gathered, name: &EventName) -> bool {
        let found = gathered.devices().enumerate().find(|(_, one)| one.device == name.device);
        found.is_some_and(|(device, results)| {
            let event = |spot: &Spot| results.events.get(spot.place);
            let theirs =
                |spot: &Spot| event(spot).is_some_and(|event| event.stamp().sequence == name.sequence);
            self.spots.iter().any(|spot| spot.device == device && theirs(spot))
        })
    }

    /// Their events, oldest first, all under one name.
    #[must_use]
    pub fn events<'a>(&self, gathered: &'a Gathered, name: &str) -> Vec<Cow<'a, Event>> {
        let named = |event: &'a Event| {
            if event.stamp().person == name {
                return Cow::Borrowed(event);
            }
            let mut event = event.clone();
            name.clone_into(&mut event.stamp_mut().person);
            Cow::Owned(event)
        };
        self.as_written(gathered).map(named).collect()
    }

    /// Their events, oldest first, under the names that each tablet has for them.
    pub fn as_written<'a>(&self, gathered: &'a Gathered) -> impl Iterator<Item = &'a Event> {
        let devices: Vec<&Results> = gathered.devices().collect();
        self.spots.iter().filter_map(move |spot| devices.get(spot.device)?.events.get(spot.place))
    }
}

/// Calls the roll, some events at a time.
#[derive(Debug)]
pub struct Roll<'a> {
    devices: Vec<&'a Results>,
    known: BTreeMap<&'a str, &'a Named>,
    /// Numbers that somebody has.
    numbers: BTreeMap<&'a str, &'a Named>,
    found: BTreeMap<&'a str, Vec<Spot>>,
    next: (usize, usize),
    latest: Option<Moment>,
}

impl<'a> Roll<'a> {
    /// Begins with the first device.
    #[must_use]
    pub fn begin(gathered: &'a Gathered) -> Self {
        let devices: Vec<&Results> = gathered.devices().collect();
        let numbers =
            devices.iter().flat_map(|one| &one.people).map(|one| (one.number.as_str(), one)).collect();
        Self { devices, known: BTreeMap::new(), numbers, found: BTreeMap::new(), next: (0, 0), latest: None }
    }

    /// Takes so many events more; whether there are others left.
    pub fn take_some(&mut self, events: usize) -> bool {
        for _ in 0..events {
            let (device, place) = self.next;
            let Some(results) = self.devices.get(device).copied() else { return false };
            if place == 0 {
                self.latest = None;
                self.known = results.people.iter().map(|one| (one.journal.as_str(), one)).collect();
            }
            let Some(event) = results.events.get(place) else {
                self.next = (device + 1, 0);
                continue;
            };
            self.next.1 += 1;
            self.latest = self.latest.max(Moment::of(&event.stamp().at));
            // These two are about nobody.
            if matches!(event, Event::Voided(_) | Event::Erased(_)) {
                continue;
            }
            let person = event.stamp().person.as_str();
            let key = self.known.get(person).map_or(person, |one| one.number.as_str());
            self.found.entry(key).or_default().push(Spot { at: self.latest, device, place });
        }
        true
    }

    /// Everybody, by name; `here` are those whom this tablet knows, whose names for them are used.
    #[must_use]
    pub fn people(self, here: &[Named]) -> Vec<Person> {
        let of = |(key, mut spots): (&str, Vec<Spot>)| {
            spots.sort_unstable();
            let named = here.iter().find(|one| one.number == key).or(self.numbers.get(key).copied());
            Person {
                key: key.to_owned(),
                number: named.map(|one| one.number.clone()),
                name: named.map_or(key, |one| one.name.as_str()).to_owned(),
                spots,
            }
        };
        let people: Vec<Person> = self.found.into_iter().map(of).collect();
        sorted(people, |a, b| (a.name.to_lowercase(), &a.key).cmp(&(b.name.to_lowercase(), &b.key)))
    }
}
