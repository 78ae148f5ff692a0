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
            None => place.collect(&source.text, table.get_ref()),
            Some((name, index)) => {
                if let Some(DeValue::Array(list)) = table.get_ref().get(name).map(|value| value.get_ref())
                    && let Some(value) = list.get(index)
                    && let DeValue::Table(entry) = value.get_ref()
                {
                    place.start = line_at(&source.text, value.span().start);
                    place.collect(&source.text, entry);
                }
            }
        }
        place
    }

    fn collect(&mut self, text: &str, table: &DeTable<'_>) {
        for (key, value) in table {
            self.keys.push((key.get_ref().to_string(), line_at(text, key.span().start)));
            match value.get_ref() {
                DeValue::Table(inner) => self.collect(text, inner),
                DeValue::Array(list) => {
                    for item in list.iter() {
                        if let DeValue::Table(inner) = item.get_ref() {
                            self.collect(text, inner);
                        }
                    }
                }
                _ => {}
            }
        }
    }

    /// Line of a key, or of the entry where the key does not stand.
    pub(super) fn line(&self, key: &str) -> usize {
        self.keys.iter().find(|(name, _)| name == key).map_or(self.start, |(_, line)| *line)
    }
}

/// Line of a byte, from 1.
pub(super) fn line_at(text: &str, byte: usize) -> usize {
    1 + text.bytes().take(byte).filter(|b| *b == b'\n').count()
}
