//! Everything that this tablet knows of one person, as a file for them.

use super::Member;
use crate::record::{Event, Journal};
use crate::signoff::{Book, Entry};
use serde_json::{Value, json};

/// What the file calls itself.
pub const FILE_FORMAT: &str = "stepboard-person";
/// Its version.
pub const FILE_VERSION: u32 = 1;

/// The file: number and name, all events about them, all sign-offs that were given to their number.
#[must_use]
pub fn told(member: &Member, journal: &Journal, book: Option<&Book>) -> Value {
    let events = journal.events().iter().filter(|event| event.stamp().person == member.journal);
    let events: Vec<&Event> = events.collect();
    let theirs = |book: &'_ Book| {
        let of = |entry: &&Entry| entry.credential.subject == member.number;
        book.sign_offs().iter().filter(of).filter_map(|entry| book.file(entry).cloned()).collect()
    };
    let sign_offs: Vec<_> = book.map(theirs).unwrap_or_default();
    json!({
        "format": FILE_FORMAT, "version": FILE_VERSION,
        "number": member.number, "name": member.name,
        "events": events, "sign_offs": sign_offs,
    })
}
