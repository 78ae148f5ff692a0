//! JSON in its canonical form (RFC 8785), and a strict reading of it: one document, one meaning, one row of bytes.

use super::{Refusal, Why};
use serde::de::{DeserializeSeed, MapAccess, SeqAccess, Visitor};
use serde_json::{Deserializer, Map, Value};
use sha2::{Digest, Sha256};
use std::cell::RefCell;
use std::fmt;

/// Bytes that a signed file may have, our own limit: a sign-off has some 3 kB.
pub const BYTES_MOST: usize = 256 * 1024;
/// Bytes that a trust list may have, our own limit: it keeps every person and every withdrawal for ever. A hundred people
/// have 40 kB and a withdrawal 1 kB at most, so that one a week finds room for eighty years.
pub const LIST_BYTES_MOST: usize = 4 * 1024 * 1024;
/// Objects and lists inside each other, our own limit: a sign-off inside a record of the book has ten.
pub const DEPTH_MOST: usize = 16;
/// The largest whole number that every reader keeps exactly: 2^53 - 1 (RFC 7493 section 2.2).
const WHOLE_MOST: u64 = (1 << 53) - 1;

/// A SHA-256 hash, shown as 64 small hexadecimal digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Hash(pub [u8; 32]);

impl fmt::Display for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

/// The canonical form.
///
/// # Errors
/// [`Why::NotJson`] for what JSON cannot say; no value read from JSON is such a thing.
pub fn canonical(value: &Value) -> Result<String, Refusal> {
    serde_jcs::to_string(value).map_err(|error| Why::NotJson.at(error.to_string()))
}

/// SHA-256 of the canonical form.
///
/// # Errors
/// As [`canonical`].
pub fn hash(value: &Value) -> Result<Hash, Refusal> {
    Ok(Hash(Sha256::digest(canonical(value)?.as_bytes()).into()))
}

/// Reads strictly: size and depth bounded, no member twice, whole numbers only.
///
/// # Errors
/// Those of the first six reasons of [`Why`] but the one on the canonical form.
pub fn read(bytes: &[u8]) -> Result<Value, Refusal> {
    read_within(bytes, BYTES_MOST)
}

/// Whether so many bytes are not too many.
pub(super) fn room(bytes: usize, most: usize) -> Result<(), Refusal> {
    if bytes > most { Err(Why::TooLarge.at(format!("{bytes} > {most}"))) } else { Ok(()) }
}

fn read_within(bytes: &[u8], most: usize) -> Result<Value, Refusal> {
    room(bytes.len(), most)?;
    let found = RefCell::new(None);
    let mut reader = Deserializer::from_slice(bytes);
    let strict = Strict { depth: 0, found: &found };
    let value = strict.deserialize(&mut reader).and_then(|value| reader.end().map(|()| value));
    value.map_err(|error| found.take().unwrap_or_else(|| Why::NotJson.at(error.to_string())))
}

/// Reads an object whose bytes are its canonical form, nothing before, between or behind.
///
/// # Errors
/// As [`read`], and [`Why::NotCanonical`] with the first byte that differs.
pub fn read_canonical(bytes: &[u8]) -> Result<Map<String, Value>, Refusal> {
    read_canonical_within(bytes, BYTES_MOST)
}

/// The same with at most so many bytes.
pub(super) fn read_canonical_within(bytes: &[u8], most: usize) -> Result<Map<String, Value>, Refusal> {
    let value = read_within(bytes, most)?;
    let wanted = canonical(&value)?;
    if wanted.as_bytes() != bytes {
        let same = wanted.bytes().zip(bytes).take_while(|(wanted, found)| wanted == *found).count();
        return Err(Why::NotCanonical.at((same + 1).to_string()));
    }
    match value {
        Value::Object(members) => Ok(members),
        _ => Err(Why::ShapeUnknown.at("/")),
    }
}

/// Builds a [`Value`] and stops at what must not stand in a signed document.
#[derive(Clone, Copy)]
struct Strict<'a> {
    depth: usize,
    found: &'a RefCell<Option<Refusal>>,
}

impl Strict<'_> {
    fn stop<T, E: serde::de::Error>(&self, refusal: Refusal) -> Result<T, E> {
        *self.found.borrow_mut() = Some(refusal);
        Err(E::custom("refused"))
    }

    fn deeper<E: serde::de::Error>(self) -> Result<Self, E> {
        if self.depth == DEPTH_MOST {
            return self.stop(Why::TooDeep.at(DEPTH_MOST.to_string()));
        }
        Ok(Self { depth: self.depth + 1, ..self })
    }
}

impl<'de> DeserializeSeed<'de> for Strict<'_> {
    type Value = Value;
    fn deserialize<D: serde::Deserializer<'de>>(self, reader: D) -> Result<Value, D::Error> {
        reader.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Strict<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }
    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }
    fn visit_bool<E>(self, truth: bool) -> Result<Value, E> {
        Ok(Value::Bool(truth))
    }
    fn visit_u64<E: serde::de::Error>(self, number: u64) -> Result<Value, E> {
        if number > WHOLE_MOST {
            return self.stop(Why::NumberNotWhole.at(number.to_string()));
        }
        Ok(number.into())
    }
    fn visit_i64<E: serde::de::Error>(self, number: i64) -> Result<Value, E> {
        if number.unsigned_abs() > WHOLE_MOST {
            return self.stop(Why::NumberNotWhole.at(number.to_string()));
        }
        Ok(number.into())
    }
    fn visit_f64<E: serde::de::Error>(self, number: f64) -> Result<Value, E> {
        self.stop(Why::NumberNotWhole.at(number.to_string()))
    }
    fn visit_str<E>(self, text: &str) -> Result<Value, E> {
        Ok(Value::String(text.to_owned()))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
        let inside = self.deeper()?;
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(inside)? {
            list.push(item);
        }
        Ok(Value::Array(list))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut members: A) -> Result<Value, A::Error> {
        let inside = self.deeper()?;
        let mut object = Map::new();
        while let Some(name) = members.next_key::<String>()? {
            if object.contains_key(&name) {
                return self.stop(Why::DuplicateMember.at(name));
            }
            let value = members.next_value_seed(inside)?;
            object.insert(name, value);
        }
        Ok(Value::Object(object))
    }
}
