//! A file that somebody hands over: what is accepted is written and read again alike.
#![no_main]

use libfuzzer_sys::fuzz_target;
use std::sync::LazyLock;
use stepboard::content::Content;
use stepboard::exchange::{Ours, SHEET, write};

static CONTENT: LazyLock<Content> = LazyLock::new(|| Content::embedded().expect("the build script checked it"));

fuzz_target!(|bytes: &[u8]| {
    let text = match Ours::read(bytes, &CONTENT) {
        Ok(Ours::Sheet(sheet)) => write(&*sheet, SHEET),
        Ok(Ours::Set(set)) => set.write(),
        Ok(Ours::Withdrawal(one)) => one.write(),
        Ok(Ours::Walk(walk)) => walk.write(),
        Ok(Ours::Ticket(ticket)) => ticket.write(),
        Ok(Ours::Results(mut reading)) => {
            while let Ok(true) = reading.read_some(usize::MAX) {}
            return;
        }
        Err(refused) => {
            assert!(!refused.to_string().is_empty());
            return;
        }
    };
    let text = text.expect("what was read can be written");
    assert!(Ours::read(text.as_bytes(), &CONTENT).is_ok(), "{text}");
});
