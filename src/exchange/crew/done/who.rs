//! Who did a set, a person at a time.

use super::{Came, SetDone};
use crate::exchange::crew::Person;

/// What somebody did of one set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DidSet {
    /// See [`Person::key`].
    pub key: String,
    /// Shop number.
    pub number: Option<String>,
    /// Name.
    pub name: String,
    /// Each time they did it, the latest first; never empty.
    pub times: Vec<SetDone>,
}

impl DidSet {
    /// How often it was passed.
    #[must_use]
    pub fn passed(&self) -> usize {
        self.times.iter().filter(|one| one.came == Came::Passed).count()
    }
}

/// What of that set a person did, of all that they did; `None` where they did not begin it.
#[must_use]
pub fn did_set(person: &Person, done: Vec<SetDone>, set: &str) -> Option<DidSet> {
    let times: Vec<SetDone> = done.into_iter().filter(|one| one.set == set).collect();
    let (key, number, name) = (person.key.clone(), person.number.clone(), person.name.clone());
    (!times.is_empty()).then_some(DidSet { key, number, name, times })
}
