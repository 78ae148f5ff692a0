//! Files that a folder takes, of events that may be too many for one.

use crate::record::Event;

/// A file of some of the events.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// Its text.
    pub text: String,
    /// Number of the last event in it.
    pub last: u64,
}

/// Puts events into files of `most` bytes at most, in their order; `text` makes the file of some of them. Where a file of one
/// event alone is too large, or cannot be made, it ends before that event.
pub fn parts(events: &[Event], most: usize, text: impl Fn(&[Event]) -> Option<String>) -> Vec<Part> {
    let mut parts = Vec::new();
    let mut rest = events;
    let mut count = rest.len();
    while let Some((some, behind)) = rest.split_at_checked(count.min(rest.len())) {
        let Some(latest) = some.last() else { break };
        match text(some).filter(|text| text.len() <= most) {
            Some(text) => {
                parts.push(Part { text, last: latest.stamp().sequence });
                rest = behind;
            }
            None if some.len() > 1 => count = some.len().div_ceil(2),
            None => break,
        }
    }
    parts
}
