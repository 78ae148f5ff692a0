//! What can happen in the journal. Events are added, never changed; each tells the format it was written in.

use super::{Entry, FORMAT, Stamp};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

/// The format of events that do not tell theirs.
const FIRST_FORMAT: u64 = 1;

/// One event.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Map<String, Value>", tag = "event", rename_all = "kebab-case")]
pub enum Event {
    /// An answer was handed in.
    Answered(Entry),
    /// An attempt went a step.
    Attempt(Turn),
    /// An instructor taught a hazard again.
    Taught(Taught),
}

/// A step of an attempt.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Turn {
    /// Where, when and whose.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// The attempt.
    pub attempt: String,
    /// What happened to it.
    pub step: Step,
}

/// What happens to an attempt.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Step {
    /// It begins, on this device alone.
    Opened {
        /// The set that is taken.
        set: String,
        /// Slugs of the competencies that it is evidence for.
        competencies: Vec<String>,
    },
    /// It was left half-way.
    Left,
    /// It was taken up again.
    Resumed,
    /// It is over.
    Closed,
}

/// An instructor taught somebody a hazard again, after an error about it, and puts initials to that.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Taught {
    /// Where, when and whom.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// The card family that the error was made in.
    pub family: String,
    /// Initials or name of the instructor.
    pub by: String,
}

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
    #[error("event in format {0} tells no kind; allowed: answered, attempt, taught")]
    NoKind(u64),
    /// It is of no known kind.
    #[error("`{0}` is no kind of event; allowed: answered, attempt, taught")]
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
            _ => Err(UnreadableEvent::Unknown(kind)),
        }
    }
}

fn read<T: DeserializeOwned>(kind: &str, stored: Map<String, Value>) -> Result<T, UnreadableEvent> {
    serde_json::from_value(Value::Object(stored))
        .map_err(|error| UnreadableEvent::Field { kind: kind.to_owned(), problem: error.to_string() })
}

impl Event {
    /// Where, when and about whom.
    #[must_use]
    pub const fn stamp(&self) -> &Stamp {
        match self {
            Self::Answered(entry) => &entry.stamp,
            Self::Attempt(turn) => &turn.stamp,
            Self::Taught(taught) => &taught.stamp,
        }
    }

    /// The same, to be numbered anew before it is stored.
    pub const fn stamp_mut(&mut self) -> &mut Stamp {
        match self {
            Self::Answered(entry) => &mut entry.stamp,
            Self::Attempt(turn) => &mut turn.stamp,
            Self::Taught(taught) => &mut taught.stamp,
        }
    }

    /// The answer; `None` where it is none.
    #[must_use]
    pub const fn answer(&self) -> Option<&Entry> {
        if let Self::Answered(entry) = self { Some(entry) } else { None }
    }
}
