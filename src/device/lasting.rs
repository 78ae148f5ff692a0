//! A short text that the browser keeps beyond its window, beside the database: what no backup carries and nobody looks up.

use web_sys::Storage;

fn kept() -> Option<Storage> {
    gloo::utils::window().local_storage().ok()?
}

/// The text under a name.
#[must_use]
pub fn get(name: &str) -> Option<String> {
    kept()?.get_item(name).ok()?
}

/// Keeps a text, or lets go of it.
pub fn set(name: &str, text: Option<&str>) {
    let Some(kept) = kept() else { return };
    // A browser that keeps nothing forgets it with the window.
    let _ = match text {
        Some(text) => kept.set_item(name, text),
        None => kept.remove_item(name),
    };
}
