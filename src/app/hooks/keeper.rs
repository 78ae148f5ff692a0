//! Keeps settings, desk and journal: holds them in memory and stores every change.

use crate::app::state::{Book, BookChange, BookContext, DeskContext, Saved, Settings, SettingsContext};
use crate::device::{Loaded, Store};
use crate::record::{Draft, Entry, Journal};
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

/// Keeps what was loaded when the page opened.
#[hook]
pub(in crate::app) fn use_keeper(store: &Store, loaded: &Loaded<Settings>, first: &Settings) -> Keeper {
    Keeper {
        settings: use_kept_settings(store, loaded.settings.as_ref().unwrap_or(first)),
        book: use_kept_book(store, &loaded.entries),
        desk: use_kept_desk(store, loaded.draft.as_ref()),
    }
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
fn use_kept_desk(store: &Store, first: Option<&Draft>) -> DeskContext {
    let draft = use_state(|| first.cloned().map(Rc::new));
    let put = use_callback(store.clone(), {
        let set = draft.setter();
        move |draft: Option<Draft>, store| {
            let store = store.clone();
            set.set(draft.clone().map(Rc::new));
            // What is handed in is stored with its answer; a half-made answer that is not stored is made again.
            spawn_local(async move { drop(store.put_draft(draft.as_ref()).await) });
        }
    });
    DeskContext { draft: (*draft).clone(), put }
}

#[hook]
fn use_kept_book(store: &Store, entries: &[Entry]) -> BookContext {
    let book = use_reducer(|| Book { journal: Rc::new(Journal::new(entries.to_vec())), saved: Saved::Yes });
    let waiting = use_mut_ref(Vec::<(Entry, Draft)>::new);
    let hand_in = use_callback(store.clone(), {
        let (dispatch, waiting) = (book.dispatcher(), Rc::clone(&waiting));
        move |(entry, draft): (Entry, Draft), store| {
            waiting.borrow_mut().push((entry.clone(), draft));
            dispatch.dispatch(BookChange::HandedIn(entry));
            write(store.clone(), Rc::clone(&waiting), dispatch.clone());
        }
    });
    let retry = use_callback(store.clone(), {
        let dispatch = book.dispatcher();
        move |(), store| {
            dispatch.dispatch(BookChange::Trying);
            write(store.clone(), Rc::clone(&waiting), dispatch.clone());
        }
    });
    BookContext { book: Rc::new((*book).clone()), hand_in, retry }
}

/// Stores what waits, oldest first, and says how it ended.
fn write(store: Store, waiting: Rc<RefCell<Vec<(Entry, Draft)>>>, dispatch: UseReducerDispatcher<Book>) {
    spawn_local(async move {
        loop {
            let Some((entry, draft)) = waiting.borrow().first().cloned() else { break };
            if store.add(&entry, Some(&draft)).await.is_err() {
                dispatch.dispatch(BookChange::Ended(false));
                return;
            }
            waiting.borrow_mut().retain(|(other, _)| other.sequence != entry.sequence);
        }
        dispatch.dispatch(BookChange::Ended(true));
    });
}
