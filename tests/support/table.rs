//! Reads a published table of `tests/data/`.

use std::collections::BTreeMap;
use std::path::Path;

/// One row of a table, by column name.
#[derive(Debug)]
pub(crate) struct Row {
    cells: BTreeMap<String, String>,
    file: String,
    number: usize,
}

impl Row {
    /// The text of a column.
    pub(crate) fn text(&self, column: &str) -> &str {
        &self[column]
    }

    /// The number of a column.
    pub(crate) fn number(&self, column: &str) -> f64 {
        self.text(column).parse().unwrap_or_else(|_| panic!("`{column}` is no number in {self:?}"))
    }

    /// Notes for the coverage table that this row was met by a rule of `family`: call it after its checks.
    pub(crate) fn checked(&self, family: &str) {
        super::covered::row(family, &self.file, self.number);
    }

    /// Notes for the coverage table that no rule of `family` holds what this row says: call it where the test names it.
    #[allow(dead_code, reason = "each test file uses a part")]
    pub(crate) fn left_out(&self, family: &str) {
        super::covered::left_out(family, &self.file, self.number);
    }

    /// The number of a column that may be empty.
    pub(crate) fn maybe_number(&self, column: &str) -> Option<f64> {
        (!self.text(column).is_empty()).then(|| self.number(column))
    }
}

impl std::ops::Index<&str> for Row {
    type Output = String;

    fn index(&self, column: &str) -> &String {
        self.cells.get(column).unwrap_or_else(|| panic!("no column `{column}` in {self:?}"))
    }
}

/// Every row of `tests/data/<file>`, the first one after the header is row 1.
pub(crate) fn table(file: &str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data").join(file);
    let mut reader = csv::Reader::from_path(&path).unwrap_or_else(|error| panic!("{file}: {error}"));
    let rows = reader.deserialize().zip(1..).map(|(cells, number)| {
        let cells = cells.unwrap_or_else(|error| panic!("{file}, row {number}: {error}"));
        Row { cells, file: file.to_owned(), number }
    });
    rows.collect()
}
