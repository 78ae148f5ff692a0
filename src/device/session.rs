//! A text that the browser keeps until its window is closed.

/// The text under a name.
#[must_use]
pub fn get(name: &str) -> Option<String> {
    gloo::utils::window().session_storage().ok()??.get_item(name).ok()?
}

/// Keeps a text, or lets go of it.
pub fn set(name: &str, text: Option<&str>) {
    let Ok(Some(session)) = gloo::utils::window().session_storage() else { return };
    // What is not kept is asked for again.
    let _ = match text {
        Some(text) => session.set_item(name, text),
        None => session.remove_item(name),
    };
}
