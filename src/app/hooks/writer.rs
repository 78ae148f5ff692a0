//! Stores what was handed in, oldest first, and says how it ended.

use crate::app::state::{Book, BookChange, Desk, DeskChange, Settings};
use crate::device::Store;
use crate::record::{Draft, Entry, Journal};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Answers handed in and not stored yet, each with its card.
pub(super) type Waiting = Vec<(Entry, Draft)>;

pub(super) fn write(
    store: Store,
    waiting: Rc<RefCell<Waiting>>,
    book: UseReducerDispatcher<Book>,
    desk: UseReducerDispatcher<Desk>,
) {
    spawn_local(async move {
        loop {
            let Some((entry, draft)) = waiting.borrow().first().cloned() else { break };
            if store.add(&entry, Some(&draft)).await.is_ok() {
                waiting.borrow_mut().retain(|(other, _)| other.sequence != entry.sequence);
            } else if !make_room(&store, &waiting, &book, &desk).await {
                book.dispatch(BookChange::Ended(false));
                return;
            }
        }
        book.dispatch(BookChange::Ended(true));
    });
}

/// Another window may have taken the number: what waits gets the next free ones. False where that was not the trouble.
async fn make_room(
    store: &Store,
    waiting: &Rc<RefCell<Waiting>>,
    book: &UseReducerDispatcher<Book>,
    desk: &UseReducerDispatcher<Desk>,
) -> bool {
    let Ok(loaded) = store.load::<Settings>().await else { return false };
    let mut journal = Journal::new(loaded.entries);
    let first = waiting.borrow().first().map(|(entry, _)| entry.sequence);
    if first.is_none_or(|sequence| journal.find(sequence).is_none()) {
        return false;
    }
    for (entry, draft) in waiting.borrow_mut().iter_mut() {
        let (from, to) = (entry.sequence, journal.next_sequence());
        entry.sequence = to;
        draft.handed = Some(to);
        journal = journal.with(entry.clone());
        desk.dispatch(DeskChange::Renumbered { from, to });
    }
    book.dispatch(BookChange::Reloaded(journal));
    true
}
