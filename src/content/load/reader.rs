//! Reads files one by one, remembers where each entry stands and collects what is wrong.

use super::names::nearest;
use super::place::{self, Place};
use super::{Problem, Source};
use crate::content::{ENGLISH, SettingInfo, SheetSource, Texts};
use crate::quantity::Unit;
use crate::rules::pairs;
use crate::rules::sheet::{Held, Setting, Sheet};
use crate::rules::term::Term;
use serde::de::DeserializeOwned;
use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;
use std::rc::Rc;
use toml::de::{DeTable, DeValue};

/// Collects problems and remembers where each entry stands.
#[derive(Default)]
pub(super) struct Reader {
    pub(super) problems: Vec<Problem>,
    /// Lists of which a file could not be read: references into them are not judged.
    pub(super) broken: BTreeSet<&'static str>,
    /// Where the n-th entry of each list stands, in reading order.
    places: Vec<(&'static str, Place)>,
}

impl Reader {
    pub(super) fn problem(&mut self, source: &Source, line: usize, message: String) {
        self.problems.push(Problem { file: source.path.clone(), line, message });
    }

    /// Reports a problem of a file or folder that has no lines.
    pub(super) fn whole(&mut self, path: &str, message: String) {
        self.problems.push(Problem { file: PathBuf::from(path), line: 0, message });
    }

    /// Whether names of a list can be looked up: all its files were read.
    pub(super) fn knows(&self, list: &str) -> bool {
        !self.broken.contains(list)
    }

    fn parse<T: DeserializeOwned>(&mut self, source: &Source, list: &'static str) -> Option<T> {
        if source.text.trim().is_empty() {
            self.problem(source, 0, "the file is empty".to_owned());
            self.broken.insert(list);
            return None;
        }
        match toml::from_str(&source.text) {
            Ok(value) => Some(value),
            Err(error) => {
                let line = error.span().map_or(0, |span| place::line_at(&source.text, span.start));
                self.problem(source, line, error.message().to_owned());
                self.broken.insert(list);
                None
            }
        }
    }

    /// Reads a file that is one entry.
    pub(super) fn one<T: DeserializeOwned>(&mut self, source: &Source, list: &'static str) -> Option<T> {
        let value = self.parse(source, list)?;
        self.places.push((list, Place::of(&Rc::new(source.clone()), None)));
        Some(value)
    }

    /// Reads a file that is a list of entries.
    pub(super) fn take<F: DeserializeOwned, E>(
        &mut self,
        source: &Source,
        into: &mut Vec<E>,
        entries: fn(F) -> Vec<E>,
        list: &'static str,
    ) {
        let Some(file) = self.parse::<F>(source, list) else { return };
        let entries = entries(file);
        if entries.is_empty() {
            self.problem(source, 0, format!("at least one [[{list}]] entry is needed"));
            self.broken.insert(list);
        }
        let shared = Rc::new(source.clone());
        for (index, entry) in entries.into_iter().enumerate() {
            self.places.push((list, Place::of(&shared, Some((list, index)))));
            into.push(entry);
        }
    }

    /// Reads the messages of a file into those of their language.
    pub(super) fn texts(&mut self, source: &Source, into: &mut BTreeMap<String, Texts>) {
        let language = source.path.iter().nth(1).and_then(|part| part.to_str()).unwrap_or(ENGLISH).to_owned();
        if self.parse::<toml::Table>(source, "text").is_none() {
            return;
        }
        let Ok(table) = DeTable::parse(&source.text) else { return };
        if table.get_ref().is_empty() {
            self.problem(source, 0, "at least one text is needed".to_owned());
        }
        self.text_table("", table.get_ref(), source, into.entry(language).or_default());
    }

    fn text_table(&mut self, above: &str, table: &DeTable<'_>, source: &Source, into: &mut Texts) {
        for (name, value) in table {
            let line = || place::line_at(&source.text, name.span().start);
            let name = name.get_ref();
            let key = if above.is_empty() { name.to_string() } else { format!("{above}.{name}") };
            match value.get_ref() {
                DeValue::String(text) if text.trim().is_empty() => {
                    self.problem(source, line(), format!("text `{key}` is empty"));
                }
                // Ends a message where the program carries them all behind each other.
                DeValue::String(text) if text.contains('\0') => {
                    self.problem(source, line(), format!("text `{key}` has a character U+0000"));
                }
                DeValue::String(text) => {
                    if into.insert(key.clone(), text.to_string()).is_some() {
                        self.problem(source, line(), format!("text `{key}` stands twice"));
                    }
                }
                DeValue::Table(inner) => self.text_table(&key, inner, source, into),
                _ => self.problem(source, line(), format!("text `{key}` must be text")),
            }
        }
    }

    /// Puts the settings in their order, and what is remembered of their places with them.
    pub(super) fn sort_settings(&mut self, settings: &mut Vec<SettingInfo>) {
        let (mine, others) =
            std::mem::take(&mut self.places).into_iter().partition(|(list, _)| *list == "setting");
        self.places = others;
        let mine: Vec<(&'static str, Place)> = mine;
        let mut both: Vec<(SettingInfo, (&'static str, Place))> = settings.drain(..).zip(mine).collect();
        both.sort_by_key(|(info, _)| info.key);
        for (info, place) in both {
            settings.push(info);
            self.places.push(place);
        }
    }

    fn place(&self, list: &str, index: usize) -> Option<&Place> {
        self.places.iter().filter(|(name, _)| *name == list).nth(index).map(|(_, place)| place)
    }

    /// Reports a problem of the n-th entry of a list, at the line of one of its keys: `width_mm`, or `parts.1.width_mm`
    /// for the second part.
    pub(super) fn at(&mut self, list: &'static str, index: usize, key: &str, message: String) {
        let (file, line) = self
            .place(list, index)
            .map_or_else(|| (PathBuf::from(list), 0), |place| (place.file(), place.line(key)));
        let problem = Problem { file, line, message };
        if !self.problems.contains(&problem) {
            self.problems.push(problem);
        }
    }

    /// Fills a sheet up with defaults and checks its values: against floor and ceiling, as whole numbers where things
    /// are counted, and against each other.
    pub(super) fn resolve(&mut self, index: usize, settings: &[SettingInfo], source: SheetSource) -> Sheet {
        for name in source.values.keys().filter(|name| Setting::from_slug(name).is_none()) {
            let names = nearest(name, Setting::ALL.iter().map(|setting| setting.slug()));
            let message = format!("`{name}` is no setting of content/settings.toml; allowed: {names}");
            self.at("sheet", index, name, message);
        }
        let mut held = Vec::with_capacity(settings.len());
        for info in settings {
            let value = source.values.get(info.key.slug()).copied().unwrap_or(info.default);
            let (key, floor, ceiling) = (info.key.slug(), info.floor, info.ceiling);
            if source.values.contains_key(key) {
                if !(floor..=ceiling).contains(&value) {
                    self.at(
                        "sheet",
                        index,
                        key,
                        format!("`{key}` is {value}; {floor} to {ceiling} is allowed"),
                    );
                } else if info.unit == Unit::Count && libm::trunc(value) != value {
                    let message =
                        format!("`{key}` is {value}; a whole number from {floor} to {ceiling} is allowed");
                    self.at("sheet", index, key, message);
                }
            }
            held.push(Held { value, floor, ceiling });
        }
        let sheet = Sheet::new(source.slug, source.coating, held);
        for clash in pairs::clashes(&sheet) {
            let written = |setting: Setting| source.values.contains_key(setting.slug());
            let key = if written(clash.high) { clash.high } else { clash.low };
            if written(key) {
                self.at("sheet", index, key.slug(), clash.to_string());
            } else if let Some(info) = settings.iter().position(|info| info.key == clash.high) {
                self.at("setting", info, "default", clash.to_string());
            }
        }
        sheet
    }
}
