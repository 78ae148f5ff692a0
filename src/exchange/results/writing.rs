//! Writes results a few events at a time, so that a screen can go on meanwhile.

use super::{Named, RESULTS, Results};
use crate::exchange::{OwnSheet, Refused};
use serde::Serialize;

/// All but the events.
#[derive(Serialize)]
struct Head<'a> {
    format: &'static str,
    version: u32,
    device: &'a str,
    at: &'a str,
    people: &'a [Named],
    sheets: &'a [OwnSheet],
    sets: &'a [String],
}

/// A file that is being written, an event a line.
#[derive(Debug)]
pub struct Writing<'a> {
    results: &'a Results,
    written: usize,
    text: String,
}

impl<'a> Writing<'a> {
    /// Begins: everything but the events is written.
    ///
    /// # Errors
    /// [`Refused::Form`] for what JSON cannot say; nothing that was read is such a thing.
    pub fn begin(results: &'a Results) -> Result<Self, Refused> {
        let head = serde_json::to_string(&Head {
            format: RESULTS.format,
            version: RESULTS.version,
            device: &results.device,
            at: &results.at,
            people: &results.people,
            sheets: &results.sheets,
            sets: &results.sets,
        })?;
        let mut text = head.strip_suffix('}').unwrap_or(&head).to_owned();
        text.push_str(",\"events\":[");
        Ok(Self { results, written: 0, text })
    }

    /// Writes so many events more; whether there are others left.
    ///
    /// # Errors
    /// As [`Writing::begin`].
    pub fn write_some(&mut self, events: usize) -> Result<bool, Refused> {
        for event in self.results.events.iter().skip(self.written).take(events) {
            self.text.push_str(if self.written == 0 { "\n" } else { ",\n" });
            self.text.push_str(&serde_json::to_string(event)?);
            self.written += 1;
        }
        Ok(self.written < self.results.events.len())
    }

    /// The text of the file.
    #[must_use]
    pub fn text(mut self) -> String {
        self.text.push_str("\n]}\n");
        self.text
    }
}
