//! Keeps the shop's own sheets and the one that is being edited: what is not stored is not there.

use super::draft::{DRAFT, drafted, use_edit};
use crate::app::state::{Keep, SheetsContext};
use crate::device::{Shelf, Store};
use crate::exchange::{Editions, OwnSheet, SHEET, SheetDraft, read};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The editions of a shelf, and the sheet that is being edited; a file that cannot be read is left out and stays.
fn held(files: &[(String, String)]) -> (Rc<Editions>, Option<Rc<SheetDraft>>) {
    let own = files.iter().filter(|(name, _)| name != DRAFT);
    let editions = Editions::of(own.filter_map(|(_, text)| read::<OwnSheet>(text.as_bytes(), SHEET).ok()));
    (Rc::new(editions), drafted(files))
}

/// Keeps the files that were on the shelf when the page was opened.
#[hook]
pub(in crate::app) fn use_kept_sheets(store: &Store, files: &[(String, String)]) -> SheetsContext {
    let first = use_memo((), |()| held(files));
    let editions = use_state(|| Rc::clone(&first.0));
    let draft = use_state(|| first.1.clone());
    // Another window may have made editions too: after each change all are read anew.
    let again = use_callback(store.clone(), {
        let set = editions.setter();
        move |done: Callback<bool>, store| {
            let (store, set) = (store.clone(), set.clone());
            spawn_local(async move {
                if let Ok(files) = store.shelf(Shelf::Sheets).await {
                    set.set(held(&files).0);
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
    SheetsContext { editions: (*editions).clone(), draft: (*draft).clone(), put, reread: again, let_go, edit }
}
