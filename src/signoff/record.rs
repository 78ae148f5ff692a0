//! One record of the book, signed on its own and tied to the one before.

use super::canonical::{read_canonical_within, room};
use super::{
    BYTES_MOST, Hash, LIST_BYTES_MOST, PublicKey, Refusal, SecretKey, When, Why, canonical, check, hash, sign,
};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value, json};

const FORMAT: &str = "stepboard-book";
const VERSION: u32 = 1;
/// Bytes that a record has besides a trust list in it: its own members and its proof, under 1 kB.
const AROUND_MOST: usize = 4 * 1024;

/// What was done.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Act {
    /// The root signed a trust list; the first record is one.
    Trusted {
        /// The signed list.
        list: Map<String, Value>,
    },
    /// Somebody was signed off who held nothing for this competency.
    SignedOff {
        /// The signed sign-off.
        credential: Map<String, Value>,
    },
    /// Somebody was assessed again; the earlier sign-off no longer stands.
    Reassessed {
        /// The signed sign-off.
        credential: Map<String, Value>,
        /// Name of the earlier one, whether or not its time has run out.
        replaces: String,
    },
    /// A sign-off was withdrawn. It stays in the book.
    Withdrawn {
        /// Its name.
        credential: String,
        /// Why.
        reason: String,
    },
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Page {
    format: String,
    version: u32,
    number: u32,
    previous: String,
    at: When,
    act: Act,
}

/// A record that was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// Place in the book, from 1.
    pub number: u32,
    /// Hash of the record before, as 64 hexadecimal digits; zeros in the first.
    pub previous: String,
    /// When, as the signer told.
    pub at: When,
    /// What was done.
    pub act: Act,
    /// Who signed the record.
    pub by: PublicKey,
    /// Hash of this record with its proof.
    pub hash: Hash,
    /// Its bytes, without the end of the line.
    pub text: String,
}

impl Record {
    /// Signs a record.
    pub(super) fn signed(
        number: u32,
        previous: Hash,
        at: &When,
        act: Act,
        key: &SecretKey,
    ) -> Result<String, Refusal> {
        let (format, previous) = (FORMAT.to_owned(), previous.to_string());
        let page = json!(Page { format, version: VERSION, number, previous, at: at.clone(), act });
        let Value::Object(document) = page else { return Err(Why::ShapeUnknown.at("/")) };
        canonical(&Value::Object(sign(&document, key, at)?))
    }

    /// Reads a record; whether it fits where it stands is for the book to say.
    pub(super) fn read(text: &str) -> Result<Self, Refusal> {
        let signed = read_canonical_within(text.as_bytes(), LIST_BYTES_MOST + AROUND_MOST)?;
        let proven = check(&signed)?;
        let page: Page = serde_json::from_value(Value::Object(proven.document))
            .map_err(|error| Why::ShapeUnknown.at(error.to_string()))?;
        if page.format != FORMAT || page.version != VERSION {
            return Err(Why::ShapeUnknown.at("/format"));
        }
        if !matches!(page.act, Act::Trusted { .. }) {
            room(text.len(), BYTES_MOST)?;
        }
        if page.at != proven.created {
            return Err(Why::DatesDisordered.at("/at"));
        }
        let Page { number, previous, at, act, .. } = page;
        let hash = hash(&Value::Object(signed))?;
        Ok(Self { number, previous, at, act, by: proven.by, hash, text: text.to_owned() })
    }
}
