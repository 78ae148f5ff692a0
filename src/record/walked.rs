//! What is written down of a walk: each decision with what was known then, somebody else's walk inspected, and a walk let go.
//!
//! The decisions themselves are kept as the walk writes them: what they mean is told by what stands above the record.

use super::{Event, SheetName, Stamp};
use crate::terms;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// Something that happened on a walk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Walked {
    /// Where, when and by whom.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// The walk, by its name on the device.
    pub walk: String,
    /// Slug of the job that is walked.
    pub job: String,
    /// What happened.
    pub step: WalkStep,
}

/// What happens on a walk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WalkStep {
    /// Something was decided and carried out.
    Decided(Box<Decided>),
    /// The mistakes in somebody else's walk were named, and graded.
    Inspected(Inspected),
    /// It was let go before the work was handed over.
    LetGo,
}

terms! {
    /// How a walk is walked.
    Way {
        /// Told before an operation what it will spoil.
        Guided = "guided",
        /// Told nothing before.
        Own = "own",
    }
    /// What is ready or lies about when something is decided. Text: `walk.ready.<slug>`.
    Ready {
        /// The seal of the respirator was checked when it went on.
        SealChecked = "seal-checked",
        /// The closed suit for spraying is worn.
        CleanSuit = "clean-suit",
        /// Gloves are worn.
        Gloves = "gloves",
        /// Eye protection is worn.
        Eyes = "eyes",
        /// The extraction runs.
        Fan = "fan",
        /// The filter gauge was read today.
        GaugeRead = "gauge-read",
        /// Sources of ignition were taken away today.
        SourcesOut = "sources-out",
        /// The wheel was checked today.
        WheelChecked = "wheel-checked",
        /// There is mix in the gun.
        GunDirty = "gun-dirty",
        /// Cloths lie about.
        RagsAbout = "rags-about",
    }
}

/// A decision.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Decided {
    /// How the walk is walked.
    pub way: Way,
    /// Whether the walk goes on from a decision of an earlier one, after what came of that was told.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub again: bool,
    /// The shop sheet that it is worked on.
    pub sheet: SheetName,
    /// Place among the decisions of the walk, from 1. After one was taken back the same place is decided again.
    pub nth: u32,
    /// What was decided, as the walk keeps it.
    pub decision: Value,
    /// What was known then.
    pub known: Known,
    /// Ids of the rules that it broke, each once, told when it was made; empty where it was right.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub broke: Vec<String>,
    /// The card families that it exercises.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub exercised: Vec<Exercised>,
    /// Whether the work was handed over by it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub over: bool,
}

/// What could be known when something was decided.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Known {
    /// Day of the job, from 1.
    pub day: u32,
    /// Hour of the day, 0 to under 24.
    pub hour: f64,
    /// The air as it was last measured that day; none where it was not.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub air: Option<AirKnown>,
    /// Whether the filters stood past the mark, where the gauge was read that day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub filters_past: Option<bool>,
    /// The respirator that is worn, by what it stops; none: nothing before mouth and nose.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub respirator: Option<String>,
    /// What is ready, and what lies about.
    #[serde(default, skip_serializing_if = "BTreeSet::is_empty")]
    pub ready: BTreeSet<Ready>,
    /// What was last done to each part that the decision is about, by place on the ticket; bare ones are left out.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub parts: BTreeMap<u32, String>,
    /// Ids of the rules behind the faults that showed by then and were not mended, each once.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shown: Vec<String>,
    /// The day that was offered instead of the one asked for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub offered: Option<u32>,
}

/// The air as it was measured.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AirKnown {
    /// Temperature of the air, °C.
    pub air_c: f64,
    /// Relative humidity, %.
    pub rh: f64,
    /// Temperature of the work surface, °C.
    pub work_c: f64,
    /// Hours since it was measured.
    pub hours_ago: f64,
}

/// A card family that a decision exercises.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exercised {
    /// The family.
    pub family: String,
    /// Its version.
    pub version: u32,
    /// Ids of its rules that were broken; empty where it was right.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub broke: Vec<String>,
}

/// What was named of the mistakes in somebody else's walk.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Inspected {
    /// Number of the walk that was gone through.
    pub seed: u32,
    /// Mistakes that were named with their rule.
    pub found: u32,
    /// Mistakes of which the decision was named, and another rule.
    pub half: u32,
    /// Ids of the rules of the mistakes that were not named.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub missed: Vec<String>,
    /// Decisions that were named with nothing wrong in them.
    pub wrong: u32,
}

impl Exercised {
    /// Whether it was right on what was known then.
    #[must_use]
    pub fn is_right(&self) -> bool {
        self.broke.is_empty()
    }
}

impl Walked {
    /// The decision, where it is one.
    #[must_use]
    pub fn decided(&self) -> Option<&Decided> {
        if let WalkStep::Decided(decided) = &self.step { Some(decided) } else { None }
    }

    /// Whether these events tell the same of that walk: the decision stands at its place, or the walk was let go. Two windows
    /// may each write it.
    #[must_use]
    pub fn is_told_by(&self, events: &[Event]) -> bool {
        match &self.step {
            WalkStep::Decided(one) => {
                let stands = decisions_of(events, &self.stamp.device, &self.walk);
                stands.get(&one.nth).is_some_and(|told| told.decision == one.decision)
            }
            WalkStep::LetGo => events.iter().filter_map(Event::walked).any(|told| {
                (&told.stamp.device, &told.walk, &told.step) == (&self.stamp.device, &self.walk, &self.step)
            }),
            WalkStep::Inspected(_) => false,
        }
    }

    /// Whether nothing more is decided on the walk after it.
    #[must_use]
    pub fn ends(&self) -> bool {
        match &self.step {
            WalkStep::Decided(decided) => decided.over,
            WalkStep::Inspected(_) | WalkStep::LetGo => true,
        }
    }
}

/// The decisions of a walk that are written down and were not taken back, by their places; of the device that it is on.
#[must_use]
pub fn decisions_of<'a>(events: &'a [Event], device: &str, walk: &str) -> BTreeMap<u32, &'a Decided> {
    let mut all: BTreeMap<u32, &Decided> = BTreeMap::new();
    let of_it = |one: &&Walked| one.walk == walk && one.stamp.device == device;
    for decided in events.iter().filter_map(Event::walked).filter(of_it).filter_map(Walked::decided) {
        all.retain(|nth, _| *nth < decided.nth);
        all.insert(decided.nth, decided);
    }
    all
}
