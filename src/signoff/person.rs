//! Who may sign: people of the shop by number, and from when to when.

use super::{PublicKey, Refusal, When, Why};
use crate::terms;
use serde::{Deserialize, Serialize};
use std::fmt;

/// The number by which the shop knows a person, one a person whatever they do there: an assessor who learns has the same
/// one, so that nobody signs for themselves. Small letters, digits and hyphens, at most 16.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct ShopNumber(String);

/// Characters of a shop number, our own limit: it stands on paper too.
const NUMBER_MOST: usize = 16;

impl ShopNumber {
    /// Reads a shop number.
    ///
    /// # Errors
    /// [`Why::WordsUnfit`] with the text.
    pub fn new(text: &str) -> Result<Self, Refusal> {
        let allowed = |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-';
        let fits = (1..=NUMBER_MOST).contains(&text.len()) && text.bytes().all(allowed);
        if fits { Ok(Self(text.to_owned())) } else { Err(Why::WordsUnfit.at(text)) }
    }

    /// The text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for ShopNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl TryFrom<String> for ShopNumber {
    type Error = Refusal;
    fn try_from(text: String) -> Result<Self, Refusal> {
        Self::new(&text)
    }
}

impl From<ShopNumber> for String {
    fn from(number: ShopNumber) -> Self {
        number.0
    }
}

terms! {
    /// What a person on the trust list does in the shop; both sign.
    Role {
        /// Teaches and signs.
        Instructor = "instructor",
        /// Assesses and signs.
        Assessor = "assessor",
    }
}

/// An entry of the trust list: one key of one person. A lost key gets an end and the person another entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// Shop number.
    pub number: ShopNumber,
    /// Name, as it stands on what they sign.
    pub name: String,
    /// What they do.
    pub role: Role,
    /// Their key.
    pub key: PublicKey,
    /// From this moment on what the key signs counts.
    pub from: When,
    /// From this moment on it no longer does; the same as `from` where nothing it signed counts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<When>,
}

impl Person {
    /// Whether what the key signs at that moment counts.
    #[must_use]
    pub fn trusted_at(&self, at: &When) -> bool {
        self.from <= *at && self.to.as_ref().is_none_or(|to| at < to)
    }
}
