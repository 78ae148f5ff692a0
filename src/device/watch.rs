//! How long something was looked at: time in which the page is hidden does not count.

use super::clock::ticks;
use crate::quantity::MS_A_SECOND;
use gloo::events::EventListener;
use std::cell::Cell;
use std::rc::Rc;

/// Milliseconds seen until the page was last hidden or shown, and since when it is shown now.
#[derive(Debug, Clone, Copy)]
struct Seen {
    before: f64,
    since: Option<f64>,
}

impl Seen {
    fn ms(self) -> f64 {
        self.before + self.since.map_or(0.0, |since| ticks() - since)
    }
}

/// Runs from its start while the page is seen.
#[derive(Debug)]
pub struct Watch {
    seen: Rc<Cell<Seen>>,
    _listener: EventListener,
}

impl Watch {
    /// Starts now.
    #[must_use]
    pub fn start() -> Self {
        let shown = || (!gloo::utils::document().hidden()).then(ticks);
        let seen = Rc::new(Cell::new(Seen { before: 0.0, since: shown() }));
        let listener = EventListener::new(&gloo::utils::document(), "visibilitychange", {
            let seen = Rc::clone(&seen);
            move |_| seen.set(Seen { before: seen.get().ms(), since: shown() })
        });
        Self { seen, _listener: listener }
    }

    /// Whole seconds seen since its start.
    #[must_use]
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "not negative, and `as` stops at the greatest"
    )]
    pub fn seconds(&self) -> u32 {
        (self.seen.get().ms() / MS_A_SECOND) as u32
    }
}

impl PartialEq for Watch {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.seen, &other.seen)
    }
}
