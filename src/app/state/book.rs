//! The journal in memory, and whether it is stored.

use super::{Keep, OnDesk, Shared};
use crate::learn::Followed;
use crate::record::{Erased, Event, Journal};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// Whether everything handed in is stored.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum Saved {
    /// All of it.
    Yes,
    /// A write is under way.
    Busy,
    /// A write failed; the answers are here and not stored.
    Failed,
}

/// The journal with the answers that are not stored yet.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Book {
    pub(in crate::app) journal: Shared<Journal>,
    pub(in crate::app) saved: Saved,
    /// The first number that was free when the page was opened: events from it on were handed in since.
    pub(in crate::app) opened_at: u64,
    /// Whether the journal was read. Until then it is empty, and no screen is there that would write into it.
    pub(in crate::app) read: bool,
}

/// What happens to the book.
#[derive(Debug)]
pub(in crate::app) enum BookChange {
    /// The journal was read.
    Read(Journal),
    /// An event was handed in; its write is under way.
    HandedIn(Event),
    /// Another window added answers: the whole journal, with what waits here numbered anew.
    Reloaded(Journal),
    /// Another window has stored something since: the journal as it is stored.
    CaughtUp(Journal),
    /// An event that belongs to no card was stored.
    Written(Event),
    /// Events were erased.
    Erased(Erased),
    /// A write is tried again.
    Trying,
    /// How a write ended.
    Ended(bool),
}

impl Book {
    /// What is stored, and nothing waiting; none where it is still to be read.
    pub(in crate::app) fn new(journal: Option<Journal>) -> Self {
        let read = journal.is_some();
        let journal = journal.unwrap_or_default();
        let opened_at = journal.next_sequence();
        Self { journal: Shared::new(journal), saved: Saved::Yes, opened_at, read }
    }
}

impl Reducible for Book {
    type Action = BookChange;

    fn reduce(self: Rc<Self>, change: BookChange) -> Rc<Self> {
        // Screens hold the journal as it was.
        let journal = || Journal::clone(&self.journal);
        let (journal, saved) = match change {
            BookChange::Read(journal) => return Rc::new(Self::new(Some(journal))),
            BookChange::HandedIn(event) => (Shared::new(journal().with(event)), Saved::Busy),
            BookChange::Reloaded(journal) => (Shared::new(journal), Saved::Busy),
            BookChange::CaughtUp(stored) => (Shared::new(journal().caught_up(stored)), self.saved),
            BookChange::Written(event) => (Shared::new(journal().with(event)), self.saved),
            BookChange::Erased(erased) => (Shared::new(journal().after(erased)), self.saved),
            BookChange::Trying => (self.journal.clone(), Saved::Busy),
            BookChange::Ended(well) => (self.journal.clone(), if well { Saved::Yes } else { Saved::Failed }),
        };
        Rc::new(Self { journal, saved, opened_at: self.opened_at, read: self.read })
    }
}

/// The book as the screens see it.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct BookContext {
    pub(in crate::app) book: Rc<Book>,
    /// The answers of whoever was asked about last, as far as they were followed.
    pub(in crate::app) followed: Shared<RefCell<Followed>>,
    /// Hands an event in together with what it leaves on the desk. It gets its number here.
    pub(in crate::app) hand_in: Callback<(Event, OnDesk)>,
    /// Writes an event that belongs to no card.
    pub(in crate::app) write: Callback<Keep<Event>>,
    /// Tries again to store what is not stored.
    pub(in crate::app) retry: Callback<()>,
    /// Reads what other windows have stored since; then says the next free number of what is stored, or none where that cannot be
    /// read.
    pub(in crate::app) catch_up: Callback<Callback<Option<u64>>>,
    /// Erases the events of a person, and what lies on the desk or waits of them.
    pub(in crate::app) erase: Callback<(String, Keep<Erased>)>,
}
