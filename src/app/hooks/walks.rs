//! Keeps the walks of this tablet: each decision is stored at once.

use crate::app::state::{Keep, WalksContext};
use crate::device::{Shelf, Store};
use crate::walk::Kept;
use std::cmp::Reverse;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The walks that files hold; a file that this program cannot read is left out and stays.
fn held(files: &[(String, String)]) -> Vec<Rc<Kept>> {
    let mut all: Vec<Rc<Kept>> = files.iter().filter_map(|(_, text)| Kept::read(text)).map(Rc::new).collect();
    all.sort_by_key(|one| Reverse(one.changed.clone()));
    all
}

#[hook]
pub(in crate::app) fn use_kept_walks(store: &Store) -> WalksContext {
    let all = use_state(|| Rc::new(Vec::new()));
    let loaded = use_state(|| false);
    // Another window may have walked too: after each change all are read anew.
    let again = use_callback(store.clone(), {
        let (all, loaded) = (all.setter(), loaded.setter());
        move |done: Callback<bool>, store| {
            let (store, all, loaded) = (store.clone(), all.clone(), loaded.clone());
            spawn_local(async move {
                if let Ok(files) = store.shelf(Shelf::Walks).await {
                    all.set(Rc::new(held(&files)));
                    loaded.set(true);
                }
                done.emit(true);
            });
        }
    });
    use_effect_with(again.clone(), |again| again.emit(Callback::noop()));
    let keep =
        use_callback((store.clone(), again.clone()), |Keep { what, done }: Keep<Kept>, (store, again)| {
            let (store, again) = (store.clone(), again.clone());
            spawn_local(async move {
                let Ok(text) = what.write() else { return done.emit(false) };
                match store.shelve(Shelf::Walks, &[(what.id, text)]).await {
                    Ok(()) => again.emit(done),
                    Err(_) => done.emit(false),
                }
            });
        });
    let let_go = use_callback((store.clone(), again), |Keep { what, done }: Keep<String>, (store, again)| {
        let (store, again) = (store.clone(), again.clone());
        spawn_local(async move {
            match store.unshelve(Shelf::Walks, &what).await {
                Ok(()) => again.emit(done),
                Err(_) => done.emit(false),
            }
        });
    });
    WalksContext { loaded: *loaded, all: (*all).clone(), keep, let_go }
}
