//! What was found wrong, kept in the folder as `voidings.ndjson`: exporting files that know less of it takes nothing back.

use super::table::Table;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use stepboard::record::{Event, EventName, Voided};

/// The file, whichever form the tables have: a voiding is no row.
pub(super) fn path(root: &Path) -> PathBuf {
    root.join("voidings.ndjson")
}

/// The voidings that the folder knows and those among new events, each once; nobody stands there by name.
pub(super) fn joined(root: &Path, events: &[Event]) -> Result<Vec<Event>, Vec<String>> {
    let path = path(root);
    let wrong = |what: String| vec![format!("{}: {what}", path.display())];
    let there: Vec<Event> = match fs::read(&path) {
        Ok(bytes) => Table::Ndjson.read(&bytes).map_err(wrong)?,
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Vec::new(),
        Err(error) => return Err(wrong(error.to_string())),
    };
    let mut all: BTreeMap<EventName, Event> = BTreeMap::new();
    for event in there.iter().chain(events) {
        if let Event::Voided(voided) = event {
            let mut voided = Voided::clone(voided);
            voided.by.name = String::new();
            all.insert(voided.stamp.name(), voided.into());
        }
    }
    Ok(all.into_values().collect())
}
