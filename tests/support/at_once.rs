//! Work that takes long, on all processors at once.

use std::num::NonZero;
use std::sync::Mutex;
use std::thread;

/// Does the work on each item, as many at once as there are processors, and gives what came of each in the order of the items.
/// A panic in one of them fails the test.
pub(crate) fn each<T: Sync, R: Send>(items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let workers = thread::available_parallelism().map_or(1, NonZero::get);
    let next = Mutex::new(items.iter().enumerate());
    let work_on = || {
        let mut done = Vec::new();
        loop {
            let taken = next.lock().expect("no work panics while it takes an item").next();
            let Some((place, item)) = taken else { return done };
            done.push((place, work(item)));
        }
    };
    let mut done: Vec<(usize, R)> = thread::scope(|scope| {
        let all: Vec<_> = (0..workers).map(|_| scope.spawn(work_on)).collect();
        all.into_iter().flat_map(|one| one.join().expect("the work on each item went well")).collect()
    });
    done.sort_by_key(|(place, _)| *place);
    done.into_iter().map(|(_, result)| result).collect()
}
