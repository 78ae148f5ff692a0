//! The part of the program that the first screen does without and that comes behind it (`boot/rest.js`, `tools/split.mjs`).
//!
//! Whatever needs it may simply be called: it is then fetched at once, and the page stands still meanwhile. What can wait
//! asks here first, so that nothing stands still.

use super::page;
use js_sys::Promise;
use wasm_bindgen_futures::JsFuture;

/// Waits until the rest of the program is there, or until it is known that it comes only when it is called.
pub async fn there() {
    if let Some(there) = page::left_by_boot("there") {
        // It tells only when.
        drop(JsFuture::from(Promise::resolve(&there)).await);
    }
}
