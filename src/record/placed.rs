//! Events with the attempts that they belong to, found once for all who ask about them.

use super::{Attempts, Entry, Event, Stray};

/// Events, oldest first, each with its attempt.
#[derive(Debug, Clone, Default)]
pub struct Placed<'a> {
    attempts: Attempts<'a>,
    events: Vec<(&'a Event, Result<Option<usize>, Stray>)>,
}

impl<'a> Placed<'a> {
    /// These events, oldest first. Those of all people belong to them: what is stray can only be told so.
    #[must_use]
    pub fn of(events: impl IntoIterator<Item = &'a Event>) -> Self {
        let mut attempts = Attempts::default();
        let events = events.into_iter().map(|event| (event, attempts.take(event))).collect();
        Self { attempts, events }
    }

    /// The attempts that they tell.
    #[must_use]
    pub const fn attempts(&self) -> &Attempts<'a> {
        &self.attempts
    }

    /// Each event with the place of the attempt that it belongs to, none where it names none, or with why it is stray.
    pub fn events(&self) -> impl Iterator<Item = (&'a Event, Result<Option<usize>, Stray>)> {
        self.events.iter().copied()
    }

    /// The answers of the attempt of that name on that device, oldest first; what is stray is none of them.
    #[must_use]
    pub fn answers(&self, name: &str, device: &str) -> Vec<&'a Entry> {
        let Some(place) = self.attempts.find(name, device) else { return Vec::new() };
        let of_it = self.events().filter(|(_, found)| *found == Ok(Some(place)));
        of_it.filter_map(|(event, _)| event.answer()).collect()
    }
}
