//! The two forms of a table: a JSON object a line, and CSV of RFC 4180 with a line of names.
//!
//! A spreadsheet takes a text of CSV that begins like a formula for one and reckons it. Such a text, whoever typed it, stands
//! behind an apostrophe; so does one that begins with an apostrophe itself, so that it is read back as it was.

use csv::StringRecord;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::borrow::Cow;

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
            Self::Csv => csv_bytes(rows).map_err(|error| error.to_string()),
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
                let names = reader.headers().map_err(|error| error.to_string())?.clone();
                let row = |record: Result<StringRecord, csv::Error>| {
                    let record: StringRecord = record?.iter().map(told).collect();
                    record.deserialize(Some(&names))
                };
                reader.records().map(|record| row(record).map_err(|error| error.to_string())).collect()
            }
        }
    }
}

fn csv_bytes<T: Serialize>(rows: &[T]) -> Result<Vec<u8>, csv::Error> {
    let mut plain = csv::Writer::from_writer(Vec::new());
    for row in rows {
        plain.serialize(row)?;
    }
    let plain = plain.into_inner().map_err(csv::IntoInnerError::into_error)?;
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    for record in csv::ReaderBuilder::new().has_headers(false).from_reader(plain.as_slice()).records() {
        let record: StringRecord = record?.iter().map(harmless).collect();
        writer.write_record(&record)?;
    }
    writer.into_inner().map_err(|error| error.into_error().into())
}

/// Stands before a text that a spreadsheet would reckon.
const APOSTROPHE: char = '\'';
/// What a text begins with that is taken for a formula (OWASP, "CSV Injection"); blanks before it are looked through.
const FORMULA: [char; 4] = ['=', '+', '-', '@'];

/// A field as a spreadsheet may have it; a number stays as it is.
fn harmless(field: &str) -> Cow<'_, str> {
    let begins = field.trim_start().starts_with(FORMULA) || field.starts_with(['\t', '\r', APOSTROPHE]);
    if begins && !field.parse::<f64>().is_ok_and(f64::is_finite) {
        return Cow::Owned(format!("{APOSTROPHE}{field}"));
    }
    Cow::Borrowed(field)
}

/// A field as it was before that.
fn told(field: &str) -> &str {
    field.strip_prefix(APOSTROPHE).unwrap_or(field)
}
