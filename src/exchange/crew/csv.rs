//! Tables as CSV (RFC 4180), safe to open in a spreadsheet.

use std::fmt::Write;

/// A field of a row.
#[derive(Debug, Clone, PartialEq)]
pub enum Field {
    /// Text, which may come from anybody.
    Text(String),
    /// A number of ours; none where there is none.
    Number(Option<f64>),
}

impl Field {
    /// A text.
    #[must_use]
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }

    /// A count.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "counts are far under 2^53")]
    pub fn count(count: usize) -> Self {
        Self::Number(Some(count as f64))
    }
}

/// What makes a spreadsheet take a text for a formula when it stands first (OWASP, "CSV Injection").
const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

/// Rows as CSV: fields apart by commas, lines ended by CRLF, quoted where need be. A text that a spreadsheet would take for a
/// formula gets an apostrophe before it.
#[must_use]
pub fn csv(rows: &[Vec<Field>]) -> String {
    let mut text = String::new();
    for row in rows {
        for (place, field) in row.iter().enumerate() {
            if place > 0 {
                text.push(',');
            }
            match field {
                Field::Text(told) => write_text(&mut text, told),
                // What is written to a string is always written.
                Field::Number(Some(number)) if number.is_finite() => drop(write!(text, "{number}")),
                Field::Number(_) => {}
            }
        }
        text.push_str("\r\n");
    }
    text
}

fn write_text(into: &mut String, told: &str) {
    let safe = if told.starts_with(FORMULA) { format!("'{told}") } else { told.to_owned() };
    if safe.contains(['"', ',', '\r', '\n']) {
        into.push('"');
        into.push_str(&safe.replace('"', "\"\""));
        into.push('"');
    } else {
        into.push_str(&safe);
    }
}
