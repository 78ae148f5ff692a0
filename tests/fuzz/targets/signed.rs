//! Signed files and wrapped keys.
#![no_main]

use libfuzzer_sys::fuzz_target;
use std::sync::LazyLock;
use stepboard::content::Content;
use stepboard::signoff::{TrustList, WrappedKey};

static CONTENT: LazyLock<Content> = LazyLock::new(|| Content::embedded().expect("the build script checked it"));

fuzz_target!(|bytes: &[u8]| {
    let _ = WrappedKey::read(bytes);
    let _ = stepboard::signoff::read(bytes);
    // A sign-off is held against the list that stands in front of it, as far as one does.
    let cut = bytes.iter().position(|byte| *byte == b'\n').unwrap_or(bytes.len());
    let (list, file) = bytes.split_at(cut);
    if let (Ok(list), Ok(on)) = (TrustList::read(list, None), stepboard::signoff::When::new("2027-03-02T09:00:00Z")) {
        let _ = stepboard::signoff::verify(file, &list, &CONTENT.competencies, &on);
    }
});
