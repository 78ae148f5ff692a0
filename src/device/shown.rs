//! Tells when the page is seen again, after another window or program was in front of it.

use gloo::events::EventListener;

/// Tells until it is dropped.
#[derive(Debug)]
pub struct Shown {
    _listener: EventListener,
}

impl Shown {
    /// Calls each time the page is seen again.
    #[must_use]
    pub fn tell(told: impl Fn() + 'static) -> Self {
        let document = gloo::utils::document();
        let listener = EventListener::new(&document, "visibilitychange", move |_| {
            if !gloo::utils::document().hidden() {
                told();
            }
        });
        Self { _listener: listener }
    }
}
