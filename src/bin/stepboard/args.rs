//! Words of the command line: names, `key=value` (also written `--key value`), and `--help`.

use lexopt::{Arg, Parser};
use std::collections::BTreeMap;
use std::io::Read;
use stepboard::content::{Content, load};
use stepboard::rules::sheet::Sheet;

/// The words after the sub-command.
#[derive(Debug, Default)]
pub(crate) struct Args {
    /// Words without a key.
    pub(crate) names: Vec<String>,
    /// Values by key.
    pub(crate) values: BTreeMap<String, String>,
    /// Switches: `--list`, `--key`, `--schema`, `--example`, `--visible`, `--json`, `--right`, `--good`.
    pub(crate) switches: Vec<String>,
    /// Whether help is asked for.
    pub(crate) help: bool,
}

/// Words that stand alone after two dashes.
const SWITCHES: [&str; 8] = ["list", "key", "schema", "example", "visible", "json", "right", "good"];

impl Args {
    /// What the one file that is named says, or standard input where none is named or `-`.
    pub(crate) fn text(&self) -> Result<String, Vec<String>> {
        match self.names.as_slice() {
            [] => piped(),
            [dash] if dash == "-" => piped(),
            [file] => file_text(file),
            _ => Err(vec!["one file, or - for standard input".to_owned()]),
        }
    }

    pub(crate) fn read(words: &[String]) -> Result<Self, Vec<String>> {
        let wrong = |error: lexopt::Error| vec![error.to_string()];
        let mut args = Self::default();
        let mut parser = Parser::from_args(words);
        while let Some(word) = parser.next().map_err(wrong)? {
            match word {
                Arg::Short('h') => args.help = true,
                Arg::Long("help") => args.help = true,
                Arg::Long(name) if SWITCHES.contains(&name) => args.switches.push(name.to_owned()),
                Arg::Long(name) => {
                    let name = name.to_owned();
                    let value = parser.value().map_err(wrong)?.to_string_lossy().into_owned();
                    args.set(&name, &value)?;
                }
                Arg::Value(word) => {
                    let word = word.to_string_lossy();
                    match word.split_once('=') {
                        Some((key, value)) => args.set(key, value)?,
                        None => args.names.push(word.into_owned()),
                    }
                }
                other @ Arg::Short(_) => return Err(wrong(other.unexpected())),
            }
        }
        Ok(args)
    }

    fn set(&mut self, key: &str, value: &str) -> Result<(), Vec<String>> {
        match self.values.insert(key.to_owned(), value.to_owned()) {
            None => Ok(()),
            Some(_) => Err(vec![format!("`{key}` is given twice")]),
        }
    }

    /// Takes a value out, so that what is left over at the end is known to be unknown.
    pub(crate) fn take(&mut self, key: &str) -> Option<String> {
        self.values.remove(key)
    }

    /// Takes a whole number out.
    pub(crate) fn take_count(&mut self, key: &str, default: u32, most: u32) -> Result<u32, Vec<String>> {
        let Some(text) = self.take(key) else { return Ok(default) };
        text.parse()
            .ok()
            .filter(|n| *n <= most)
            .ok_or_else(|| vec![format!("`{key}` is `{text}`; a whole number from 0 to {most} is allowed")])
    }

    /// Takes the name of the shop sheet out: the slug of one that ships, or a TOML file.
    pub(crate) fn take_sheet(&mut self) -> Option<String> {
        self.take("sheet")
    }

    /// Refuses what no one has taken.
    pub(crate) fn nothing_left(&self, allowed: &[&str]) -> Result<(), Vec<String>> {
        match self.values.keys().next() {
            None => Ok(()),
            Some(key) => Err(vec![format!("`{key}` is not known here; allowed: {}", allowed.join(", "))]),
        }
    }
}

/// The slug of the base sheet: the first that ships.
pub(crate) fn base_sheet(content: &Content) -> Result<String, Vec<String>> {
    content
        .sheets
        .first()
        .map(|sheet| sheet.slug.clone())
        .ok_or_else(|| vec!["no shop sheet ships".to_owned()])
}

/// What a file says.
pub(crate) fn file_text(file: &str) -> Result<String, Vec<String>> {
    std::fs::read_to_string(file).map_err(|error| vec![format!("{file}: {error}")])
}

/// What standard input says.
pub(crate) fn piped() -> Result<String, Vec<String>> {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).map_err(|error| vec![error.to_string()])?;
    Ok(text)
}

/// The shop sheet of that slug, or read from a TOML file.
pub(crate) fn sheet(content: &Content, name: &str) -> Result<Sheet, Vec<String>> {
    if let Some(sheet) = content.sheet(name) {
        return Ok(sheet.clone());
    }
    let slugs: Vec<&str> = content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
    let text = std::fs::read_to_string(name).map_err(|error| {
        vec![format!(
            "`{name}` is no shop sheet ({}) and no file that can be read: {error}",
            slugs.join(", ")
        )]
    })?;
    let source = load::Source { path: name.into(), text };
    load::sheet(&source, content).map_err(|problems| problems.iter().map(ToString::to_string).collect())
}
