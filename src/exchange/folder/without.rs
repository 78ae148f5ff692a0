//! A file that waits to be sent, without a person who was erased meanwhile.

use super::{Name, Sort};
use crate::exchange::Results;

/// What becomes of a file when a person is erased.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Without {
    /// It stays: nothing of that person is in it.
    Same,
    /// It goes: nothing but that person was in it, or it cannot be read any more.
    Nothing,
    /// Another file stands in its place, with everything but that person.
    Less(Name, String),
}

/// What becomes of a file; `person` is what the journal calls them.
#[must_use]
pub fn without(name: &Name, text: &str, person: &str) -> Without {
    if name.sort() != Sort::Results {
        return Without::Same;
    }
    let Ok(mut results) = Results::read(text.as_bytes()) else { return Without::Nothing };
    let all = (results.events.len(), results.people.len());
    results.events.retain(|event| event.stamp().person != person);
    results.people.retain(|one| one.journal != person);
    if (results.events.len(), results.people.len()) == all {
        return Without::Same;
    }
    match results.text() {
        Ok(text) if !results.events.is_empty() => Without::Less(Name::of(Sort::Results, &text), text),
        _ => Without::Nothing,
    }
}
