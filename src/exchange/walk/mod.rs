//! A walk as a file: whoever opens it walks it again, decision for decision, on its own shop sheet.
//!
//! Nothing that is shown of it is told by the file: the model works it out anew. What it came to where it was walked stands in
//! it ([`Came`]), and where something else comes of it here it is refused rather than shown otherwise.

mod check;
mod ticket;

pub use check::not_kept;
pub use ticket::{JobTicket, TICKET};

use super::{CarriedSheet, Editions, Kind, Named, Refused, read, write};
use crate::content::Content;
use crate::record::plain;
use crate::walk::{Came, Decision, Kept, Mode, Saved, Walk};
use serde::{Deserialize, Serialize};

/// The file of a walk. A job takes some 60 decisions of 150 bytes; the most that a walk takes are 2,000.
pub const WALK: Kind = Kind { format: "stepboard-walk", version: 1, most: 512 * 1024 };

/// A walk that travels.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WalkFile {
    /// Who walked it; its texts are empty where nobody was named.
    pub who: Named,
    /// When it was begun, as ISO 8601 text in universal time.
    pub begun: String,
    /// When the file was made.
    pub at: String,
    /// Slug of the walk.
    pub walk: String,
    /// How it is walked.
    pub mode: Mode,
    /// The number that chance came from.
    pub seed: u32,
    /// The shop sheet that it is worked on.
    pub sheet: CarriedSheet,
    /// The decisions, in order.
    pub decisions: Vec<Decision>,
    /// Of somebody else's walk that is inspected: the turns that were named, from 0, each with the id of a rule.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub named: Vec<(usize, String)>,
    /// Whether what was named was graded.
    #[serde(default)]
    pub graded: bool,
    /// What it came to where it was walked.
    pub came: Came,
}

impl WalkFile {
    /// A walk of this tablet as a file; `who` walked it, `at` is now.
    ///
    /// # Errors
    /// [`Refused::Value`] where it cannot be walked again on this tablet.
    pub fn of(
        kept: &Kept,
        who: Named,
        at: &str,
        editions: &Editions,
        content: &Content,
    ) -> Result<Self, Refused> {
        let Saved { walk, mode, seed, sheet, decisions } = kept.saved.clone();
        let walked = kept.saved.replay(content).map_err(|not| not_kept(&not, content))?;
        let who = Named { journal: plain(&who.journal), number: plain(&who.number), name: plain(&who.name) };
        Ok(Self {
            who,
            begun: kept.begun.clone(),
            at: at.to_owned(),
            walk,
            mode,
            seed,
            sheet: CarriedSheet::named(sheet, editions),
            decisions,
            named: kept.named.clone(),
            graded: kept.graded,
            came: Came::of(&walked),
        })
    }

    /// Reads the file of a walk and checks all of it, walking it again.
    ///
    /// # Errors
    /// [`Refused`]; a decision is told by its place from 0: `decisions.17`.
    pub fn read(bytes: &[u8], content: &Content) -> Result<Self, Refused> {
        let file: Self = read(bytes, WALK)?;
        file.check(content)?;
        Ok(file)
    }

    /// The text of the file.
    ///
    /// # Errors
    /// [`Refused::Form`] for what JSON cannot say; nothing that was read is such a thing.
    pub fn write(&self) -> Result<String, Refused> {
        write(self, WALK)
    }

    /// What it takes to walk it again.
    #[must_use]
    pub fn saved(&self) -> Saved {
        Saved {
            walk: self.walk.clone(),
            mode: self.mode,
            seed: self.seed,
            sheet: self.sheet.name(),
            decisions: self.decisions.clone(),
        }
    }

    /// The walk, walked again.
    ///
    /// # Errors
    /// [`Refused`]: a sheet or a decision that is not possible here, or something else comes of it here.
    pub fn walked(&self, content: &Content) -> Result<Walk, Refused> {
        self.sheet.sheet(content)?;
        let known = self.sheet.known_in(content);
        let walk = self.saved().replay(&known).map_err(|not| not_kept(&not, content))?;
        let here = Came::of(&walk);
        if here == self.came { Ok(walk) } else { Err(Refused::Otherwise { said: self.came.clone(), here }) }
    }

    /// Whether what has not come to light is told on no screen: whoever walks it could look there. So it is with a walk on
    /// one's own before it is handed over, and with somebody else's walk before it is graded. The command tells all of it.
    #[must_use]
    pub fn is_sealed(&self) -> bool {
        match self.mode {
            Mode::Guided => false,
            Mode::Own => self.decisions.last() != Some(&Decision::HandOver),
            Mode::Inspect => !self.graded,
        }
    }
}
