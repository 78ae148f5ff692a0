//! Where an entry stands in its file, so that a problem can name the line.

use super::Source;
use std::path::PathBuf;
use std::rc::Rc;
use toml::de::{DeTable, DeValue};

/// Where an entry stands. Its lines are looked up only when something is wrong with it.
#[derive(Debug, Clone)]
pub(super) struct Place {
    source: Rc<Source>,
    /// The n-th entry of the list of that name; the whole file where there is none.
    entry: Option<(&'static str, usize)>,
}

impl Place {
    pub(super) fn of(source: &Rc<Source>, entry: Option<(&'static str, usize)>) -> Self {
        Self { source: Rc::clone(source), entry }
    }

    pub(super) fn file(&self) -> PathBuf {
        self.source.path.clone()
    }

    /// Line of a key, given by its path or its last part; else of what it would stand in; else of the entry.
    pub(super) fn line(&self, key: &str) -> usize {
        Lines::of(&self.source, self.entry).line(key)
    }
}

/// The lines of an entry's keys.
#[derive(Debug)]
struct Lines {
    start: usize,
    keys: Vec<(String, usize)>,
}

impl Lines {
    fn of(source: &Source, entry: Option<(&str, usize)>) -> Self {
        let mut place = Self { start: 1, keys: Vec::new() };
        let Ok(table) = DeTable::parse(&source.text) else { return place };
        match entry {
            None => place.collect(&source.text, "", table.get_ref()),
            Some((name, index)) => {
                if let Some(DeValue::Array(list)) = table.get_ref().get(name).map(|value| value.get_ref())
                    && let Some(value) = list.get(index)
                    && let DeValue::Table(entry) = value.get_ref()
                {
                    place.start = line_at(&source.text, value.span().start);
                    place.collect(&source.text, "", entry);
                }
            }
        }
        place
    }

    /// Keys by their path in the entry: `width_mm`, `parts.1.width_mm`, `values.clear-wet`, `families.2`.
    fn collect(&mut self, text: &str, above: &str, table: &DeTable<'_>) {
        for (key, value) in table {
            let path = format!("{above}{}", key.get_ref());
            self.keys.push((path.clone(), line_at(text, key.span().start)));
            match value.get_ref() {
                DeValue::Table(inner) => self.collect(text, &format!("{path}."), inner),
                DeValue::Array(list) => {
                    for (index, item) in list.iter().enumerate() {
                        self.keys.push((format!("{path}.{index}"), line_at(text, item.span().start)));
                        if let DeValue::Table(inner) = item.get_ref() {
                            self.collect(text, &format!("{path}.{index}."), inner);
                        }
                    }
                }
                _ => {}
            }
        }
    }

    fn line(&self, key: &str) -> usize {
        let inside = format!(".{key}");
        let found = self
            .keys
            .iter()
            .find(|(path, _)| path == key)
            .or_else(|| self.keys.iter().find(|(path, _)| path.ends_with(&inside)));
        match (found, key.rsplit_once('.')) {
            (Some((_, line)), _) => *line,
            (None, Some((above, _))) => self.line(above),
            (None, None) => self.start,
        }
    }
}

/// Line of a byte, from 1.
pub(super) fn line_at(text: &str, byte: usize) -> usize {
    1 + text.bytes().take(byte).filter(|b| *b == b'\n').count()
}
