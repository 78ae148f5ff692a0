//! The two forms of a table: a JSON object a line, and CSV of RFC 4180 with a line of names.

use serde::Serialize;
use serde::de::DeserializeOwned;

/// A form of a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Table {
    /// A JSON object a line.
    Ndjson,
    /// Comma-separated, lines ended by CR LF, quoted where needed: RFC 4180.
    Csv,
}

impl Table {
    /// The form of that name.
    pub(super) fn named(name: &str) -> Option<Self> {
        [Self::Ndjson, Self::Csv].into_iter().find(|table| table.name() == name)
    }

    /// Its name, and what its files end with.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Ndjson => "ndjson",
            Self::Csv => "csv",
        }
    }

    /// The rows as bytes.
    pub(super) fn bytes<T: Serialize>(self, rows: &[T]) -> Result<Vec<u8>, String> {
        match self {
            Self::Ndjson => {
                let mut bytes = Vec::new();
                for row in rows {
                    serde_json::to_writer(&mut bytes, row).map_err(|error| error.to_string())?;
                    bytes.push(b'\n');
                }
                Ok(bytes)
            }
            Self::Csv => {
                let mut writer =
                    csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
                for row in rows {
                    writer.serialize(row).map_err(|error| error.to_string())?;
                }
                writer.into_inner().map_err(|error| error.to_string())
            }
        }
    }

    /// Reads what was written so; an error names the line or the row.
    pub(super) fn read<T: DeserializeOwned>(self, bytes: &[u8]) -> Result<Vec<T>, String> {
        match self {
            Self::Ndjson => {
                let lines =
                    bytes.split(|byte| *byte == b'\n').enumerate().filter(|(_, line)| !line.is_empty());
                let read = |(place, line)| {
                    serde_json::from_slice(line).map_err(|error| format!("line {}: {error}", place + 1))
                };
                lines.map(read).collect()
            }
            Self::Csv => {
                let mut reader = csv::Reader::from_reader(bytes);
                reader.deserialize().map(|row| row.map_err(|error| error.to_string())).collect()
            }
        }
    }
}
