//! What several test files share.
#![allow(dead_code, unused_imports, reason = "each test file uses a part")]

pub(crate) mod any;
pub(crate) mod at_once;
pub(crate) mod binary;
pub(crate) mod covered;
pub(crate) mod film;
pub(crate) mod job;
pub(crate) mod log;
pub(crate) mod shop;
pub(crate) mod table;
pub(crate) mod told;
pub(crate) mod watch;
pub(crate) mod works;

use stepboard::content::Content;
use stepboard::rules::sheet::Sheet;

/// The content that ships.
pub(crate) fn content() -> Content {
    Content::embedded().expect("the build script checked it")
}

/// The base sheet.
pub(crate) fn base() -> Sheet {
    content().sheets.remove(0)
}

/// Fails, naming what was measured, unless a value lies within a tolerance of the one wanted.
#[track_caller]
pub(crate) fn near(found: f64, wanted: f64, tolerance: f64, what: &str) {
    assert!((found - wanted).abs() <= tolerance, "{what}: {found}, wanted {wanted} ± {tolerance}");
    covered::count();
}

/// Seeds spread over the whole range, the first ones among them.
pub(crate) fn seeds(count: u32) -> impl Iterator<Item = u32> {
    const STRIDE: u32 = 2_654_435_761;
    (0..count).map(|n| if n < 100 { n } else { n.wrapping_mul(STRIDE) })
}

/// How many random inputs a law tries: as many as `STEPBOARD_LAW_INPUTS` asks for, else the usual number.
pub(crate) fn inputs(usual: u32) -> u32 {
    asked("STEPBOARD_LAW_INPUTS", usual)
}

/// The number that a variable of the environment asks for, else the usual one.
pub(crate) fn asked(name: &str, usual: u32) -> u32 {
    let asked = std::env::var(name).ok();
    asked.map_or(usual, |asked| asked.parse().unwrap_or_else(|_| panic!("{name} is a whole number")))
}
