//! Keeps the air of the room as it was measured last.

use crate::app::state::{AirContext, Keep, Settings};
use crate::device::{Loaded, Store};
use crate::record::MeasuredAir;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// What was loaded when the page opened.
#[hook]
pub(in crate::app) fn use_kept_air(store: &Store, loaded: &Loaded<Settings>) -> AirContext {
    let now = use_state(|| loaded.air.clone().map(Rc::new));
    let put = use_callback(store.clone(), {
        let set = now.setter();
        move |Keep { what, done }: Keep<Option<MeasuredAir>>, store| {
            let (store, set) = (store.clone(), set.clone());
            spawn_local(async move {
                let stored = store.put_air(what.as_ref()).await.is_ok();
                if stored {
                    set.set(what.map(Rc::new));
                }
                done.emit(stored);
            });
        }
    });
    AirContext { now: (*now).clone(), put }
}
