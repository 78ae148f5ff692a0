//! The draft of what will be signed, from what stands behind it and what was typed.

use super::until;
use crate::app::state::{Shop, Unlocked};
use crate::device::page;
use crate::people::{Own, Signing, Source};
use crate::signoff::{Barred, Book, Draft, NotSigned, credential_id};

/// What whoever signs typed.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Typed {
    pub(super) reason: String,
    /// A day; empty for the latest that is allowed.
    pub(super) until: String,
}

/// # Errors
/// Everything that bars it.
pub(super) fn drafted(
    shop: &Shop,
    signing: &Signing<'_>,
    source: &Source<'_>,
    typed: &Typed,
    (book, open): (&Book, &Unlocked),
) -> Result<Draft, NotSigned> {
    // Without random bytes no name; a book that has it already refuses a second of that name.
    let id = credential_id(page::random_bytes::<16>().unwrap_or_default());
    let latest = until::latest(signing, source).ok_or(NotSigned::from(Barred::ValidTooLong))?;
    let until = until::until(&typed.until, &latest).ok_or(NotSigned::from(Barred::ValidTooLong))?;
    let (at, today) = (source.now.clone(), source.today);
    let own = Own { id, at, today, until, reason: typed.reason.clone() };
    Draft::new(signing.request(own, shop.texts()), book.list(), &open.key.public())
}
