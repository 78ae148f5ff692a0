//! Files of results of several tablets read as one.

use stepboard::content::Content;
use stepboard::exchange::{Named, Results};
use stepboard::record::{Event, Journal, merge};
use stepboard::rules::sheet::Sheet;

/// What several files say together.
pub(crate) struct Read {
    /// The content with the sheets of the shops' own that the files carry.
    pub(crate) content: Content,
    /// All events, each once.
    pub(crate) events: Vec<Event>,
    /// Whom the tablets know by which number.
    pub(crate) people: Vec<Named>,
}

/// Reads all files; every event of them must be readable: what is said of half of it would be wrong.
pub(crate) fn read_all(content: &Content, names: &[String]) -> Result<Read, Vec<String>> {
    if names.is_empty() {
        return Err(vec!["at least one file of results is needed, as the app saves it".to_owned()]);
    }
    let (mut files, mut wrong) = (Vec::new(), Vec::new());
    for name in names {
        match read(name) {
            Ok(results) => files.push(results),
            Err(line) => wrong.push(line),
        }
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let own = files.iter().flat_map(|results| &results.sheets);
    // A sheet that cannot be had here leaves its cards undealt; their answers count all the same.
    let own: Vec<Sheet> = own.filter_map(|sheet| sheet.sheet(content).ok()).collect();
    let people = files.iter().flat_map(|results| results.people.iter().cloned()).collect();
    let journals: Vec<Journal> = files.into_iter().map(|results| Journal::new(results.events)).collect();
    let events = merge(&journals).map_err(|clash| vec![clash.to_string()])?;
    Ok(Read { content: content.with_sheets(own), events, people })
}

fn read(file: &str) -> Result<Results, String> {
    let bytes = std::fs::read(file).map_err(|error| format!("{file}: {error}"))?;
    Results::read(&bytes).map_err(|refused| {
        format!("{file}: {refused}; a file of results or a list of events is needed, as the app saves it")
    })
}
