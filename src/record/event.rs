//! What can happen in the journal. Events are added, never changed; each tells the format it was written in.

use super::{AssessorName, Entry, Filing, Observed, Stamp, Struck, Voided, Walked};
use serde::{Deserialize, Serialize, Serializer};
use serde_json::{Map, Value};
use std::collections::BTreeMap;
use std::sync::Arc;

/// One event. It is shared and never changed, so that another journal with the same events costs little.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Map<String, Value>", tag = "event", rename_all = "kebab-case")]
pub enum Event {
    /// An answer was handed in.
    #[serde(serialize_with = "plainly")]
    Answered(Arc<Entry>),
    /// An attempt went a step.
    #[serde(serialize_with = "plainly")]
    Attempt(Arc<Turn>),
    /// An instructor taught a hazard again.
    #[serde(serialize_with = "plainly")]
    Taught(Arc<Taught>),
    /// An assessor watched work.
    #[serde(serialize_with = "plainly")]
    Observed(Arc<Observed>),
    /// An assessor saw what the employer has on file.
    #[serde(serialize_with = "plainly")]
    Filed(Arc<Filing>),
    /// An assessor struck out what was entered wrongly.
    #[serde(serialize_with = "plainly")]
    Struck(Arc<Struck>),
    /// All events of a person were erased.
    #[serde(serialize_with = "plainly")]
    Erased(Arc<Erased>),
    /// Something was found wrong after it had counted.
    #[serde(serialize_with = "plainly")]
    Voided(Arc<Voided>),
    /// Something happened on a walk.
    #[serde(serialize_with = "plainly")]
    Walked(Arc<Walked>),
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

/// A scenario set taken in an attempt: its cards are the first ones.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Taking {
    /// How many cards it has.
    pub cards: u32,
    /// Whether each answer is told at once, and not when all are given.
    pub at_once: bool,
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
        /// The cards of a scenario set come first; none where there are none.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        taking: Option<Taking>,
    },
    /// An assessor sits beside while it is taken. It counts where it was said before the first answer.
    Supervised {
        /// Who.
        by: AssessorName,
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

/// A person's events were erased from this device. It says under which numbers they stood, so that a copy of them that
/// turns up elsewhere is not taken in again, and names nobody.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Erased {
    /// Where and when; the person is empty.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// Their sequence numbers on this device.
    pub numbers: Vec<u64>,
    /// Those of them that stand under a name which this device had before, by that name: a backup that is put back gives it
    /// another.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub earlier: BTreeMap<String, Vec<u64>>,
}

impl Erased {
    /// The names of the events that it erases, each by device and number. A number of an earlier name is none of this one.
    pub fn names(&self) -> impl Iterator<Item = (&str, u64)> {
        let now = self.numbers.iter().map(|number| (self.stamp.device.as_str(), *number));
        let earlier = self.earlier.iter();
        now.chain(
            earlier.flat_map(|(device, numbers)| numbers.iter().map(|number| (device.as_str(), *number))),
        )
    }
}

/// Writes what is shared as what it is.
fn plainly<T: Serialize, S: Serializer>(what: &Arc<T>, to: S) -> Result<S::Ok, S::Error> {
    T::serialize(what, to)
}

/// What happened as an event.
macro_rules! happens {
    ($($what:ty => $kind:ident),+ $(,)?) => {$(
        impl From<$what> for Event {
            fn from(what: $what) -> Self {
                Self::$kind(Arc::new(what))
            }
        }
    )+};
}

happens! {
    Entry => Answered,
    Turn => Attempt,
    Taught => Taught,
    Observed => Observed,
    Filing => Filed,
    Struck => Struck,
    Erased => Erased,
    Voided => Voided,
    Walked => Walked,
}

impl Event {
    /// Where, when and about whom.
    #[must_use]
    pub fn stamp(&self) -> &Stamp {
        match self {
            Self::Answered(entry) => &entry.stamp,
            Self::Attempt(turn) => &turn.stamp,
            Self::Taught(taught) => &taught.stamp,
            Self::Observed(observed) => &observed.stamp,
            Self::Filed(filing) => &filing.stamp,
            Self::Struck(struck) => &struck.stamp,
            Self::Erased(erased) => &erased.stamp,
            Self::Voided(voided) => &voided.stamp,
            Self::Walked(walked) => &walked.stamp,
        }
    }

    /// The same, to be numbered anew before it is stored.
    pub fn stamp_mut(&mut self) -> &mut Stamp {
        match self {
            Self::Answered(entry) => &mut Arc::make_mut(entry).stamp,
            Self::Attempt(turn) => &mut Arc::make_mut(turn).stamp,
            Self::Taught(taught) => &mut Arc::make_mut(taught).stamp,
            Self::Observed(observed) => &mut Arc::make_mut(observed).stamp,
            Self::Filed(filing) => &mut Arc::make_mut(filing).stamp,
            Self::Struck(struck) => &mut Arc::make_mut(struck).stamp,
            Self::Erased(erased) => &mut Arc::make_mut(erased).stamp,
            Self::Voided(voided) => &mut Arc::make_mut(voided).stamp,
            Self::Walked(walked) => &mut Arc::make_mut(walked).stamp,
        }
    }

    /// The answer; `None` where it is none.
    #[must_use]
    pub fn answer(&self) -> Option<&Entry> {
        if let Self::Answered(entry) = self { Some(entry) } else { None }
    }

    /// What happened on a walk; `None` where it is something else.
    #[must_use]
    pub fn walked(&self) -> Option<&Walked> {
        if let Self::Walked(walked) = self { Some(walked) } else { None }
    }
}
