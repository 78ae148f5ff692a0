//! What several test files share.
#![allow(dead_code, reason = "each test file uses a part")]

pub(crate) mod table;

use stepboard::content::Content;

/// The content that ships.
pub(crate) fn content() -> Content {
    Content::embedded().expect("the build script checked it")
}

/// Seeds spread over the whole range, the first ones among them.
pub(crate) fn seeds(count: u32) -> impl Iterator<Item = u32> {
    const STRIDE: u32 = 2_654_435_761;
    (0..count).map(|n| if n < 100 { n } else { n.wrapping_mul(STRIDE) })
}
