//! Who an actor is: an account by shop number (2.4.2.4), exactly one identifier and no name.

use super::Home;
use crate::exchange::Named;
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};

/// Bytes of the hash that stands for somebody without a number.
const HASH_BYTES: usize = 8;

/// Shop numbers by what events stand under.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Actors(BTreeMap<String, BTreeSet<String>>);

impl Actors {
    /// Those that files of results name.
    #[must_use]
    pub fn new(people: &[Named]) -> Self {
        let mut numbers: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
        for one in people {
            numbers.entry(one.journal.clone()).or_default().insert(one.number.clone());
        }
        Self(numbers)
    }

    /// The actor: by number; whoever has none, or stands for two, by a hash that names nobody. `None` of nobody.
    pub(super) fn of(&self, home: &Home, person: &str) -> Option<Value> {
        if person.is_empty() {
            return None;
        }
        let numbers = self.0.get(person).filter(|numbers| numbers.len() == 1);
        let name = numbers.and_then(|numbers| numbers.first().cloned()).unwrap_or_else(|| {
            let hash = Sha256::digest(format!("{}\n{person}", home.text()).as_bytes());
            let hash: String = hash.iter().take(HASH_BYTES).map(|byte| format!("{byte:02x}")).collect();
            format!("unnumbered-{hash}")
        });
        Some(Self::account(home, &name))
    }

    /// An account by its number.
    pub(super) fn account(home: &Home, number: &str) -> Value {
        json!({ "objectType": "Agent", "account": { "homePage": home.text(), "name": number } })
    }
}
