//! Scenario sets that travel: what somebody else is to be asked, on which shop sheet, and when it is passed.
//!
//! A set is never changed; whoever edits it makes another one. It is named by what is in it ([`Set::id`]), and it carries the
//! sheet that it is dealt on, so that a card of it is the same on every tablet.

mod check;
mod counts;
mod deal;
mod kept_back;
mod outcome;
mod own_card;
mod ready;
mod validity;
mod warning;
mod withdrawal;

pub use counts::{CountsNot, counts_for, counts_not};
pub use deal::{SetCard, cards, cards_on_paper, is_all_sprayed};
pub use kept_back::Asker;
pub use outcome::{Outcome, outcome};
pub use own_card::{NotComputed, OPTION_MOST, OWN_CARD, OWN_OPTIONS, OwnCard, QUESTION_MOST, WHY_MOST};
pub use validity::Validity;
pub use warning::{MINUTES_MOST, Warned, Warning, minutes_of, warnings};
pub use withdrawal::{WITHDRAWAL, Withdrawal};

use super::{CarriedSheet, Kind, Refused, content_name, read, write};
use crate::content::{Content, Task};
use crate::record::LocalDate;
use crate::rules::sheet::Sheet;
use serde::{Deserialize, Serialize};

/// The file of a set. The largest own sheet has some 6 kB, twenty own cards of the longest texts in any script some 200.
pub const SET: Kind = Kind { format: "stepboard-set", version: 1, most: 256 * 1024 };

/// Cards of the shop's own in a set, at most. Our own limit.
pub const OWN_CARDS_MOST: usize = 20;

/// A scenario set.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Set {
    /// What it is called.
    pub title: String,
    /// What the apprentice is told before the first card; may be empty.
    #[serde(default)]
    pub note: String,
    /// Who made it: name and shop number; empty for a set that ships.
    pub by: String,
    /// When it was made, as ISO 8601 text in universal time; empty for a set that ships.
    pub at: String,
    /// The shop sheet.
    pub sheet: CarriedSheet,
    /// What it asks.
    pub task: Task,
    /// The first local day on which it may be begun; none: from now.
    #[serde(default)]
    pub from: Option<LocalDate>,
    /// The last local day on which it may be begun; none: for ever.
    #[serde(default)]
    pub until: Option<LocalDate>,
    /// Cards of the shop's own, behind those that are dealt.
    #[serde(default)]
    pub own_cards: Vec<OwnCard>,
}

impl Set {
    /// Reads the file of a set and checks it.
    ///
    /// # Errors
    /// [`Refused`].
    pub fn read(bytes: &[u8], content: &Content) -> Result<Self, Refused> {
        let set: Self = read(bytes, SET)?;
        set.check(content)?;
        Ok(set)
    }

    /// The text of its file.
    ///
    /// # Errors
    /// [`Refused::Form`] for what JSON cannot say; nothing that passes [`Set::check`] is such a thing.
    pub fn write(&self) -> Result<String, Refused> {
        write(self, SET)
    }

    /// Its name by what is in it: `set-` and 32 hexadecimal digits. A file that is laid out otherwise is the same set.
    #[must_use]
    pub fn id(&self) -> String {
        let text = self.write().unwrap_or_default();
        let name = content_name(SET, text.as_bytes());
        name.trim_start_matches("stepboard-").trim_end_matches(".json").to_owned()
    }

    /// The values that it is dealt on.
    ///
    /// # Errors
    /// [`Refused::Value`]: the sheet is not known here, or has other values here.
    pub fn sheet_of(&self, content: &Content) -> Result<Sheet, Refused> {
        self.sheet.sheet(content)
    }

    /// How many cards it has: those that are dealt and the shop's own.
    #[must_use]
    pub fn count(&self) -> u32 {
        self.task.count.saturating_add(self.own_count())
    }

    fn own_count(&self) -> u32 {
        u32::try_from(self.own_cards.len()).unwrap_or(u32::MAX)
    }
}
