//! Drawing that stops now and then, so that a screen can answer between.
//!
//! What takes long is written straight through, as an `async` function, and stops wherever it says `pause().await`. Nothing
//! else is ever awaited: no clock, no thread. Whoever asked for the work goes on with it when there is time.

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

/// Does a piece of work without a stop.
pub(crate) fn at_once<T>(work: impl Future<Output = T>) -> T {
    let mut work = pin!(work);
    loop {
        if let Some(done) = go_on(work.as_mut()) {
            return done;
        }
    }
}
