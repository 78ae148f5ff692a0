//! Long work in slices: the page goes on between them.

use super::{clock, page};
use gloo::timers::callback::Timeout;
use js_sys::{Function, Promise};
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// How long a slice may take: under it nobody feels that the page stood still, and a task twice as long is told nowhere.
const SLICE_MS: f64 = 30.0;

/// Begins long work in slices, once what was set before can be seen.
pub fn once_drawn(work: impl AsyncFnOnce(Slices) + 'static) {
    page::once_drawn(move || spawn_local(async move { work(Slices::begin()).await }));
}

/// Counts the time of a slice.
#[derive(Debug)]
pub struct Slices {
    since: f64,
}

impl Slices {
    /// Begins the first slice.
    #[must_use]
    pub fn begin() -> Self {
        Self { since: clock::ticks() }
    }

    /// Lets the page go on where the slice is over; whether it did.
    pub async fn rest(&mut self) -> bool {
        let over = clock::ticks() - self.since >= SLICE_MS;
        if over {
            let promise = Promise::new(&mut |done: Function, _| {
                // Calling what settles a promise cannot fail.
                Timeout::new(0, move || drop(done.call0(&JsValue::NULL))).forget();
            });
            // It is settled and never refused.
            drop(JsFuture::from(promise).await);
            self.since = clock::ticks();
        }
        over
    }
}
