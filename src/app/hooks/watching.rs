//! Keeps observations that are being made: holds them in memory and stores every touch.

use crate::app::state::{Settings, Watching, WatchingChange, WatchingContext};
use crate::device::{Loaded, Store};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Those that were loaded when the page opened.
#[hook]
pub(in crate::app) fn use_kept_watching(store: &Store, loaded: &Loaded<Settings>) -> WatchingContext {
    let watching = use_reducer(|| Watching(Rc::new(loaded.begun.clone())));
    let first = use_mut_ref(|| true);
    use_effect_with((store.clone(), Rc::clone(&watching.0)), move |(store, begun)| {
        if first.replace(false) {
            return;
        }
        let (store, begun) = (store.clone(), Rc::clone(begun));
        // What is not stored is still on the screen, and stored with the next touch.
        spawn_local(async move { drop(store.put_begun(&begun).await) });
    });
    let change =
        use_callback(watching.dispatcher(), |change: WatchingChange, dispatch| dispatch.dispatch(change));
    WatchingContext { begun: Rc::clone(&watching.0), change }
}
