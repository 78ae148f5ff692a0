//! Drawing that stops now and then, so that a screen can answer between.
//!
//! What takes long is written straight through, as an `async` function, and stops wherever it says `pause().await`. Nothing
//! else is ever awaited: no clock, no thread. Whoever asked for the work goes on with it when there is time.

use core::fmt::{self, Debug, Formatter};
use core::future::{Future, poll_fn};
use core::pin::{Pin, pin};
use core::task::{Context, Poll, Waker};

/// So many small things, each a few pixels large, are drawn between two stops.
pub(crate) const MANY: usize = 16;

/// Stops once. Between two stops lies at most about what a row of pixels takes, or one plain pass over a map.
pub(crate) async fn pause() {
    let mut stopped = false;
    poll_fn(|_| if core::mem::replace(&mut stopped, true) { Poll::Ready(()) } else { Poll::Pending }).await;
}

/// Counts a value of noise, a pixel whose place is asked for, or one that is inked. Only tests count: what lies between two
/// stops is then held without a clock.
#[cfg(not(test))]
pub(crate) const fn worked() {}

#[cfg(test)]
thread_local! {
    static WORKED: core::cell::Cell<usize> = const { core::cell::Cell::new(0) };
}

#[cfg(test)]
pub(crate) fn worked() {
    WORKED.set(WORKED.get() + 1);
}

/// What was counted since it was last asked for.
#[cfg(test)]
pub(crate) fn counted() -> usize {
    WORKED.take()
}

/// Goes on with a piece of work to its next stop; what it gives once it is done, after which it must not be asked again.
pub(crate) fn go_on<T>(work: Pin<&mut (impl Future<Output = T> + ?Sized)>) -> Option<T> {
    match work.poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(done) => Some(done),
        Poll::Pending => None,
    }
}

/// A piece of work that is done in turns, so that a screen can answer between.
pub struct Turns<T> {
    turns: Pin<Box<dyn Future<Output = T>>>,
    done: Option<T>,
}

impl<T> Turns<T> {
    pub(crate) fn of(work: impl Future<Output = T> + 'static) -> Self {
        Self { turns: Box::pin(work), done: None }
    }

    /// Goes up to so many turns further: one is about what a row of pixels takes. Whether it is done.
    pub fn step(&mut self, turns: usize) -> bool {
        for _ in 0..turns.max(1) {
            if self.done.is_none() {
                self.done = go_on(self.turns.as_mut());
            }
        }
        self.done.is_some()
    }

    /// Does what is left of it.
    #[must_use]
    pub fn finish(self) -> T {
        self.done.unwrap_or_else(|| at_once(self.turns))
    }
}

impl<T> Debug for Turns<T> {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.debug_struct("Turns").field("done", &self.done.is_some()).finish_non_exhaustive()
    }
}

/// Does a piece of work without a stop.
pub(crate) fn at_once<T>(work: impl Future<Output = T>) -> T {
    let mut work = pin!(work);
    loop {
        if let Some(done) = go_on(work.as_mut()) {
            return done;
        }
    }
}
