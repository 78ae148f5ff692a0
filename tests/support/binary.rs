//! The native command, run as scripts run it.

use serde_json::Value;
use std::io::Write;
use std::process::{Command, Output, Stdio};

/// Runs the command with those words and that standard input.
pub(crate) fn run(words: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_stepboard"))
        .args(words)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    let mut pipe = child.stdin.take().expect("standard input is piped");
    // A command that reads nothing may have closed it.
    let _ = pipe.write_all(input.as_bytes());
    drop(pipe);
    child.wait_with_output().expect("the command ends")
}

/// What it prints for words and input that it takes.
#[track_caller]
pub(crate) fn answer(words: &[&str], input: &str) -> Value {
    let output = run(words, input);
    let error = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{words:?} {input}: {error}");
    serde_json::from_slice(&output.stdout).expect("one JSON document")
}

/// What it prints for words that it takes.
#[track_caller]
pub(crate) fn json(words: &[&str]) -> Value {
    answer(words, "")
}

/// Fails unless the command refuses words and input, says those parts of a message and prints nothing else.
#[track_caller]
pub(crate) fn refused(words: &[&str], input: &str, says: &[&str]) {
    let output = run(words, input);
    assert_eq!(output.status.code(), Some(2), "{words:?} {input}");
    assert!(output.stdout.is_empty(), "{words:?}: nothing is printed when something is refused");
    let error = String::from_utf8_lossy(&output.stderr);
    for part in says {
        assert!(error.contains(part), "{words:?}: `{part}` is not in `{error}`");
    }
}
