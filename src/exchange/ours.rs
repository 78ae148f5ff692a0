//! A file of ours of any kind: what it says of itself decides how it is read.

use super::said::{Said, said};
use super::set::{SET, Set, WITHDRAWAL, Withdrawal};
use super::{JobTicket, Kind, OwnSheet, RESULTS, Reading, Refused, SHEET, TICKET, WALK, WalkFile, read};
use crate::content::Content;

/// The kinds of files that can be opened. Results stand last: they alone may be large.
pub const KINDS: [Kind; 6] = [SHEET, SET, WITHDRAWAL, WALK, TICKET, RESULTS];

/// A file that was read and checked.
#[derive(Debug)]
pub enum Ours {
    /// A shop sheet.
    Sheet(Box<OwnSheet>),
    /// A scenario set.
    Set(Box<Set>),
    /// A set withdrawn.
    Withdrawal(Withdrawal),
    /// A walk of somebody.
    Walk(Box<WalkFile>),
    /// A job ticket.
    Ticket(Box<JobTicket>),
    /// The results of a tablet, begun to be read.
    Results(Box<Reading>),
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
        let format = match said(bytes)? {
            Said::Format(format) => format,
            Said::Events => RESULTS.format.to_owned(),
            Said::Nothing(first) => return Err(Refused::NotOurs { found: first }),
        };
        match KINDS.into_iter().find(|kind| kind.format == format) {
            Some(SHEET) => {
                let sheet: OwnSheet = read(bytes, SHEET)?;
                sheet.sheet(content)?;
                Ok(Self::Sheet(Box::new(sheet)))
            }
            Some(SET) => Set::read(bytes, content).map(|set| Self::Set(Box::new(set))),
            Some(WITHDRAWAL) => Withdrawal::read(bytes).map(Self::Withdrawal),
            Some(WALK) => WalkFile::read(bytes, content).map(|walk| Self::Walk(Box::new(walk))),
            Some(TICKET) => JobTicket::read(bytes, content).map(|ticket| Self::Ticket(Box::new(ticket))),
            Some(_) => Reading::begin(bytes).map(|results| Self::Results(Box::new(results))),
            None => Err(Refused::NotOurs { found: Refused::short(&format) }),
        }
    }
}

/// What files that can be opened call themselves.
pub(super) fn formats() -> String {
    KINDS.map(|kind| kind.format).join(", ")
}
