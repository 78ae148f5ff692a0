//! A walk kept: what it takes to walk it again, and why a file that holds one is refused.

use super::decision::Decision;
use super::impossible::Impossible;
use super::start::Start;
use super::story::Walk;
use crate::content::Content;
use crate::record::SheetName;
use crate::terms;
use serde::{Deserialize, Serialize};

terms! {
    /// How a walk is walked. Text: `walk.mode.<slug>`.
    Mode {
        /// Told before an operation what it will spoil; one can go back.
        Guided = "guided",
        /// Told nothing before: faults surface when they would.
        Own = "own",
        /// Somebody else's walk with mistakes planted in it.
        Inspect = "inspect",
    }
}

/// A walk as it is kept.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Saved {
    /// Slug of the walk.
    pub walk: String,
    /// How it is walked.
    pub mode: Mode,
    /// The number that chance came from.
    pub seed: u32,
    /// The shop sheet that it is worked on, by its slug and the hash of its values.
    pub sheet: SheetName,
    /// The decisions, in order.
    pub decisions: Vec<Decision>,
}

/// Decisions in one walk, at most: our own limit, many times what a job takes.
pub const DECISIONS_MOST: usize = 2_000;

/// Why a kept walk cannot be walked again. Text: `walk.refused.<slug>`.
#[derive(Debug, Clone, PartialEq)]
pub enum NotKept {
    /// No such walk is known; the slugs that are.
    Walk(String, Vec<String>),
    /// The sheet is not known here, or has other values here; the slugs that are known.
    Sheet(SheetName, Vec<String>),
    /// A wood of its ticket is not known here.
    Wood,
    /// It has more decisions than a walk takes.
    TooLong(usize),
    /// A decision could not be carried out, by its place.
    Decision(usize, Box<Impossible>),
}

impl NotKept {
    /// The key of its text.
    #[must_use]
    pub const fn slug(&self) -> &'static str {
        match self {
            Self::Walk(..) => "walk",
            Self::Sheet(..) => "sheet",
            Self::Wood => "wood",
            Self::TooLong(_) => "too-long",
            Self::Decision(..) => "decision",
        }
    }

    /// Where in the file it stands.
    #[must_use]
    pub fn place(&self) -> String {
        match self {
            Self::Walk(..) | Self::Wood => "walk".to_owned(),
            Self::Sheet(..) => "sheet".to_owned(),
            Self::TooLong(_) => "decisions".to_owned(),
            Self::Decision(nth, _) => format!("decisions.{nth}"),
        }
    }
}

impl Saved {
    pub(super) fn of(walk: &Walk) -> Self {
        Self {
            walk: walk.start().info.slug.clone(),
            mode: walk.mode(),
            seed: walk.seed(),
            sheet: SheetName::of(&walk.start().sheet),
            decisions: walk.turns().iter().map(|turn| turn.decision.clone()).collect(),
        }
    }

    /// Walks it again.
    ///
    /// # Errors
    /// [`NotKept`] with what is wrong and where.
    pub fn replay(&self, content: &Content) -> Result<Walk, NotKept> {
        let slugs = |all: &mut dyn Iterator<Item = &String>| all.cloned().collect();
        let Some(info) = content.walk(&self.walk) else {
            let known = slugs(&mut content.walks.iter().map(|walk| &walk.slug));
            return Err(NotKept::Walk(self.walk.clone(), known));
        };
        let sheet = content.sheet(&self.sheet.slug).filter(|sheet| sheet.hash() == self.sheet.hash);
        let Some(sheet) = sheet else {
            let known = slugs(&mut content.sheets.iter().map(|sheet| &sheet.slug));
            return Err(NotKept::Sheet(self.sheet.clone(), known));
        };
        if self.decisions.len() > DECISIONS_MOST {
            return Err(NotKept::TooLong(self.decisions.len()));
        }
        let start = Start::of(info, sheet, content).map_err(|_| NotKept::Wood)?;
        let mut walk = Walk::begin(start, self.mode, self.seed);
        for (nth, decision) in self.decisions.iter().enumerate() {
            walk.decide(decision.clone(), content)
                .map_err(|impossible| NotKept::Decision(nth, impossible))?;
        }
        Ok(walk)
    }
}
