//! Tells when the page is seen again, after another window or program was in front of it or was worked in beside it.

use gloo::events::EventListener;
use web_sys::Event;

/// Tells until it is dropped.
#[derive(Debug)]
pub struct Shown {
    _listeners: [EventListener; 2],
}

impl Shown {
    /// Calls each time the page is seen again, or is gone back to from a window that is seen beside it.
    #[must_use]
    pub fn tell(told: impl Fn() + Clone + 'static) -> Self {
        let seen = {
            let told = told.clone();
            move |_: &Event| {
                if !gloo::utils::document().hidden() {
                    told();
                }
            }
        };
        Self {
            _listeners: [
                EventListener::new(&gloo::utils::document(), "visibilitychange", seen),
                EventListener::new(&gloo::utils::window(), "focus", move |_| told()),
            ],
        }
    }
}
