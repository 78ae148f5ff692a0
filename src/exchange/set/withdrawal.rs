//! A set withdrawn by who made it: a small file of its own, so that it can follow the set wherever that went.

use super::Set;
use crate::exchange::fit::{line, moment};
use crate::exchange::{Kind, NAME_MOST, NOTE_MOST, Refused, read, write};
use serde::{Deserialize, Serialize};

/// The file of a withdrawal.
pub const WITHDRAWAL: Kind = Kind { format: "stepboard-withdrawal", version: 1, most: 4 * 1024 };
/// Characters of a set's id: `set-` and 32 hexadecimal digits.
const ID_CHARACTERS: usize = 36;

/// A set withdrawn.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Withdrawal {
    /// Id of the set.
    pub set: String,
    /// Who made the set and withdraws it; by anybody else it means nothing.
    pub by: String,
    /// When, as ISO 8601 text in universal time.
    pub at: String,
    /// Why; may be empty.
    #[serde(default)]
    pub reason: String,
}

impl Withdrawal {
    /// Reads the file of a withdrawal and checks it.
    ///
    /// # Errors
    /// [`Refused`].
    pub fn read(bytes: &[u8]) -> Result<Self, Refused> {
        let withdrawal: Self = read(bytes, WITHDRAWAL)?;
        let digits = withdrawal.set.strip_prefix("set-").unwrap_or_default();
        let hexadecimal = digits.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
        if withdrawal.set.len() != ID_CHARACTERS || !hexadecimal {
            let allowed = "`set-` and 32 of the digits 0 to 9 and a to f";
            return Err(Refused::value("set", &withdrawal.set, allowed));
        }
        line("by", &withdrawal.by, NAME_MOST, false)?;
        line("reason", &withdrawal.reason, NOTE_MOST, true)?;
        moment("at", &withdrawal.at)?;
        Ok(withdrawal)
    }

    /// The text of its file.
    ///
    /// # Errors
    /// [`Refused::Form`] for what JSON cannot say; no text is such a thing.
    pub fn write(&self) -> Result<String, Refused> {
        write(self, WITHDRAWAL)
    }

    /// Whether it withdraws that set, whose id is told.
    #[must_use]
    pub fn withdraws(&self, id: &str, set: &Set) -> bool {
        self.set == id && self.by == set.by
    }
}
