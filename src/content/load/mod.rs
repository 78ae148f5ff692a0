//! Reads and checks the files under `content/`: every problem with file, line and what is allowed.

mod check;
mod place;

use super::{Caution, Consequence};
use super::{Content, FactInfo, FamilyInfo, RuleInfo, ScenarioSet, SettingInfo, SheetSource, Texts, Ticket};
use crate::rules::fault::Fault;
use crate::rules::sheet::{Held, Setting, Sheet};
use crate::rules::term::Term;
use crate::rules::wood::Wood;
use place::Place;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// Something wrong in a content file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}:{line}: {message}", file.display())]
pub struct Problem {
    /// The file.
    pub file: PathBuf,
    /// Line, from 1; 0 when the whole file is meant.
    pub line: usize,
    /// What is wrong and what is allowed.
    pub message: String,
}

/// A content file as text.
#[derive(Debug, Clone)]
pub struct Source {
    /// Path relative to the content folder, with `/`.
    pub path: PathBuf,
    /// Its text.
    pub text: String,
}

/// A list of entries under one name.
macro_rules! list_file {
    ($name:ident, $field:ident, $entry:ty) => {
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        struct $name {
            #[serde(default)]
            $field: Vec<$entry>,
        }
    };
}

list_file!(SettingFile, setting, SettingInfo);
list_file!(WoodFile, wood, Wood);
list_file!(FaultFile, fault, Fault);
list_file!(TicketFile, ticket, Ticket);
list_file!(FactFile, fact, FactInfo);
list_file!(FamilyFile, family, FamilyInfo);
list_file!(RuleFile, rule, RuleInfo);
list_file!(CautionFile, caution, Caution);
list_file!(ConsequenceFile, consequence, Consequence);

/// Reads every `.toml` file under a folder, in the order of their paths.
///
/// # Errors
/// A [`Problem`] for the folder or file that cannot be read.
pub fn sources(folder: &Path) -> Result<Vec<Source>, Problem> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(next) = folders.pop() {
        let unreadable =
            |error: std::io::Error| Problem { file: next.clone(), line: 0, message: error.to_string() };
        for entry in std::fs::read_dir(&next).map_err(unreadable)? {
            let path = entry.map_err(unreadable)?.path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "toml") {
                let text = std::fs::read_to_string(&path).map_err(|error| Problem {
                    file: path.clone(),
                    line: 0,
                    message: error.to_string(),
                })?;
                let path = path.strip_prefix(folder).unwrap_or(&path).to_path_buf();
                found.push(Source { path, text });
            }
        }
    }
    found.sort_by(|a, b| a.path.cmp(&b.path));
    Ok(found)
}

/// Parses and checks all files together.
///
/// # Errors
/// Every [`Problem`] found, not only the first.
pub fn load(sources: &[Source]) -> Result<Content, Vec<Problem>> {
    let mut reader = Reader::default();
    let mut content = Content::default();
    let mut sheets = Vec::new();
    for source in sources {
        let folder = source.path.iter().next().and_then(|part| part.to_str()).unwrap_or("");
        match folder {
            "settings.toml" => {
                reader.take::<SettingFile, _>(source, &mut content.settings, |f| f.setting, "setting")
            }
            "woods.toml" => reader.take::<WoodFile, _>(source, &mut content.woods, |f| f.wood, "wood"),
            "faults.toml" => reader.take::<FaultFile, _>(source, &mut content.faults, |f| f.fault, "fault"),
            "tickets.toml" => {
                reader.take::<TicketFile, _>(source, &mut content.tickets, |f| f.ticket, "ticket")
            }
            "facts" => reader.take::<FactFile, _>(source, &mut content.facts, |f| f.fact, "fact"),
            "families" => reader.take::<FamilyFile, _>(source, &mut content.families, |f| f.family, "family"),
            "rules" => reader.take::<RuleFile, _>(source, &mut content.rules, |f| f.rule, "rule"),
            "cautions.toml" => {
                reader.take::<CautionFile, _>(source, &mut content.cautions, |f| f.caution, "caution")
            }
            "consequences" => {
                reader.take::<ConsequenceFile, _>(
                    source,
                    &mut content.consequences,
                    |f| f.consequence,
                    "consequence",
                );
            }
            "sheets" => {
                if let Some(sheet) = reader.parse::<SheetSource>(source) {
                    reader.places.push(("sheet", Place::of(source, None)));
                    sheets.push(sheet);
                }
            }
            "sets" => {
                if let Some(set) = reader.parse::<ScenarioSet>(source) {
                    reader.places.push(("set", Place::of(source, None)));
                    content.sets.push(set);
                }
            }
            "text" => reader.texts(source, &mut content.texts),
            _ => reader.problem(
                source,
                0,
                "no content belongs here; see DEVELOPERS.md for the folders".to_owned(),
            ),
        }
    }
    content.settings.sort_by_key(|setting| setting.key);
    for (index, sheet) in sheets.into_iter().enumerate() {
        if let Some(sheet) = reader.resolve(index, &content.settings, sheet) {
            content.sheets.push(sheet);
        }
    }
    check::check(&content, &mut reader);
    if reader.problems.is_empty() { Ok(content) } else { Err(reader.problems) }
}

/// Reads one shop sheet that does not ship, against the settings of the checked content.
///
/// # Errors
/// Every [`Problem`] found.
pub fn sheet(source: &Source, content: &Content) -> Result<Sheet, Vec<Problem>> {
    let mut reader = Reader::default();
    let read = reader.parse::<SheetSource>(source).and_then(|sheet| {
        reader.places.push(("sheet", Place::of(source, None)));
        reader.resolve(0, &content.settings, sheet)
    });
    match read {
        Some(sheet) if reader.problems.is_empty() => Ok(sheet),
        _ => Err(reader.problems),
    }
}

/// Reads one scenario set that does not ship, against the checked content.
///
/// # Errors
/// Every [`Problem`] found.
pub fn set(source: &Source, content: &Content) -> Result<ScenarioSet, Vec<Problem>> {
    let mut reader = Reader::default();
    let read = reader.parse::<ScenarioSet>(source);
    if let Some(set) = &read {
        reader.places.push(("set", Place::of(source, None)));
        check::set(content, 0, set, &mut reader);
    }
    match read {
        Some(set) if reader.problems.is_empty() => Ok(set),
        _ => Err(reader.problems),
    }
}

/// Collects problems and remembers where each entry stands.
#[derive(Default)]
struct Reader {
    problems: Vec<Problem>,
    /// Where the n-th entry of each list stands, in reading order.
    places: Vec<(&'static str, Place)>,
}

impl Reader {
    fn problem(&mut self, source: &Source, line: usize, message: String) {
        self.problems.push(Problem { file: source.path.clone(), line, message });
    }

    fn parse<T: DeserializeOwned>(&mut self, source: &Source) -> Option<T> {
        match toml::from_str(&source.text) {
            Ok(value) => Some(value),
            Err(error) => {
                let line = error.span().map_or(0, |span| place::line_at(&source.text, span.start));
                self.problem(source, line, error.message().to_owned());
                None
            }
        }
    }

    fn take<F: DeserializeOwned, E>(
        &mut self,
        source: &Source,
        into: &mut Vec<E>,
        entries: fn(F) -> Vec<E>,
        name: &'static str,
    ) {
        let Some(file) = self.parse::<F>(source) else { return };
        for (index, entry) in entries(file).into_iter().enumerate() {
            self.places.push((name, Place::of(source, Some((name, index)))));
            into.push(entry);
        }
    }

    fn texts(&mut self, source: &Source, into: &mut BTreeMap<String, Texts>) {
        let language = source.path.iter().nth(1).and_then(|part| part.to_str()).unwrap_or("en").to_owned();
        let Some(table) = self.parse::<toml::Table>(source) else { return };
        let texts = into.entry(language).or_default();
        let mut stack: Vec<(String, toml::Value)> = table.into_iter().collect();
        while let Some((key, value)) = stack.pop() {
            match value {
                toml::Value::String(text) => {
                    if texts.0.insert(key.clone(), text).is_some() {
                        self.problem(source, 0, format!("text `{key}` stands twice"));
                    }
                }
                toml::Value::Table(inner) => {
                    stack.extend(inner.into_iter().map(|(name, value)| (format!("{key}.{name}"), value)));
                }
                _ => self.problem(source, 0, format!("text `{key}` must be text")),
            }
        }
    }

    fn place(&self, name: &str, index: usize) -> Option<&Place> {
        self.places.iter().filter(|(list, _)| *list == name).nth(index).map(|(_, place)| place)
    }

    /// Reports a problem of the n-th entry of a list, at the line of one of its keys.
    fn at(&mut self, name: &str, index: usize, key: &str, message: String) {
        let (file, line) = self
            .place(name, index)
            .map_or_else(|| (PathBuf::from(name), 0), |place| (place.file.clone(), place.line(key)));
        self.problems.push(Problem { file, line, message });
    }

    /// Fills a sheet up with defaults and checks its values against floor and ceiling.
    fn resolve(&mut self, index: usize, settings: &[SettingInfo], source: SheetSource) -> Option<Sheet> {
        for name in source.values.keys() {
            if Setting::from_slug(name).is_none() {
                self.at(
                    "sheet",
                    index,
                    name,
                    format!("`{name}` is no setting; see content/settings.toml for the names"),
                );
            }
        }
        let mut held = Vec::with_capacity(settings.len());
        for info in settings {
            let value = source.values.get(info.key.slug()).copied().unwrap_or(info.default);
            if !(info.floor..=info.ceiling).contains(&value) {
                let (key, floor, ceiling) = (info.key.slug(), info.floor, info.ceiling);
                self.at("sheet", index, key, format!("`{key}` is {value}; {floor} to {ceiling} is allowed"));
            }
            held.push(Held { value, floor: info.floor, ceiling: info.ceiling });
        }
        Some(Sheet { slug: source.slug, coating: source.coating, held })
    }
}
