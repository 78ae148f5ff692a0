//! What is being made on a screen: stored with each touch on the shelf that it will lie on once it is done.

use crate::device::{Shelf, Store};
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Its file; nothing that is done has that name.
pub(super) const DRAFT: &str = "draft";

/// What is being made, as it was left.
pub(super) fn drafted<T: DeserializeOwned>(files: &[(String, String)]) -> Option<Rc<T>> {
    let (_, text) = files.iter().find(|(name, _)| name == DRAFT)?;
    serde_json::from_str(text).ok().map(Rc::new)
}

/// Keeps it, or takes it away.
#[hook]
pub(super) fn use_edit<T: Serialize + 'static>(
    store: &Store,
    shelf: Shelf,
    set: UseStateSetter<Option<Rc<T>>>,
) -> Callback<Option<T>> {
    use_callback(store.clone(), move |now: Option<T>, store| {
        let text = now.as_ref().and_then(|now| serde_json::to_string(now).ok());
        set.set(now.map(Rc::new));
        let store = store.clone();
        // What is not stored is still on the screen, and stored with the next touch.
        spawn_local(async move {
            drop(match text {
                Some(text) => store.shelve(shelf, &[(DRAFT.to_owned(), text)]).await,
                None => store.unshelve(shelf, DRAFT).await,
            });
        });
    })
}
