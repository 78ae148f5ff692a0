//! What must not be told yet: the answers of a check while cards of its day are left.

use super::{Now, Sitting};
use crate::content::Content;
use crate::record::{Attempt, Attempts, Entry, Event, LocalDate, Standing};

/// Answers that must not be told yet. They are given before any feedback; once the cards of the day are done, on another day,
/// or with the check closed they are told.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sealed {
    /// Checks that want more cards today.
    checks: Vec<Hidden>,
    today: Option<LocalDate>,
}

/// A check that wants more cards.
#[derive(Debug, Clone, PartialEq)]
struct Hidden {
    device: String,
    name: String,
    /// Whether they are the cards of a scenario set: then its answers of earlier days are not told either.
    of_set: bool,
}

impl Sealed {
    /// What is sealed now, whoever it is about.
    #[must_use]
    pub fn of(content: &Content, events: &[Event], now: Now) -> Self {
        let (attempts, _) = Attempts::of(events);
        let told_at_once = |one: &Attempt<'_>| one.taking.is_some_and(|taking| taking.at_once);
        let open = attempts.all().iter().filter(|one| one.standing != Standing::Closed && !told_at_once(one));
        let wants_more = |device: &str, name: &str| {
            Sitting::of(content, events, device, name, now).is_none_or(|sitting| !sitting.is_done())
        };
        let sealed = open.filter(|one| one.answers > 0 && wants_more(one.device, one.id));
        let hidden = |one: &Attempt<'_>| Hidden {
            device: one.device.to_owned(),
            name: one.id.to_owned(),
            of_set: one.set_left() > 0,
        };
        Self { checks: sealed.map(hidden).collect(), today: now.day }
    }

    /// Whether an answer must not be told yet. An answer whose clock told no day is told once its check is closed.
    #[must_use]
    pub fn hides(&self, entry: &Entry) -> bool {
        let Some((attempt, _)) = entry.within.attempt() else { return false };
        let of_today = entry.stamp.day().zip(self.today).is_none_or(|(day, today)| day >= today);
        let sealed = |one: &Hidden| {
            one.device == entry.stamp.device && one.name == attempt && (of_today || one.of_set)
        };
        self.checks.iter().any(sealed)
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
