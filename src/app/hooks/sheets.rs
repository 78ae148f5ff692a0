//! Keeps the shop's own sheets and the one that is being edited: what is not stored is not there.

use super::draft::{DRAFT, drafted, use_edit};
use crate::app::state::{Keep, SheetsContext};
use crate::device::{Shelf, Store};
use crate::exchange::{Editions, OwnSheet, SHEET, read};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The editions of a shelf, and how many files cannot be read: those are left out and stay.
type Held = (Rc<Editions>, usize);

fn held(files: &[(String, String)]) -> Held {
    let mut unread = 0;
    let own = files.iter().filter(|(name, _)| name != DRAFT);
    let editions = Editions::of(own.filter_map(|(_, text)| {
        let own = read::<OwnSheet>(text.as_bytes(), SHEET).ok();
        unread += usize::from(own.is_none());
        own
    }));
    (Rc::new(editions), unread)
}

/// Keeps the files that were on the shelf when the page was opened.
#[hook]
pub(in crate::app) fn use_kept_sheets(store: &Store, files: &[(String, String)]) -> SheetsContext {
    let first = use_memo((), |()| held(files));
    let editions = use_state(|| (*first).clone());
    let draft = use_state(|| drafted(files));
    // Another window may have made editions too: after each change all are read anew.
    let again = use_callback(store.clone(), {
        let set = editions.setter();
        move |done: Callback<bool>, store| {
            let (store, set) = (store.clone(), set.clone());
            spawn_local(async move {
                if let Ok(files) = store.shelf(Shelf::Sheets).await {
                    set.set(held(&files));
                }
                done.emit(true);
            });
        }
    });
    let put = use_callback(
        (store.clone(), again.clone()),
        |Keep { what, done }: Keep<OwnSheet>, (store, again)| {
            let (store, again) = (store.clone(), again.clone());
            spawn_local(async move {
                let Ok(text) = what.text() else { return done.emit(false) };
                match store.shelve_new(Shelf::Sheets, &what.slug(), &text).await {
                    Ok(()) => again.emit(done),
                    Err(_) => done.emit(false),
                }
            });
        },
    );
    let let_go =
        use_callback((store.clone(), again.clone()), |Keep { what, done }: Keep<String>, (store, again)| {
            let (store, again) = (store.clone(), again.clone());
            spawn_local(async move {
                match store.unshelve(Shelf::Sheets, &what).await {
                    Ok(()) => again.emit(done),
                    Err(_) => done.emit(false),
                }
            });
        });
    let edit = use_edit(store, Shelf::Sheets, draft.setter());
    let (editions, unread) = (*editions).clone();
    SheetsContext { editions, unread, draft: (*draft).clone(), put, reread: again, let_go, edit }
}
