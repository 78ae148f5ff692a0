//! How far a person is with the scenario sets taken on a tablet.

use crate::record::{Attempt, Attempts, Event, Standing};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The latest attempt at a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Taken {
    /// Answers handed in.
    pub answers: u32,
    /// Cards of the set that are not answered yet.
    pub left: u32,
    /// Whether it is over.
    pub closed: bool,
}

/// How far somebody is with a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stand {
    /// Not begun, or closed half-way and to be begun again.
    New,
    /// Under way: so many cards are answered.
    Under(u32),
    /// All cards are answered, or it was closed and is done once.
    Done,
}

/// The latest attempts at sets, by set.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Takings(BTreeMap<String, Taken>);

impl Takings {
    /// Those of a person on a device.
    #[must_use]
    pub fn of(events: &[Event], person: &str, device: &str) -> Self {
        let taken = |one: Attempt<'_>| {
            let closed = one.standing == Standing::Closed;
            (one.set.to_owned(), Taken { answers: one.answers, left: one.set_left(), closed })
        };
        Self(takings(events, person, device).map(taken).collect())
    }

    /// That at a set; `None` where it was never taken.
    #[must_use]
    pub fn at(&self, set: &str) -> Option<Taken> {
        self.0.get(set).copied()
    }

    /// How far a set is, which may be one that is done once.
    #[must_use]
    pub fn stand(&self, set: &str, done_once: bool) -> Stand {
        match self.at(set) {
            None => Stand::New,
            Some(Taken { left: 0, .. }) => Stand::Done,
            Some(Taken { closed: true, .. }) if done_once => Stand::Done,
            Some(Taken { closed: true, .. }) => Stand::New,
            Some(Taken { answers, .. }) => Stand::Under(answers),
        }
    }
}

/// The attempts of a person at sets on a device, in the order in which they were opened.
pub fn takings<'a>(
    events: &'a [Event],
    person: &str,
    device: &str,
) -> impl DoubleEndedIterator<Item = Attempt<'a>> {
    let (attempts, _) = Attempts::of(events);
    let own = |one: &&Attempt<'a>| one.taking.is_some() && one.person == person && one.device == device;
    attempts.all().iter().filter(own).cloned().collect::<Vec<_>>().into_iter()
}
