//! How files of ours begin, are read and are named.

use super::Refused;
use super::said::{Said, said};
use serde::de::value::MapAccessDeserializer;
use serde::de::{DeserializeOwned, DeserializeSeed, IgnoredAny, IntoDeserializer, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};
use sha2::{Digest, Sha256};
use std::fmt;
use std::marker::PhantomData;

/// A kind of file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Kind {
    /// What the file calls itself in `format`.
    pub format: &'static str,
    /// The version that is written; all from 1 to it are read.
    pub version: u32,
    /// Bytes that it may have, our own limit.
    pub most: usize,
}

/// What every file of ours says of itself; the rest is not looked at.
#[derive(Deserialize)]
struct Says {
    format: String,
    version: u32,
}

/// The file whole: what it says of itself beside what it holds.
#[derive(Serialize)]
struct Whole<'a, T> {
    format: &'static str,
    version: u32,
    #[serde(flatten)]
    holds: &'a T,
}

/// Bytes of the hash in a file's name: no two files that anybody ever meets have the same.
const NAME_BYTES: usize = 16;

/// Reads what a file of that kind holds; `T` should refuse members that it does not know.
///
/// # Errors
/// [`Refused`]: too large, no such JSON, another kind, another version.
pub fn read<T: DeserializeOwned>(bytes: &[u8], kind: Kind) -> Result<T, Refused> {
    if bytes.len() > kind.most {
        return Err(Refused::TooLarge { bytes: bytes.len(), most: kind.most });
    }
    let says: Says = serde_json::from_slice(bytes).map_err(|error| match said(bytes) {
        Ok(Said::Nothing(first)) => Refused::OtherKind { found: first, wanted: kind.format },
        Ok(Said::Format(_) | Said::Events) => error.into(),
        Err(refused) => refused,
    })?;
    if says.format != kind.format {
        return Err(Refused::OtherKind { found: Refused::short(&says.format), wanted: kind.format });
    }
    if !(1..=kind.version).contains(&says.version) {
        return Err(Refused::OtherVersion { found: says.version, most: kind.version });
    }
    let holds: Holds<T> = serde_json::from_slice(bytes)?;
    Ok(holds.0)
}

/// The text of a file of that kind.
///
/// # Errors
/// [`Refused::Form`] for what JSON cannot say; nothing that was read is such a thing.
pub fn write<T: Serialize>(holds: &T, kind: Kind) -> Result<String, Refused> {
    let mut text =
        serde_json::to_string_pretty(&Whole { format: kind.format, version: kind.version, holds })?;
    text.push('\n');
    Ok(text)
}

/// The name of a file by what is in it: the same bytes always get the same name, others another one.
#[must_use]
pub fn content_name(kind: Kind, bytes: &[u8]) -> String {
    let hash = Sha256::digest(bytes);
    let hash: String = hash.iter().take(NAME_BYTES).map(|byte| format!("{byte:02x}")).collect();
    format!("{}-{hash}.json", kind.format)
}

/// What the file holds, without what it says of itself.
struct Holds<T>(T);

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Holds<T> {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        reader.deserialize_map(Members(PhantomData)).map(Self)
    }
}

/// Reads `T` from an object.
struct Members<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Members<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, members: A) -> Result<T, A::Error> {
        T::deserialize(MapAccessDeserializer::new(Own { members }))
    }
}

/// The members but for `format` and `version`.
struct Own<A> {
    members: A,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Own<A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, A::Error> {
        while let Some(name) = self.members.next_key::<String>()? {
            if !["format", "version"].contains(&name.as_str()) {
                return seed.deserialize(name.into_deserializer()).map(Some);
            }
            self.members.next_value::<IgnoredAny>()?;
        }
        Ok(None)
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, A::Error> {
        self.members.next_value_seed(seed)
    }
}
