//! What a file that is not known says of itself.

use super::Refused;
use serde::Deserialize;
use std::str::from_utf8;

/// Bytes of which the beginning of a file that says nothing is told.
const FIRST: usize = 240;

/// What a file says of itself.
pub(super) enum Said {
    /// Its `format`.
    Format(String),
    /// It is a bare list of events, as results were before they were a file.
    Events,
    /// Nothing: it does not begin as JSON, or has no `format`. So it begins.
    Nothing(String),
}

/// What every file of ours says of itself; the rest is not looked at.
#[derive(Deserialize)]
struct Says {
    format: Option<String>,
}

/// What a file says of itself.
///
/// # Errors
/// [`Refused::NoText`] for pictures, documents and the like; [`Refused::Form`] for an object that cannot be read to its end.
pub(super) fn said(bytes: &[u8]) -> Result<Said, Refused> {
    if begins(bytes, b"[{") {
        return Ok(Said::Events);
    }
    match serde_json::from_slice(bytes) {
        Ok(Says { format: Some(format) }) => Ok(Said::Format(format)),
        Err(error) if bytes.is_empty() || begins(bytes, b"{") => Err(error.into()),
        Ok(Says { format: None }) | Err(_) => first(bytes).map(Said::Nothing),
    }
}

/// How a text begins; bytes that are no text are not told.
fn first(bytes: &[u8]) -> Result<String, Refused> {
    let first = bytes.get(..FIRST).unwrap_or(bytes);
    let text = match from_utf8(first) {
        Ok(text) => text,
        // Cut in the middle of a character.
        Err(error) if error.error_len().is_none() => {
            from_utf8(first.get(..error.valid_up_to()).unwrap_or_default()).unwrap_or_default()
        }
        Err(_) => return Err(Refused::NoText),
    };
    if text.chars().any(|character| character.is_control() && !character.is_whitespace()) {
        return Err(Refused::NoText);
    }
    Ok(Refused::short(text.trim()))
}

/// Whether a text begins so, white space left out.
fn begins(bytes: &[u8], first: &[u8]) -> bool {
    bytes.iter().filter(|byte| !byte.is_ascii_whitespace()).take(first.len()).eq(first)
}
