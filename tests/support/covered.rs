//! Counts what the reference tests hold against the outside, for the coverage table in DEVELOPERS.md (`make coverage`).
//! Nothing is typed in there: a row is noted once its checks have held, a worked value by the check itself.

use std::cell::Cell;
use std::fs::OpenOptions;
use std::io::Write;

/// Names the file that the notes go to; without it nothing is noted.
const NOTES: &str = "STEPBOARD_COVERED";

thread_local! {
    static VALUES: Cell<u32> = const { Cell::new(0) };
}

/// Counts one worked value that was met; a published statement tried over many cases counts once.
pub(crate) fn count() {
    VALUES.with(|values| values.set(values.get() + 1));
}

/// Notes the worked values met in this test since the last note, under their rule family and their source. Call it at the
/// end: what stands here has held.
pub(crate) fn values(family: &str, source: &str) {
    let met = VALUES.with(|values| values.replace(0));
    assert!(met > 0, "{family}, {source}: no value was checked with `near`, `same!` or `count`");
    note(&format!("values\t{family}\t{source}\t{met}"));
}

/// Notes that a row of a table of `tests/data/` was met.
pub(super) fn row(family: &str, file: &str, row: usize) {
    note(&format!("row\t{family}\t{file}\t{row}"));
}

/// Notes that a row of a table of `tests/data/` says nothing that any rule holds; the test names it.
pub(super) fn left_out(family: &str, file: &str, row: usize) {
    note(&format!("out\t{family}\t{file}\t{row}"));
}

fn note(line: &str) {
    let Some(path) = std::env::var_os(NOTES) else { return };
    let mut file = OpenOptions::new().create(true).append(true).open(path).expect("the notes can be written");
    // One write a line: tests append side by side.
    file.write_all(format!("{line}\n").as_bytes()).expect("the notes can be written");
}

/// Like `assert_eq!`, and counts the value as a worked one.
#[allow(unused_macros, reason = "each test file uses a part")]
macro_rules! same {
    ($($each:tt)+) => {{
        assert_eq!($($each)+);
        $crate::support::covered::count();
    }};
}
pub(crate) use same;
