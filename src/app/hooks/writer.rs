//! Stores what was handed in, oldest first, and says how it ended.

use crate::app::state::{Book, BookChange, Desk, DeskChange, Keep, OnDesk};
use crate::device::{Slices, Store};
use crate::record::Event;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// What is not stored yet.
#[derive(Debug, Default)]
pub(super) struct Waiting {
    /// Events, each with what it leaves on the desk.
    events: Vec<(Event, OnDesk)>,
    /// Whether they are being written: one after another, each once.
    writing: bool,
}

impl Waiting {
    /// Lets go of what waits of a person.
    pub(super) fn forget(&mut self, person: &str) {
        self.events.retain(|(event, _)| event.stamp().person != person);
    }

    pub(super) fn push(&mut self, event: Event, left: OnDesk) {
        self.events.push((event, left));
    }
}

pub(super) fn write(
    store: Store,
    waiting: Rc<RefCell<Waiting>>,
    book: UseReducerDispatcher<Book>,
    desk: UseReducerDispatcher<Desk>,
) {
    // Whoever writes already writes these too; a second one beside would store the same event under two numbers.
    if std::mem::replace(&mut waiting.borrow_mut().writing, true) {
        return;
    }
    spawn_local(async move {
        loop {
            let Some((event, left)) = waiting.borrow().events.first().cloned() else { break };
            if store.add(&event, left.after()).await.is_ok() {
                waiting
                    .borrow_mut()
                    .events
                    .retain(|(other, _)| other.stamp().sequence != event.stamp().sequence);
            } else if !make_room(&store, &waiting, &book, &desk).await {
                waiting.borrow_mut().writing = false;
                book.dispatch(BookChange::Ended(false));
                return;
            }
        }
        waiting.borrow_mut().writing = false;
        book.dispatch(BookChange::Ended(true));
    });
}

/// Another window, or an event that cannot be read, may have taken the number: what waits gets the next free ones. False
/// where that was not the trouble.
async fn make_room(
    store: &Store,
    waiting: &Rc<RefCell<Waiting>>,
    book: &UseReducerDispatcher<Book>,
    desk: &UseReducerDispatcher<Desk>,
) -> bool {
    let Ok(mut journal) = store.journal(&mut Slices::begin()).await else { return false };
    let first = waiting.borrow().events.first().map(|(event, _)| event.stamp().sequence);
    if first.is_none_or(|sequence| !journal.has(sequence)) {
        return false;
    }
    // That window may have written down the same of a walk.
    let is_told = |event: &Event| event.walked().is_some_and(|walked| walked.is_told_by(journal.events()));
    waiting.borrow_mut().events.retain(|(event, _)| !is_told(event));
    for (event, left) in waiting.borrow_mut().events.iter_mut() {
        let (from, to) = (event.stamp().sequence, journal.next_sequence());
        event.stamp_mut().sequence = to;
        if let OnDesk::Handed(draft) = left {
            draft.handed = Some(to);
        }
        journal = journal.with(event.clone());
        desk.dispatch(DeskChange::Renumbered { from, to });
    }
    book.dispatch(BookChange::Reloaded(journal));
    true
}

/// Stores an event that belongs to no card, and says whether it did. What is not stored has not happened. Its number is the
/// next free one by then.
pub(super) fn write_alone(store: Store, kept: Keep<Event>, book: UseReducerDispatcher<Book>) {
    let Keep { what: mut event, done } = kept;
    spawn_local(async move {
        let mut stored = store.add(&event, None).await.is_ok();
        if !stored && let Ok(journal) = store.journal(&mut Slices::begin()).await {
            // Another window, or an answer handed in meanwhile, may have taken the number.
            let next = journal.next_sequence();
            if journal.has(event.stamp().sequence) {
                event.stamp_mut().sequence = next;
                stored = store.add(&event, None).await.is_ok();
                // A journal that lacks what that window stored would never hand it in, and count without it.
                book.dispatch(BookChange::CaughtUp(journal));
            }
        }
        if stored {
            book.dispatch(BookChange::Written(event));
        }
        done.emit(stored);
    });
}

/// Reads what other windows have stored since the journal that ends before a number, and says the next free number of what is
/// stored.
pub(super) fn catch_up(
    store: Store,
    known: u64,
    book: UseReducerDispatcher<Book>,
    done: Callback<Option<u64>>,
) {
    spawn_local(async move {
        let next = store.next().await.ok().flatten();
        if next.is_some_and(|next| next > known)
            && let Ok(journal) = store.journal(&mut Slices::begin()).await
        {
            book.dispatch(BookChange::CaughtUp(journal));
        }
        done.emit(next);
    });
}
