//! One answer handed in. A card is named by family, version, seed and shop sheet, so that the situation can be dealt again and is
//! not stored.

use super::{Certainty, Stamp};
use crate::card::{Answer, Card, Mark};
use crate::rules::sheet::Sheet;
use crate::terms;
use serde::{Deserialize, Serialize};

/// A shop sheet by name and by its values.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SheetName {
    /// Slug of the sheet.
    pub slug: String,
    /// Hash of its values.
    pub hash: String,
}

impl SheetName {
    /// Names a sheet.
    #[must_use]
    pub fn of(sheet: &Sheet) -> Self {
        Self { slug: sheet.slug.clone(), hash: sheet.hash().to_owned() }
    }
}

terms! {
    /// Help that was used before an answer was handed in.
    Help {
        /// None.
        None = "none",
        /// A hint, or a second try.
        Hint = "hint",
    }
}

/// What was used before entries told it.
const fn no_help() -> Help {
    Help::None
}

/// What an answer was part of.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Within {
    /// Practice, with a verdict at once.
    #[default]
    Practice,
    /// A check, without a verdict.
    Check {
        /// The attempt.
        attempt: String,
        /// The set that is taken.
        set: String,
    },
    /// A scenario set that is evidence for nothing.
    Set {
        /// The attempt.
        attempt: String,
        /// The set that is taken.
        set: String,
    },
    /// A card on a job worked from beginning to end. Nothing asks one there any more, since decisions of walks are events of
    /// their own; journals of the formats before that may hold such answers.
    Walk {
        /// The walk.
        walk: String,
        /// Whether it was told what comes next.
        guided: bool,
    },
    /// A worksheet of a set, typed in afterwards. Nobody knows who was asked and what lay beside it: practice.
    Paper {
        /// The set.
        set: String,
        /// The code of the worksheet.
        code: String,
    },
}

impl Within {
    /// The set that it is of, where it is of one.
    #[must_use]
    pub fn set(&self) -> Option<&str> {
        match self {
            Self::Check { set, .. } | Self::Set { set, .. } | Self::Paper { set, .. } => Some(set),
            Self::Practice | Self::Walk { .. } => None,
        }
    }

    /// The attempt that it belongs to, and the set that is taken in it; none in practice, on a walk and on paper.
    #[must_use]
    pub fn attempt(&self) -> Option<(&str, &str)> {
        match self {
            Self::Check { attempt, set } | Self::Set { attempt, set } => Some((attempt, set)),
            Self::Practice | Self::Walk { .. } | Self::Paper { .. } => None,
        }
    }
}

/// One answer handed in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// Where, when and by whom.
    #[serde(flatten)]
    pub stamp: Stamp,
    /// Card family.
    pub family: String,
    /// Its version.
    pub version: u32,
    /// Seed of the card.
    pub seed: u32,
    /// Shop sheet it was dealt on.
    pub sheet: SheetName,
    /// What was answered.
    pub answer: Answer,
    /// How far the person would have gone on it.
    pub certainty: Certainty,
    /// The mark it got.
    pub mark: Mark,
    /// Chance to answer the card right by luck, 0 to 1, as it was when it was answered; none where it is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub guess: Option<f64>,
    /// Seconds in which the card was looked at; none where time must not count.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub active_seconds: Option<u32>,
    /// Help that was used.
    #[serde(default = "no_help")]
    pub help: Help,
    /// What it was part of.
    #[serde(default)]
    pub within: Within,
}

impl Entry {
    /// Whether it was wrong and would have been done on the job. Whoever says that not enough is told does nothing to
    /// the work.
    #[must_use]
    pub fn sure_and_wrong(&self) -> bool {
        self.mark != Mark::Right && self.certainty == Certainty::OnTheJob && self.answer != Answer::NotEnough
    }

    /// Whether the entry answers that card.
    #[must_use]
    pub fn is_of(&self, card: &Card) -> bool {
        self.family == card.family
            && self.version == card.version
            && self.seed == card.seed
            && self.sheet.hash == card.sheet
    }
}
