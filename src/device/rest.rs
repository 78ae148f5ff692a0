//! The part of the program that the first screen does without and that comes behind it (`boot/rest.js`, `tools/split.mjs`).
//!
//! Whatever needs it may simply be called: it is then fetched at once, and the page stands still meanwhile. What can wait
//! asks here first, so that nothing stands still.

use super::page;
use js_sys::{Function, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// Waits until the rest of the program is there, or until it is known that it comes only when it is called.
pub async fn there() {
    let Some(there) = page::left_by_boot("there").and_then(|there| there.dyn_into::<Function>().ok()) else {
        return;
    };
    if let Ok(there) = there.call0(&JsValue::NULL) {
        // It tells only when.
        drop(JsFuture::from(Promise::resolve(&there)).await);
    }
}
