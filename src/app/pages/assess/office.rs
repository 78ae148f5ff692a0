//! What the screens of assessors share: who assesses, and the stamp of what is written down.

use crate::app::state::{KeysContext, Shop};
use crate::people::Member;
use crate::record::{AssessorName, Journal, Stamp};

/// Whoever has opened a key, as it stands on what they write down.
pub(super) fn assessor(keys: &KeysContext) -> Option<AssessorName> {
    let person = &keys.open.as_ref()?.person;
    Some(AssessorName { number: person.number.to_string(), name: person.name.clone() })
}

/// The stamp of an event about an apprentice, now.
pub(super) fn stamp(shop: &Shop, journal: &Journal, member: &Member) -> Stamp {
    Stamp { sequence: journal.next_sequence(), ..shop.stamp(&member.journal) }
}
