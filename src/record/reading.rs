//! Reads stored events, in every format they were ever written in.

use super::once::Once;
use super::quick::answered;
use super::{Event, FORMAT};
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use std::sync::Arc;

/// The format of events that do not tell theirs.
const FIRST_FORMAT: u64 = 1;
/// The kinds of events, for messages.
const KINDS: &str = "answered, attempt, taught, observed, filed, struck, erased, voided, walked";

/// Why a stored event cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum UnreadableEvent {
    /// A later program wrote it.
    #[error("event in format {0}; this program reads formats 1 to {FORMAT}")]
    Newer(u64),
    /// Its format is told, and is no whole number.
    #[error("event in format `{0}`, which is no whole number; this program reads formats 1 to {FORMAT}")]
    Format(Value),
    /// It does not tell its kind, which only format 1 may leave off.
    #[error("event in format {0} tells no kind; allowed: {KINDS}")]
    NoKind(u64),
    /// It is no object, or one in which a member stands twice.
    #[error("{0}; an event is an object with each member once")]
    NoObject(String),
    /// It is of no known kind.
    #[error("`{0}` is no kind of event; allowed: {KINDS}")]
    Unknown(String),
    /// A field is missing or wrong.
    #[error("event `{kind}`: {problem}")]
    Field {
        /// Its kind.
        kind: String,
        /// What is wrong.
        problem: String,
    },
}

impl Event {
    /// Reads the text of one event.
    ///
    /// # Errors
    /// [`UnreadableEvent`].
    pub fn read(text: &str) -> Result<Self, UnreadableEvent> {
        if let Some(entry) = answered(text) {
            return Ok(entry.into());
        }
        let Once(stored) =
            serde_json::from_str(text).map_err(|error| UnreadableEvent::NoObject(error.to_string()))?;
        Self::try_from(stored)
    }
}

impl TryFrom<Map<String, Value>> for Event {
    type Error = UnreadableEvent;

    fn try_from(mut stored: Map<String, Value>) -> Result<Self, UnreadableEvent> {
        let format = match stored.get("format") {
            None => FIRST_FORMAT,
            Some(told) => told.as_u64().ok_or_else(|| UnreadableEvent::Format(told.clone()))?,
        };
        if !(1..=u64::from(FORMAT)).contains(&format) {
            return Err(UnreadableEvent::Newer(format));
        }
        let kind = match stored.remove("event") {
            Some(Value::String(kind)) => kind,
            Some(other) => return Err(UnreadableEvent::Unknown(other.to_string())),
            // In the first format there were answers alone, and nothing said so.
            None if format == FIRST_FORMAT => "answered".to_owned(),
            None => return Err(UnreadableEvent::NoKind(format)),
        };
        match kind.as_str() {
            "answered" => read(&kind, stored).map(Self::Answered),
            "attempt" => read(&kind, stored).map(Self::Attempt),
            "taught" => read(&kind, stored).map(Self::Taught),
            "observed" => read(&kind, stored).map(Self::Observed),
            "filed" => read(&kind, stored).map(Self::Filed),
            "struck" => read(&kind, stored).map(Self::Struck),
            "erased" => read(&kind, stored).map(Self::Erased),
            "voided" => read(&kind, stored).map(Self::Voided),
            "walked" => read(&kind, stored).map(Self::Walked),
            _ => Err(UnreadableEvent::Unknown(kind)),
        }
    }
}

fn read<T: DeserializeOwned>(kind: &str, stored: Map<String, Value>) -> Result<Arc<T>, UnreadableEvent> {
    serde_json::from_value(Value::Object(stored))
        .map(Arc::new)
        .map_err(|error| UnreadableEvent::Field { kind: kind.to_owned(), problem: error.to_string() })
}
