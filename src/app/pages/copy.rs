//! A copy of every answer as a file.

use crate::device::files;
use crate::record::Journal;

const FILE: &str = "stepboard-answers.json";

/// Offers the journal as a JSON file.
pub(in crate::app) fn save_copy(journal: &Journal) {
    let written = serde_json::to_string_pretty(journal)
        .map_err(|error| error.to_string())
        .and_then(|json| files::save_json(FILE, &json).map_err(|error| format!("{error:?}")));
    if let Err(error) = written {
        web_sys::console::error_1(&error.into());
    }
}
