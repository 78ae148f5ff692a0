//! A job ticket that an instructor hands out: which job somebody walks, how, and on which edition of the shop sheet.
//!
//! It is a file of its own and no part of a scenario set: a set deals cards, is passed by a rule and is kept on the tablet;
//! a ticket begins one walk and is done with. So it is small enough for a square code that any camera reads.

use crate::content::Content;
use crate::exchange::fit::{line, moment};
use crate::exchange::{CarriedSheet, Kind, NAME_MOST, NOTE_MOST, Refused, read, write};
use crate::record::LocalDate;
use crate::rules::sheet::Sheet;
use crate::walk::Mode;
use serde::{Deserialize, Serialize};

/// The file of a job ticket. The largest own sheet has some 6 kB.
pub const TICKET: Kind = Kind { format: "stepboard-ticket", version: 1, most: 64 * 1024 };

/// A job ticket that is handed out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JobTicket {
    /// Slug of the walk.
    pub walk: String,
    /// How it is to be walked.
    pub mode: Mode,
    /// The number that chance comes from, where everybody gets the same wood and the same mistakes; none: each their own.
    #[serde(default)]
    pub seed: Option<u32>,
    /// The shop sheet that it is worked on: the one of the walk, or an edition of the shop's own made from it.
    pub sheet: CarriedSheet,
    /// What is told before it is begun; may be empty.
    #[serde(default)]
    pub note: String,
    /// Who hands it out: name and shop number; empty where nobody is named.
    #[serde(default)]
    pub by: String,
    /// When it was made, as ISO 8601 text in universal time.
    pub at: String,
    /// The last local day on which it may be begun; none: for ever.
    #[serde(default)]
    pub until: Option<LocalDate>,
}

impl JobTicket {
    /// Reads the file of a ticket and checks it.
    ///
    /// # Errors
    /// [`Refused`].
    pub fn read(bytes: &[u8], content: &Content) -> Result<Self, Refused> {
        let ticket: Self = read(bytes, TICKET)?;
        ticket.check(content)?;
        Ok(ticket)
    }

    /// The text of its file.
    ///
    /// # Errors
    /// [`Refused::Form`] for what JSON cannot say; no ticket is such a thing.
    pub fn write(&self) -> Result<String, Refused> {
        write(self, TICKET)
    }

    /// Checks all of it and gives the values of its sheet.
    ///
    /// # Errors
    /// [`Refused::Value`] naming the first value that is not allowed.
    pub fn check(&self, content: &Content) -> Result<Sheet, Refused> {
        let Some(info) = content.walk(&self.walk) else {
            let known: Vec<&str> = content.walks.iter().map(|walk| walk.slug.as_str()).collect();
            return Err(Refused::value("walk", &self.walk, format!("{} are known", known.join(", "))));
        };
        line("note", &self.note, NOTE_MOST, true)?;
        line("by", &self.by, NAME_MOST, true)?;
        moment("at", &self.at)?;
        let sheet = self.sheet.sheet(content)?;
        let (place, base) = match &self.sheet {
            CarriedSheet::Ships(name) => ("sheet.ships.slug", &name.slug),
            CarriedSheet::Own(own) => ("sheet.own.base", &own.base),
        };
        if *base != info.ticket.sheet {
            return Err(Refused::value(
                place,
                base,
                format!("`{}` is worked on `{}`", info.slug, info.ticket.sheet),
            ));
        }
        Ok(sheet)
    }

    /// Whether its last day is over on that local day; where the clock tells none, it is not.
    #[must_use]
    pub fn is_over(&self, today: Option<LocalDate>) -> bool {
        self.until.zip(today).is_some_and(|(until, today)| today > until)
    }
}
