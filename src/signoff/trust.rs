//! The trust list: who may sign from when to when, and what was withdrawn, signed by the root key of the shop.

use super::canonical::{read_canonical_within, room};
use super::credential::is_id;
use super::words::{REASON_MOST, fit, fit_within};
use super::{LIST_BYTES_MOST, Person, PublicKey, Refusal, SecretKey, When, Why, canonical, check, sign};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

/// What a list calls itself.
const FORMAT: &str = "stepboard-trust-list";
const VERSION: u32 = 1;

/// A list as it is signed. Lists follow each other: people and withdrawals are added, none is taken away.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TrustList {
    format: String,
    version: u32,
    /// Name of the shop.
    pub shop: String,
    /// The shop's root key. It signs lists, their records in the book and withdrawals, never a sign-off, and belongs to no
    /// person on them.
    pub root: PublicKey,
    /// Which list of this root, from 1.
    pub number: u32,
    /// When it was signed: what was withdrawn later does not stand on it.
    pub issued: When,
    /// Keys of people.
    pub people: Vec<Person>,
    /// Sign-offs that no longer count.
    pub withdrawn: Vec<Withdrawal>,
}

/// A sign-off that no longer counts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Withdrawal {
    /// Its name, see [`super::credential_id`].
    pub credential: String,
    /// From when on.
    pub at: When,
    /// Why, in 200 characters at most.
    pub reason: String,
}

impl TrustList {
    /// The first list of a shop.
    #[must_use]
    pub fn first(shop: &str, root: PublicKey, issued: When, people: Vec<Person>) -> Self {
        let (format, shop) = (FORMAT.to_owned(), shop.to_owned());
        Self { format, version: VERSION, shop, root, number: 1, issued, people, withdrawn: Vec::new() }
    }

    /// The list after this one.
    #[must_use]
    pub fn next(&self, issued: When, people: Vec<Person>, withdrawn: Vec<Withdrawal>) -> Self {
        Self { number: self.number.saturating_add(1), issued, people, withdrawn, ..self.clone() }
    }

    /// The list as a file, signed by its root.
    ///
    /// # Errors
    /// [`Why::RootDiffers`] for another key than its root, and what [`TrustList::read`] would refuse, its size too.
    pub fn signed(&self, root: &SecretKey) -> Result<String, Refusal> {
        if root.public() != self.root {
            return Err(Why::RootDiffers.at(root.public().did()));
        }
        self.fit()?;
        let Value::Object(document) = json!(self) else { return Err(Why::ShapeUnknown.at("/")) };
        let text = canonical(&Value::Object(sign(&document, root, &self.issued)?))?;
        room(text.len(), LIST_BYTES_MOST)?;
        Ok(text)
    }

    /// Reads a signed list from a file; the caller knows the root, or shows its fingerprint to somebody who does.
    ///
    /// # Errors
    /// The reasons of [`Why`] on documents and proofs, [`Why::RootDiffers`], [`Why::ListUnfit`].
    pub fn read(bytes: &[u8], root: Option<&PublicKey>) -> Result<Self, Refusal> {
        Self::proven(&read_canonical_within(bytes, LIST_BYTES_MOST)?, root)
    }

    /// Reads a signed list from its members.
    pub(super) fn proven(signed: &Map<String, Value>, root: Option<&PublicKey>) -> Result<Self, Refusal> {
        let proven = check(signed)?;
        let list: Self = serde_json::from_value(Value::Object(proven.document))
            .map_err(|error| Why::ShapeUnknown.at(error.to_string()))?;
        if list.format != FORMAT || list.version != VERSION {
            return Err(Why::ShapeUnknown.at("/format"));
        }
        if proven.by != list.root || root.is_some_and(|root| *root != list.root) {
            return Err(Why::RootDiffers.at(list.root.did()));
        }
        if proven.created != list.issued {
            return Err(Why::DatesDisordered.at("/issued"));
        }
        list.fit()?;
        Ok(list)
    }

    /// One key is one person's and stands once; the root is nobody's; dates run forward; words show as they are.
    fn fit(&self) -> Result<(), Refusal> {
        fit(&self.shop, "/shop")?;
        for (place, one) in self.people.iter().enumerate() {
            let at = |name: &str| format!("/people/{place}/{name}");
            fit(&one.name, &at("name"))?;
            let before = self.people.iter().take(place);
            if one.key == self.root || before.clone().any(|other| other.key == one.key) {
                return Err(Why::ListUnfit.at(at("key")));
            }
            if one.to.as_ref().is_some_and(|to| *to < one.from) {
                return Err(Why::DatesDisordered.at(at("to")));
            }
        }
        let mut seen = BTreeSet::new();
        for (place, one) in self.withdrawn.iter().enumerate() {
            let at = |name: &str| format!("/withdrawn/{place}/{name}");
            fit_within(&one.reason, &at("reason"), REASON_MOST)?;
            if !is_id(&one.credential) || !seen.insert(&one.credential) {
                return Err(Why::ListUnfit.at(at("credential")));
            }
            if one.at > self.issued {
                return Err(Why::DatesDisordered.at(at("at")));
            }
        }
        Ok(())
    }

    /// Whether this list may take the place of an older one: the same root and shop, a later number and not an earlier date,
    /// every person and every withdrawal still there. An end may be set or brought forward, as for a key found to be lost;
    /// it is never put off.
    ///
    /// # Errors
    /// [`Why::RootDiffers`] or [`Why::ListUnfit`] with what is in the way.
    pub fn follows(&self, older: &Self) -> Result<(), Refusal> {
        if self.root != older.root || self.shop != older.shop {
            return Err(Why::RootDiffers.at(self.root.did()));
        }
        if self.number <= older.number || self.issued < older.issued {
            return Err(Why::ListUnfit.at("/number"));
        }
        for (place, was) in older.people.iter().enumerate() {
            let kept = self.people.iter().any(|one| {
                let end = match (&was.to, &one.to) {
                    (None, _) => true,
                    (Some(was), Some(now)) => now <= was,
                    (Some(_), None) => false,
                };
                end && Person { to: was.to.clone(), ..one.clone() } == *was
            });
            if !kept {
                return Err(Why::ListUnfit.at(format!("/people/{place}")));
            }
        }
        match older.withdrawn.iter().find(|one| !self.withdrawn.contains(one)) {
            None => Ok(()),
            Some(one) => Err(Why::ListUnfit.at(one.credential.clone())),
        }
    }

    /// Whose key this is.
    #[must_use]
    pub fn person(&self, key: &PublicKey) -> Option<&Person> {
        self.people.iter().find(|person| person.key == *key)
    }

    /// The withdrawal of a sign-off, if it stands here.
    #[must_use]
    pub fn withdrawal(&self, credential: &str) -> Option<&Withdrawal> {
        self.withdrawn.iter().find(|one| one.credential == credential)
    }
}
