//! What must not be told yet: the answers of a check while cards of its day are left.

use super::{Now, Sitting};
use crate::content::Content;
use crate::record::{Attempts, Entry, Event, LocalDate, Standing, Within};

/// Answers that must not be told yet. They are given before any feedback; once the cards of the day are done, on another day,
/// or with the check closed they are told.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sealed {
    /// Checks that want more cards today: device and name.
    checks: Vec<(String, String)>,
    today: Option<LocalDate>,
}

impl Sealed {
    /// What is sealed now, whoever it is about.
    #[must_use]
    pub fn of(content: &Content, events: &[Event], now: Now) -> Self {
        let (attempts, _) = Attempts::of(events);
        let open = attempts.all().iter().filter(|one| one.standing != Standing::Closed);
        let wants_more = |device: &str, name: &str| {
            Sitting::of(content, events, device, name, now).is_none_or(|sitting| !sitting.is_done())
        };
        let sealed = open.filter(|one| one.answers > 0 && wants_more(one.device, one.id));
        let checks = sealed.map(|one| (one.device.to_owned(), one.id.to_owned())).collect();
        Self { checks, today: now.day }
    }

    /// Whether an answer must not be told yet. An answer whose clock told no day is told once its check is closed.
    #[must_use]
    pub fn hides(&self, entry: &Entry) -> bool {
        let Within::Check { attempt, .. } = &entry.within else { return false };
        let sealed = |(device, name): &(String, String)| *device == entry.stamp.device && name == attempt;
        let of_today = entry.stamp.day().zip(self.today).is_none_or(|(day, today)| day >= today);
        of_today && self.checks.iter().any(sealed)
    }

    /// The events without the answers that must not be told yet.
    pub fn told<'a>(&self, events: &'a [Event]) -> impl DoubleEndedIterator<Item = &'a Event> {
        events.iter().filter(|event| !event.answer().is_some_and(|entry| self.hides(entry)))
    }

    /// One person's answers that may be told, oldest first.
    pub fn told_of<'a>(
        &self,
        events: &'a [Event],
        person: &str,
    ) -> impl DoubleEndedIterator<Item = &'a Entry> {
        self.told(events).filter_map(Event::answer).filter(move |entry| entry.stamp.person == person)
    }
}
