//! A file that somebody hands over: what is accepted is written and read again alike.
#![no_main]

use libfuzzer_sys::fuzz_target;
use std::sync::LazyLock;
use stepboard::content::Content;
use stepboard::exchange::{Ours, SHEET, write};

static CONTENT: LazyLock<Content> = LazyLock::new(|| Content::embedded().expect("the build script checked it"));

/// What is written of a file that is taken; nothing where it is refused.
fn written(bytes: &[u8]) -> Option<String> {
    let text = match Ours::read(bytes, &CONTENT) {
        Ok(Ours::Sheet(sheet)) => write(&*sheet, SHEET),
        Ok(Ours::Set(set)) => set.write(),
        Ok(Ours::Withdrawal(one)) => one.write(),
        Ok(Ours::Walk(walk)) => walk.write(),
        Ok(Ours::Ticket(ticket)) => ticket.write(),
        Ok(Ours::Results(mut reading)) => {
            while reading.read_some(usize::MAX).ok()? {}
            reading.results().text()
        }
        Err(refused) => {
            assert!(!refused.to_string().is_empty());
            return None;
        }
    };
    Some(text.expect("what was read can be written"))
}

fuzz_target!(|bytes: &[u8]| {
    if let Some(text) = written(bytes) {
        assert_eq!(written(text.as_bytes()).as_ref(), Some(&text));
    }
});
