//! Single keys, anywhere on the page, except while something is being typed.

use crate::device::page;
use gloo::events::{EventListener, EventListenerOptions};
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement, KeyboardEvent};
use yew::prelude::*;

/// Gives every plain key press that nothing on the page has used to `on_key`, which says whether it used it.
#[hook]
pub(in crate::app) fn use_keys(on_key: Callback<String, bool>) {
    use_effect_with(on_key, |on_key| {
        let on_key = on_key.clone();
        let options = EventListenerOptions::enable_prevent_default();
        let document = gloo::utils::document();
        let listener = EventListener::new_with_options(&document, "keydown", options, move |event| {
            let Some(event) = event.dyn_ref::<KeyboardEvent>() else { return };
            page::mark_root("keys", Some("used"));
            let plain = !(event.default_prevented()
                || event.repeat() && event.key() == "Enter"
                || event.ctrl_key()
                || event.alt_key()
                || event.meta_key()
                || event.is_composing());
            let target = event.target().and_then(|target| target.dyn_into::<Element>().ok());
            let free = target.is_none_or(|target| leaves_key(&target, &event.key()));
            if plain && free && on_key.emit(event.key()) {
                event.prevent_default();
            }
        });
        move || drop(listener)
    });
}

/// Does what Enter stands for on this screen.
#[hook]
pub(in crate::app) fn use_enter(on_enter: Callback<()>) {
    let on_key = use_callback(on_enter, |key: String, on_enter| {
        let enter = key == "Enter";
        if enter {
            on_enter.emit(());
        }
        enter
    });
    use_keys(on_key);
}

/// Whether the element with the focus has no use of its own for the key.
fn leaves_key(target: &Element, key: &str) -> bool {
    if let Some(input) = target.dyn_ref::<HtmlInputElement>() {
        return matches!(input.type_().as_str(), "radio" | "checkbox") && key != " ";
    }
    match target.tag_name().to_ascii_lowercase().as_str() {
        "select" | "textarea" => false,
        "button" | "a" | "summary" => !matches!(key, "Enter" | " "),
        _ => true,
    }
}
