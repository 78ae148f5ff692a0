//! A file of ours of any kind: what it says of itself decides how it is read.

use super::set::{SET, Set, WITHDRAWAL, Withdrawal};
use super::{Kind, OwnSheet, RESULTS, Reading, Refused, SHEET, read};
use crate::content::Content;
use serde::Deserialize;

/// The kinds of files that can be opened. Results stand last: they alone may be large.
pub const KINDS: [Kind; 4] = [SHEET, SET, WITHDRAWAL, RESULTS];

/// Bytes of which the beginning of a file that is none of ours is told.
const FIRST: usize = 240;

/// A file that was read and checked.
#[derive(Debug)]
pub enum Ours {
    /// A shop sheet.
    Sheet(Box<OwnSheet>),
    /// A scenario set.
    Set(Box<Set>),
    /// A set withdrawn.
    Withdrawal(Withdrawal),
    /// The results of a tablet, begun to be read.
    Results(Box<Reading>),
}

/// What every file of ours says of itself; the rest is not looked at.
#[derive(Deserialize)]
struct Says {
    format: String,
}

impl Ours {
    /// Bytes of the largest file that can be opened.
    pub const MOST: usize = RESULTS.most;

    /// Reads a file whose kind is not known beforehand.
    ///
    /// # Errors
    /// [`Refused`]: no such JSON, none of the kinds, or what is wrong with a file of its kind.
    pub fn read(bytes: &[u8], content: &Content) -> Result<Self, Refused> {
        if bytes.len() > Self::MOST {
            return Err(Refused::TooLarge { bytes: bytes.len(), most: Self::MOST });
        }
        let format = if begins(bytes, b"[{") { RESULTS.format.to_owned() } else { format_of(bytes)? };
        match KINDS.into_iter().find(|kind| kind.format == format) {
            Some(SHEET) => {
                let sheet: OwnSheet = read(bytes, SHEET)?;
                sheet.sheet(content)?;
                Ok(Self::Sheet(Box::new(sheet)))
            }
            Some(SET) => Set::read(bytes, content).map(|set| Self::Set(Box::new(set))),
            Some(WITHDRAWAL) => Withdrawal::read(bytes).map(Self::Withdrawal),
            Some(_) => Reading::begin(bytes).map(|results| Self::Results(Box::new(results))),
            None => Err(Refused::NotOurs { found: Refused::short(&format) }),
        }
    }
}

/// What a file calls itself. One that does not begin as JSON, or calls itself nothing, is none of ours; one that cannot be read
/// further on is a damaged one.
fn format_of(bytes: &[u8]) -> Result<String, Refused> {
    serde_json::from_slice(bytes).map(|says: Says| says.format).map_err(|error| {
        if error.is_data() || !bytes.is_empty() && !begins(bytes, b"{") {
            let first = bytes.get(..FIRST).unwrap_or(bytes);
            return Refused::NotOurs { found: Refused::short(String::from_utf8_lossy(first).trim()) };
        }
        error.into()
    })
}

/// Whether a text begins so, white space left out. Results from before they were a file are a bare list of events.
fn begins(bytes: &[u8], first: &[u8]) -> bool {
    bytes.iter().filter(|byte| !byte.is_ascii_whitespace()).take(first.len()).eq(first)
}

/// What files that can be opened call themselves.
pub(super) fn formats() -> String {
    KINDS.map(|kind| kind.format).join(", ")
}
