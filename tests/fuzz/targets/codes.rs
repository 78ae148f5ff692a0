//! What is pasted or typed from paper: links, and the codes of answers.
#![no_main]

use libfuzzer_sys::fuzz_target;
use stepboard::exchange::link::{code_in, unpack};
use stepboard::exchange::paper::PaperCode;

fuzz_target!(|text: &str| {
    if let Ok(code) = code_in(text) {
        let _ = unpack(code);
    }
    let _ = PaperCode::read(text, "finish-room");
    let _ = PaperCode::read_as_printed(text, "finish-room");
});
