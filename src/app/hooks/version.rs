//! Whether a new version of the program waits. It is never swapped in by itself.

use crate::device::page;
use gloo::events::EventListener;
use yew::prelude::*;

#[hook]
pub(in crate::app) fn use_new_version() -> bool {
    let ready = use_state_eq(page::new_version_waits);
    use_effect_with((), {
        let ready = ready.setter();
        move |()| {
            let document = gloo::utils::document();
            let told = ready.clone();
            let listener = EventListener::new(&document, page::NEW_VERSION, move |_| told.set(true));
            // It may have been told between the first look and now.
            ready.set(page::new_version_waits());
            move || drop(listener)
        }
    });
    *ready
}
