//! Writes down what assessors see, as their tablets would.

use super::log::date;
use stepboard::content::{Competency, OnFile};
use stepboard::record::{
    AssessorName, Event, EventName, FORMAT, Filed, Filing, Judged, Observed, Stamp, Struck,
};

/// Two assessors who have a tablet each, and the apprentice.
pub(crate) const ILSE: &str = "i-1";
pub(crate) const TOMAS: &str = "a-2";
pub(crate) const APPRENTICE: &str = "17";
/// What the events of the apprentice stand under, as they answered before they had a number.
pub(crate) const NAME: &str = "Ana";

pub(crate) fn by(number: &str) -> AssessorName {
    AssessorName { number: number.to_owned(), name: format!("Assessor {number}") }
}

/// The journal of a tablet in the making.
#[derive(Debug, Clone)]
pub(crate) struct Watch {
    pub(crate) events: Vec<Event>,
    device: String,
    by: String,
}

impl Watch {
    /// A tablet on which one assessor writes.
    pub(crate) fn new(device: &str, by: &str) -> Self {
        Self { events: Vec::new(), device: device.to_owned(), by: by.to_owned() }
    }

    fn stamp(&self, day: u32) -> Stamp {
        let minute = self.events.len();
        Stamp {
            format: FORMAT,
            sequence: u64::try_from(minute).expect("few") + 1,
            device: self.device.clone(),
            at: format!("{}T{:02}:{:02}:00.000Z", date(day), 8 + minute / 60, minute % 60),
            date: Some(date(day)),
            person: NAME.to_owned(),
        }
    }

    /// A demonstration on a day after 1 January 2027 at which everything was met, but for what is told.
    pub(crate) fn made(
        &self,
        competency: &Competency,
        occasion: &str,
        day: u32,
        but: &[(&str, Judged)],
    ) -> Observed {
        let told = |id: &str| but.iter().find(|(other, _)| *other == id).map_or(Judged::Met, |(_, as_)| *as_);
        Observed {
            stamp: self.stamp(day),
            subject: APPRENTICE.to_owned(),
            competency: competency.slug.clone(),
            occasion: occasion.to_owned(),
            on: date(day),
            paper: false,
            work: "Ticket 204, back and sides".to_owned(),
            alone: true,
            judged: competency.criteria.iter().map(|one| (one.id.clone(), told(&one.id))).collect(),
            note: String::new(),
            seconds: None,
            by: by(&self.by),
        }
    }

    /// Writes one down as it is.
    pub(crate) fn put(&mut self, observed: Observed) -> EventName {
        let name = observed.stamp.name();
        self.events.push(observed.into());
        name
    }

    /// Writes down a demonstration; its name.
    pub(crate) fn saw(
        &mut self,
        competency: &Competency,
        occasion: &str,
        day: u32,
        but: &[(&str, Judged)],
    ) -> EventName {
        let made = self.made(competency, occasion, day, but);
        self.put(made)
    }

    /// Writes down a paper on file, of days after 1 January 2027.
    pub(crate) fn filed(&mut self, what: OnFile, on: u32, until: u32) -> EventName {
        let stamp = self.stamp(on);
        let name = stamp.name();
        let filed = Filed { what, on: date(on), until: date(until) };
        let subject = APPRENTICE.to_owned();
        self.events.push(Filing { stamp, subject, filed, by: by(&self.by) }.into());
        name
    }

    /// Strikes something out.
    pub(crate) fn strikes(&mut self, strikes: EventName, day: u32, reason: &str) -> &mut Self {
        let (stamp, reason) = (self.stamp(day), reason.to_owned());
        let (subject, by) = (APPRENTICE.to_owned(), by(&self.by));
        self.events.push(Struck { stamp, subject, strikes, reason, by }.into());
        self
    }
}
