//! The part of the program that the first screen does without and that comes behind it (`boot/rest.js`, `tools/split.mjs`).
//!
//! Whatever needs it may simply be called: it is then fetched at once, and the page stands still meanwhile; where a browser
//! gets nothing at once the page begins anew. What can wait asks here first, so that neither happens.

use super::page;
use js_sys::{Function, Promise};
use std::cell::Cell;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

thread_local!(static THERE: Cell<bool> = const { Cell::new(false) });

/// Whether the rest of the program is known to be there.
#[must_use]
pub fn is_there() -> bool {
    THERE.get()
}

/// Waits until the rest of the program is there, or until it is known that it comes only when it is called; whether it is there.
pub async fn there() -> bool {
    if !is_there() {
        let promise = page::left_by_boot("there")
            .and_then(|there| there.dyn_into::<Function>().ok())
            .and_then(|there| there.call0(&JsValue::NULL).ok());
        if let Some(promise) = promise {
            let found = JsFuture::from(Promise::resolve(&promise)).await;
            THERE.set(found.is_ok_and(|found| found.is_truthy()));
        }
    }
    is_there()
}
