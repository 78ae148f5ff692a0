//! The results of many tablets, each event once.

use crate::exchange::Results;
use crate::record::{Clash, Event, EventName, Moment};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// What happened on each device, by its name; copying it copies no event.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Gathered {
    devices: BTreeMap<String, Rc<Results>>,
    /// Names of the events that void something.
    voids: BTreeSet<EventName>,
    /// Numbers of events that were erased, by their device.
    erased: BTreeMap<String, BTreeSet<u64>>,
}

/// What results added.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Added {
    /// Events that were not known.
    pub events: usize,
    /// Answers among them.
    pub answers: usize,
    /// Events that were known already.
    pub known: usize,
    /// The devices of which there is more now.
    pub changed: Vec<String>,
}

impl Gathered {
    /// Takes results in; the same ones again add nothing.
    ///
    /// # Errors
    /// [`Clash`] where a number of a device stands for two different events: a journal was copied and went on elsewhere, or was
    /// changed. Nothing is taken in then.
    pub fn take(&mut self, results: Results) -> Result<Added, Clash> {
        let mut added = Added::default();
        let mut joined = Vec::new();
        let mut erased = self.erased.clone();
        let mut of_others = BTreeSet::new();
        for (device, number) in results.events.iter().flat_map(erased_by) {
            erased.entry(device.to_owned()).or_default().insert(number);
            of_others.insert(device.to_owned());
        }
        let mut parts = by_device(results);
        // Of a name that the tablet had before the file may have nothing but that something of it was erased.
        of_others.retain(|device| parts.iter().all(|part| part.device != *device));
        parts.extend(of_others.iter().filter_map(|device| self.device(device)).map(without_events));
        for part in parts {
            let empty = Vec::new();
            let known = self.devices.get(&part.device);
            let before = known.map_or(&empty, |one| &one.events);
            let (count, answers) = (part.events.len(), count_answers(before));
            let events = join(before, &part.events, erased.get(&part.device).unwrap_or(&BTreeSet::new()))?;
            let new = events.len().saturating_sub(before.len());
            added.events += new;
            added.answers += count_answers(&events).saturating_sub(answers);
            added.known += count.saturating_sub(new);
            let known = known.map(|one| &**one);
            let whole = head(known, Results { events: Vec::new(), ..part });
            if known.is_none_or(|known| events != known.events || !same_head(known, &whole)) {
                added.changed.push(whole.device.clone());
                joined.push(Results { events, ..whole });
            }
        }
        for one in joined {
            let voids = one.events.iter().filter(|event| matches!(event, Event::Voided(_)));
            self.voids.extend(voids.map(|event| event.stamp().name()));
            self.devices.insert(one.device.clone(), Rc::new(one));
        }
        self.erased = erased;
        Ok(added)
    }

    /// The results of each device, in the order of their names.
    pub fn devices(&self) -> impl ExactSizeIterator<Item = &Results> {
        self.devices.values().map(|one| &**one)
    }

    /// Those of one device.
    #[must_use]
    pub fn device(&self, name: &str) -> Option<&Results> {
        self.devices.get(name).map(|one| &**one)
    }

    /// Leaves a device out.
    pub fn forget(&mut self, name: &str) {
        self.devices.remove(name);
    }

    /// All events, device by device.
    pub fn events(&self) -> impl Iterator<Item = &Event> {
        self.devices.values().flat_map(|one| &one.events)
    }

    /// Those that void something, whoever wrote them.
    pub fn voided(&self) -> impl Iterator<Item = &Event> {
        self.voids.iter().filter_map(|name| self.find(name))
    }

    /// The event of that name.
    #[must_use]
    pub fn find(&self, name: &EventName) -> Option<&Event> {
        let events = &self.devices.get(&name.device)?.events;
        let place = events.binary_search_by_key(&name.sequence, |event| event.stamp().sequence).ok()?;
        events.get(place)
    }
}

fn count_answers(events: &[Event]) -> usize {
    events.iter().filter(|event| event.answer().is_some()).count()
}

/// Results apart by the device of their events: a tablet may have gone by two names.
fn by_device(results: Results) -> Vec<Results> {
    let Results { at, people, sheets, sets, events, .. } = results;
    let mut parts: BTreeMap<String, Vec<Event>> = BTreeMap::new();
    for event in events {
        match parts.get_mut(&event.stamp().device) {
            Some(part) => part.push(event),
            None => {
                parts.insert(event.stamp().device.clone(), vec![event]);
            }
        }
    }
    let of = |(device, events)| Results {
        device,
        at: at.clone(),
        people: people.clone(),
        sheets: sheets.clone(),
        sets: sets.clone(),
        events,
    };
    parts.into_iter().map(of).collect()
}

/// What is told beside the events, of both: the later file knows better who people are.
fn head(known: Option<&Results>, new: Results) -> Results {
    let Some(known) = known else { return new };
    let newer = Moment::of(&new.at) >= Moment::of(&known.at);
    let (mut first, second) = if newer { (new, known.clone()) } else { (without_events(known), new) };
    for person in second.people {
        if !first.people.iter().any(|one| one.journal == person.journal) {
            first.people.push(person);
        }
    }
    for sheet in second.sheets {
        if !first.sheets.iter().any(|one| one.slug() == sheet.slug()) {
            first.sheets.push(sheet);
        }
    }
    for set in second.sets {
        if !first.sets.contains(&set) {
            first.sets.push(set);
        }
    }
    first
}

fn without_events(results: &Results) -> Results {
    let Results { device, at, people, sheets, sets, .. } = results;
    let (device, at, people) = (device.clone(), at.clone(), people.clone());
    Results { device, at, people, sheets: sheets.clone(), sets: sets.clone(), events: Vec::new() }
}

fn same_head(one: &Results, other: &Results) -> bool {
    let heads = [one, other].map(|of| (&of.people, &of.sheets, &of.sets));
    heads[0] == heads[1]
}

/// What an event erases, each by device and number.
fn erased_by(event: &Event) -> Vec<(&str, u64)> {
    if let Event::Erased(erased) = event { erased.names().collect() } else { Vec::new() }
}

/// Two rows of events of one device, in the order of their numbers; what was erased is taken from both.
fn join(known: &[Event], new: &[Event], erased: &BTreeSet<u64>) -> Result<Vec<Event>, Clash> {
    let number = |event: &Event| event.stamp().sequence;
    let stays = |event: &&Event| !erased.contains(&number(event));
    let (mut known, mut new) = (known.iter().filter(stays).peekable(), new.iter().filter(stays).peekable());
    let mut joined = Vec::with_capacity(known.size_hint().1.unwrap_or(0));
    loop {
        let next = match (known.peek(), new.peek()) {
            (Some(one), Some(other)) if number(one) == number(other) => {
                if one != other {
                    let stamp = one.stamp();
                    return Err(Clash { device: stamp.device.clone(), sequence: stamp.sequence });
                }
                new.next();
                known.next()
            }
            (Some(one), Some(other)) if number(one) > number(other) => new.next(),
            (Some(_), _) => known.next(),
            (None, _) => new.next(),
        };
        let Some(next) = next else { return Ok(joined) };
        joined.push(next.clone());
    }
}
