//! Reads a published table of `tests/data/`.

use std::collections::BTreeMap;
use std::path::Path;

/// One row of a table, by column name.
#[derive(Debug)]
pub(crate) struct Row(BTreeMap<String, String>);

impl Row {
    /// The text of a column.
    pub(crate) fn text(&self, column: &str) -> &str {
        self.0.get(column).unwrap_or_else(|| panic!("no column `{column}` in {self:?}"))
    }

    /// The number of a column.
    pub(crate) fn number(&self, column: &str) -> f64 {
        self.text(column).parse().unwrap_or_else(|_| panic!("`{column}` is no number in {self:?}"))
    }

    /// The number of a column that may be empty.
    pub(crate) fn maybe_number(&self, column: &str) -> Option<f64> {
        (!self.text(column).is_empty()).then(|| self.number(column))
    }
}

/// Every row of `tests/data/<file>`.
pub(crate) fn table(file: &str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data").join(file);
    let mut reader = csv::Reader::from_path(&path).unwrap_or_else(|error| panic!("{file}: {error}"));
    let rows: Result<Vec<_>, _> = reader.deserialize().collect();
    rows.unwrap_or_else(|error| panic!("{file}: {error}")).into_iter().map(Row).collect()
}
