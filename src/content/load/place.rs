//! Where an entry stands in its file, so that a problem can name the line.

use super::Source;
use std::path::PathBuf;
use toml::de::{DeTable, DeValue};

/// An entry's file and the lines of its keys.
#[derive(Debug, Clone, Default)]
pub(super) struct Place {
    pub(super) file: PathBuf,
    start: usize,
    keys: Vec<(String, usize)>,
}

impl Place {
    /// The n-th entry of the list of that name, or the whole file.
    pub(super) fn of(source: &Source, entry: Option<(&str, usize)>) -> Self {
        let mut place = Self { file: source.path.clone(), start: 1, keys: Vec::new() };
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

    /// Line of a key, given by its path or its last part; else of what it would stand in; else of the entry.
    pub(super) fn line(&self, key: &str) -> usize {
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
