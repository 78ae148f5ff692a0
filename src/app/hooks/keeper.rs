//! Keeps settings, desk and journal: holds them in memory and stores every change.

use super::reading::read_behind;
use super::writer::{Waiting, catch_up, write, write_alone};
use crate::app::state::{
    Book, BookChange, BookContext, ContentContext, Desk, DeskChange, DeskContext, Keep, OnDesk, Saved,
};
use crate::app::state::{Settings, SettingsContext, Shared};
use crate::device::{Loaded, Shown, Spot, Store, page};
use crate::record::{Draft, Erased, Event, Journal};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// What is kept.
pub(in crate::app) struct Keeper {
    pub(in crate::app) settings: SettingsContext,
    pub(in crate::app) book: BookContext,
    pub(in crate::app) desk: DeskContext,
}

/// Keeps what was loaded when the page opened. Without a journal it is read behind the first screen.
#[hook]
pub(in crate::app) fn use_keeper(
    store: &Store,
    content: &ContentContext,
    loaded: &Loaded<Settings>,
    journal: Option<&Journal>,
    first: &Settings,
) -> Keeper {
    let settings = use_kept_settings(store, loaded.settings.as_ref().unwrap_or(first));
    let desk = use_reducer(|| Desk {
        practice: loaded.draft.clone().map(Rc::new),
        check: loaded.check_draft.clone().map(Rc::new),
    });
    let put = use_put(store, Spot::Practice, desk.dispatcher());
    let put_check = use_put(store, Spot::Check, desk.dispatcher());
    let reader = (content.clone(), settings.now.person.clone());
    let book = use_kept_book(store, journal, reader, desk.dispatcher());
    let (draft, check) = (desk.practice.clone(), desk.check.clone());
    Keeper { settings, book, desk: DeskContext { draft, check, put, put_check } }
}

#[hook]
fn use_put(store: &Store, spot: Spot, desk: UseReducerDispatcher<Desk>) -> Callback<Option<Draft>> {
    use_callback(store.clone(), move |draft: Option<Draft>, store| {
        let store = store.clone();
        desk.dispatch(DeskChange::Put(spot, draft.clone()));
        // What is handed in is stored with its answer; a half-made answer that is not stored is made again.
        spawn_local(async move { drop(store.put_draft(spot, draft.as_ref()).await) });
    })
}

#[hook]
fn use_kept_settings(store: &Store, first: &Settings) -> SettingsContext {
    let now = use_state(|| Rc::new(first.clone()));
    let change = use_callback(store.clone(), {
        let set = now.setter();
        move |settings: Settings, store| {
            let store = store.clone();
            set.set(Rc::new(settings.clone()));
            // A setting that is not stored is asked for again and harms no answer.
            spawn_local(async move { drop(store.put_settings(&settings).await) });
        }
    });
    SettingsContext { now: (*now).clone(), change }
}

#[hook]
fn use_kept_book(
    store: &Store,
    journal: Option<&Journal>,
    reader: (ContentContext, String),
    desk: UseReducerDispatcher<Desk>,
) -> BookContext {
    let book = use_reducer(|| Book::new(journal.cloned()));
    let followed = (*use_memo((), |()| Shared::new(RefCell::default()))).clone();
    use_effect_with((), {
        let (store, followed, book) = (store.clone(), followed.clone(), book.clone());
        move |()| {
            if !book.read {
                read_behind(store, reader, followed, book.dispatcher());
            }
        }
    });
    let waiting = use_mut_ref(Waiting::default);
    // The next free number, so that two events which are handed in at once get two.
    let free = use_mut_ref(|| 0_u64);
    {
        let mut free = free.borrow_mut();
        *free = (*free).max(book.journal.next_sequence());
    }
    let hand_in = use_callback(store.clone(), {
        let (book, desk, waiting) = (book.dispatcher(), desk.clone(), Rc::clone(&waiting));
        move |(mut event, mut left): (Event, OnDesk), store| {
            let number = free.replace_with(|free| free.saturating_add(1));
            event.stamp_mut().sequence = number;
            if let OnDesk::Handed(draft) = &mut left {
                draft.handed = Some(number);
            }
            if let Some((spot, draft)) = left.after() {
                desk.dispatch(DeskChange::Put(spot, draft.cloned()));
            }
            waiting.borrow_mut().push(event.clone(), left);
            book.dispatch(BookChange::HandedIn(event));
            write(store.clone(), Rc::clone(&waiting), book.clone(), desk.clone());
        }
    });
    let retry = use_callback(store.clone(), {
        let (book, desk, waiting) = (book.dispatcher(), desk.clone(), Rc::clone(&waiting));
        move |(), store| {
            book.dispatch(BookChange::Trying);
            write(store.clone(), Rc::clone(&waiting), book.clone(), desk.clone());
        }
    });
    let erase = use_callback(store.clone(), {
        let book = book.dispatcher();
        move |(person, Keep { what, done }): (String, Keep<Erased>), store| {
            let (store, book, desk) = (store.clone(), book.clone(), desk.clone());
            let waiting = Rc::clone(&waiting);
            spawn_local(async move {
                let stored = store.erase(&what, &person).await.is_ok();
                if stored {
                    waiting.borrow_mut().forget(&person);
                    desk.dispatch(DeskChange::Forget(person));
                    book.dispatch(BookChange::Erased(what));
                }
                done.emit(stored);
            });
        }
    });
    let alone = use_callback(store.clone(), {
        let book = book.dispatcher();
        move |kept: Keep<Event>, store| write_alone(store.clone(), kept, book.clone())
    });
    // The browser is asked to keep what is stored once something of this visit is: some put that question to the person.
    let something = book.read && book.saved == Saved::Yes && book.journal.next_sequence() > book.opened_at;
    use_effect_with(something, |something| {
        if *something {
            spawn_local(async {
                // The menu shows what it answered.
                let _ = page::ask_to_keep().await;
            });
        }
    });
    let catch_up = use_callback((store.clone(), book.read.then(|| book.journal.next_sequence())), {
        let book = book.dispatcher();
        move |done: Callback<Option<u64>>, (store, known): &(Store, Option<u64>)| match known {
            Some(known) => catch_up(store.clone(), *known, book.clone(), done),
            None => done.emit(None),
        }
    });
    // Another window that was in front may have gone on.
    use_effect_with(catch_up.clone(), |catch_up| {
        let catch_up = catch_up.clone();
        let shown = Shown::tell(move || catch_up.emit(Callback::noop()));
        move || drop(shown)
    });
    BookContext { book: Rc::new((*book).clone()), followed, hand_in, write: alone, retry, catch_up, erase }
}
