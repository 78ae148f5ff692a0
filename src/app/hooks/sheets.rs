//! Keeps the shop's own sheets and the one that is being edited: what is not stored is not there.

use crate::app::state::{Keep, SheetsContext};
use crate::device::{Shelf, Store};
use crate::exchange::{Editions, OwnSheet, SHEET, SheetDraft, read};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The file of the sheet that is being edited; no edition has that name.
const DRAFT: &str = "draft";

/// The editions of a shelf, and the sheet that is being edited; a file that cannot be read is left out and stays.
fn held(files: &[(String, String)]) -> (Rc<Editions>, Option<Rc<SheetDraft>>) {
    let own = files.iter().filter(|(name, _)| name != DRAFT);
    let editions = Editions::of(own.filter_map(|(_, text)| read::<OwnSheet>(text.as_bytes(), SHEET).ok()));
    let draft = files.iter().find(|(name, _)| name == DRAFT);
    let draft = draft.and_then(|(_, text)| serde_json::from_str(text).ok());
    (Rc::new(editions), draft.map(Rc::new))
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
    let edit = use_callback(store.clone(), {
        let set = draft.setter();
        move |now: Option<SheetDraft>, store| {
            let text = now.as_ref().and_then(|draft| serde_json::to_string(draft).ok());
            set.set(now.map(Rc::new));
            let store = store.clone();
            // What is not stored is still on the screen, and stored with the next touch.
            spawn_local(async move {
                drop(match text {
                    Some(text) => store.shelve(Shelf::Sheets, &[(DRAFT.to_owned(), text)]).await,
                    None => store.unshelve(Shelf::Sheets, DRAFT).await,
                });
            });
        }
    });
    SheetsContext { editions: (*editions).clone(), draft: (*draft).clone(), put, reread: again, let_go, edit }
}
