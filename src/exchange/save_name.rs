//! Names under which people save files, and know them again.
//!
//! What a program looks for is named by its content instead: [`super::content_name`].

use crate::record::LocalDate;

/// Characters of a name in such a name of a file, our own limit: the day behind it is still seen in a list of downloads.
const MOST: usize = 32;

/// The name of a file: what it is, such as `stepboard-results`, then whose it is or what it is called, then the day, each left
/// out where there is none.
///
/// Of a name all letters and digits stay, of any script; whatever else comes between them becomes one hyphen. No system
/// refuses such a name, and none reads a folder or an ending out of it.
#[must_use]
pub fn save_name(what: &str, about: &str, day: Option<LocalDate>, ending: &str) -> String {
    let mut name = what.to_owned();
    for part in [readable(about), day.map(|day| day.to_string()).unwrap_or_default()] {
        if !part.is_empty() {
            name.push('-');
            name.push_str(&part);
        }
    }
    format!("{name}.{ending}")
}

/// The letters and digits of a text with a hyphen between its words, cut off where it is long.
fn readable(text: &str) -> String {
    let words = text.split(|one: char| !one.is_alphanumeric()).filter(|word| !word.is_empty());
    let all = words.collect::<Vec<_>>().join("-");
    let short: String = all.chars().take(MOST).collect();
    short.trim_end_matches('-').to_owned()
}
