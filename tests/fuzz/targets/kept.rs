//! What the tablet itself keeps, spoilt: events, walks, a backup of all; and what a server lists.
#![no_main]

use libfuzzer_sys::fuzz_target;
use stepboard::exchange::folder::listing;
use stepboard::exchange::{Backup, Results};
use stepboard::record::Event;
use stepboard::walk::Kept;

fuzz_target!(|bytes: &[u8]| {
    let _ = Results::read(bytes);
    let _ = listing(bytes);
    if let Ok(backup) = Backup::read(bytes, &["journal", "state", "book"]) {
        let text = backup.text().expect("what was read can be written");
        assert_eq!(Backup::read(text.as_bytes(), &["journal", "state", "book"]), Ok(backup));
    }
    if let Ok(text) = std::str::from_utf8(bytes) {
        let _ = Kept::read(text);
        if let Ok(event) = Event::read(text) {
            let again = serde_json::to_string(&event).expect("an event can be written");
            assert_eq!(Event::read(&again).expect("and read"), event);
        }
    }
});
