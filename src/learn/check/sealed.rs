//! What must not be told yet: the answers of a check while cards of its day are left, and what was decided on a walk of one's
//! own that goes on.

use super::{Now, Sitting};
use crate::content::Content;
use crate::record::{Attempt, Attempts, Entry, Event, LocalDate, Placed, Standing, Walked, Way};
use std::collections::{BTreeMap, BTreeSet};

/// Days after its last decision on which a walk that was left is told: whoever walks on goes on within a week. Our own choice.
const LEFT_DAYS: i32 = 7;

/// Answers that must not be told yet. They are given before any feedback; once the cards of the day are done, on another day,
/// or with the check closed they are told.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sealed {
    /// Checks that want more cards today.
    checks: Vec<Hidden>,
    /// Walks of one's own that go on, by device and name: on them faults show when they would, and nothing is told before.
    walks: BTreeSet<(String, String)>,
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
        let placed = Placed::of(events);
        let open = placed.attempts().all().iter().filter(|one| keeps_back(one));
        let wants_more = |device: &str, name: &str| {
            Sitting::among(content, &placed, device, name, now).is_none_or(|sitting| !sitting.is_done())
        };
        let sealed = open.filter(|one| one.answers > 0 && wants_more(one.device, one.id));
        let hidden = |one: &Attempt<'_>| Hidden {
            device: one.device.to_owned(),
            name: one.id.to_owned(),
            of_set: one.set_left() > 0,
        };
        Self { checks: sealed.map(hidden).collect(), walks: going_on(events, now.day), today: now.day }
    }

    /// Whether answers of a person are sealed now or may be on another day, as those of a check that is not closed.
    #[must_use]
    pub fn may_hide(events: &[Event], person: &str) -> bool {
        let (attempts, _) = Attempts::of(events);
        let open: BTreeSet<(&str, &str)> =
            attempts.all().iter().filter(|one| keeps_back(one)).map(|one| (one.device, one.id)).collect();
        let in_it = |entry: &Entry| {
            let named = entry.within.attempt().map(|(attempt, _)| (entry.stamp.device.as_str(), attempt));
            named.is_some_and(|name| open.contains(&name))
        };
        events.iter().filter_map(Event::answer).any(|entry| entry.stamp.person == person && in_it(entry))
    }

    /// Whether it hides the same answers as another one, whichever there are.
    #[must_use]
    pub fn hides_as(&self, other: &Self) -> bool {
        self.checks == other.checks && (self.checks.is_empty() || self.today == other.today)
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

    /// Whether what was decided on a walk must not be told yet.
    #[must_use]
    pub fn hides_walked(&self, walked: &Walked) -> bool {
        let name = (walked.stamp.device.clone(), walked.walk.clone());
        walked.decided().is_some_and(|decided| decided.way == Way::Own) && self.walks.contains(&name)
    }

    /// Whether an event must not be told yet.
    #[must_use]
    pub fn hides_event(&self, event: &Event) -> bool {
        match event {
            Event::Answered(entry) => self.hides(entry),
            Event::Walked(walked) => self.hides_walked(walked),
            _ => false,
        }
    }

    /// The events without those that must not be told yet.
    pub fn told<'a>(&self, events: &'a [Event]) -> impl DoubleEndedIterator<Item = &'a Event> {
        events.iter().filter(|event| !self.hides_event(event))
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

/// Whether an attempt keeps its answers back while it wants more of them.
fn keeps_back(attempt: &Attempt<'_>) -> bool {
    attempt.standing != Standing::Closed && !attempt.taking.is_some_and(|taking| taking.at_once)
}

/// The walks on which something was decided and that neither ended, nor were let go, nor were left for days.
fn going_on(events: &[Event], today: Option<LocalDate>) -> BTreeSet<(String, String)> {
    let mut open = BTreeMap::new();
    for walked in events.iter().filter_map(Event::walked) {
        let name = (walked.stamp.device.clone(), walked.walk.clone());
        if walked.ends() {
            open.remove(&name);
        } else {
            open.insert(name, walked.stamp.day());
        }
    }
    let left = |day: LocalDate| today.is_some_and(|today| today.number() - day.number() >= LEFT_DAYS);
    open.into_iter().filter(|(_, last)| !last.is_some_and(left)).map(|(name, _)| name).collect()
}
