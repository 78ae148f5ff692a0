//! The size of the window.

use crate::device::page;
use gloo::events::EventListener;
use yew::prelude::*;

/// Width and height of the window in its own pixels; draws anew when they change.
#[hook]
pub(in crate::app) fn use_size() -> (u32, u32) {
    let size = use_state_eq(page::size);
    use_effect_with((), {
        let size = size.setter();
        move |()| {
            let listener =
                EventListener::new(&gloo::utils::window(), "resize", move |_| size.set(page::size()));
            move || drop(listener)
        }
    });
    *size
}
