//! Reads the journal while the page goes on, and keeps what the first screen shows of it for the next start.

use super::told::now;
use crate::app::state::{Book, BookChange, BookContext, ContentContext, Saved, Settings, Shared};
use crate::content::Content;
use crate::device::{Slices, Store, clock, once_drawn, rest};
use crate::learn::check::Sealed;
use crate::learn::{Followed, Front};
use crate::record::Journal;
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// Numbers up to which a journal is read before anything is drawn: it takes no longer than a slice.
const SHORT: u64 = 1_000;
/// Events that are followed at once.
const PART: usize = 1_000;

/// Whether a journal that ends before that number is read before anything is drawn.
pub(in crate::app) fn is_short(next: Option<u64>) -> bool {
    next.is_some_and(|next| next <= SHORT)
}

/// Reads the journal once the first screen is drawn, and follows the answers of whoever works.
pub(super) fn read_behind(
    store: Store,
    (content, person): (ContentContext, String),
    followed: Shared<RefCell<Followed>>,
    book: UseReducerDispatcher<Book>,
) {
    once_drawn(async move |mut slices| {
        // Some kinds of answers are read by the rest of the program.
        rest::there().await;
        // A journal that cannot be read is not an empty one: it is asked for until it can.
        let Ok(journal) = store.journal(&mut slices).await else {
            return read_behind(store, (content, person), followed, book);
        };
        follow(&content.0, &journal, &person, &followed, &mut slices).await;
        clock::mark_once("read");
        book.dispatch(BookChange::Read(journal));
    });
}

async fn follow(
    content: &Content,
    journal: &Journal,
    person: &str,
    followed: &RefCell<Followed>,
    slices: &mut Slices,
) {
    let events = journal.events();
    let sealed = Sealed::of(content, events, now());
    for end in (0..events.len()).step_by(PART) {
        let so_far = followed.take().on(events.get(..end).unwrap_or_default(), person, &sealed);
        followed.replace(so_far);
        slices.rest().await;
    }
}

/// Keeps what the first screen shows of a journal that is not short, each time it is stored with something more.
#[hook]
pub(in crate::app) fn use_kept_front(
    store: &Store,
    content: &ContentContext,
    settings: &Rc<Settings>,
    books: &BookContext,
) {
    let book = &books.book;
    let whole = book.read && book.saved == Saved::Yes && !is_short(Some(book.journal.next_sequence()));
    let of = (whole.then(|| book.journal.clone()), content.clone(), Rc::clone(settings));
    let (store, followed) = (store.clone(), books.followed.clone());
    use_effect_with(of, move |(journal, content, settings)| {
        let (content, settings) = (content.clone(), Rc::clone(settings));
        if let Some(journal) = journal.clone() {
            once_drawn(async move |_| {
                let sealed = Sealed::of(&content.0, journal.events(), now());
                let on = followed.take().on(journal.events(), &settings.person, &sealed);
                let front = Front::of(&journal, &settings.person, &settings.device, on.known());
                followed.replace(on);
                if let Some(front) = front {
                    // Where it is not stored, the next start takes longer.
                    drop(store.put_front(&front).await);
                }
            });
        }
    });
}
