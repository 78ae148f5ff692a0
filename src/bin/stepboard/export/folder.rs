//! The folder that is exported to: `answers/day=YYYY-MM-DD/<tablet>.ndjson`, a file a day and a tablet.
//!
//! A file that is there already is read and joined by the numbers of its rows, so that exporting again, from the same files
//! or from older ones, neither doubles nor loses a row.

use super::table::Table;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use stepboard::exchange::Row;

/// The day of rows whose tablet's clock told none, as programs that read such folders know it (Apache Hive).
const NO_DAY: &str = "__HIVE_DEFAULT_PARTITION__";
/// Bytes of the hash in a file's name.
const NAME_BYTES: usize = 8;

/// What stands for a tablet's name, which may hold anything, or for a content in the name of a file.
pub(super) fn hash(of: &[u8]) -> String {
    Sha256::digest(of).iter().take(NAME_BYTES).map(|byte| format!("{byte:02x}")).collect()
}

/// Where it lies and in which form it is written.
#[derive(Debug, Clone, Copy)]
pub(super) struct Folder<'a> {
    pub(super) root: &'a Path,
    pub(super) table: Table,
}

impl Folder<'_> {
    /// The file of a day and a tablet.
    pub(super) fn answers(&self, day: Option<&str>, device: &str) -> PathBuf {
        let name = hash(device.as_bytes());
        let day = format!("day={}", day.unwrap_or(NO_DAY));
        self.root.join("answers").join(day).join(format!("{name}.{}", self.table.name()))
    }

    /// The file of families and competencies.
    pub(super) fn competencies(&self) -> PathBuf {
        self.root.join(format!("competencies.{}", self.table.name()))
    }

    /// New rows with those that the file holds already, in the order of their numbers.
    pub(super) fn joined(&self, path: &Path, new: Vec<Row>) -> Result<Vec<Row>, Vec<String>> {
        let wrong = |what: String| vec![format!("{}: {what}", path.display())];
        let there: Vec<Row> = match fs::read(path) {
            Ok(bytes) => self.table.read(&bytes).map_err(wrong)?,
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => Vec::new(),
            Err(error) => return Err(wrong(error.to_string())),
        };
        // A decision of a walk has a row for each family that it exercises.
        let mut all: BTreeMap<(String, u64), BTreeMap<String, Row>> = BTreeMap::new();
        for row in there.into_iter().chain(new) {
            let name = (row.device.clone(), row.sequence);
            let under = all.entry(name).or_default();
            if let Some(before) = under.values().find(|before| !before.goes_with(&row)) {
                let what = format!(
                    "device `{}` has two different answers of number {}, to `{}` there and to `{}` now; a number stands for one event: nothing was written",
                    row.device, row.sequence, before.family, row.family
                );
                return Err(wrong(what));
            }
            // Whoever has seen less of the tablet's clock may think of an earlier moment.
            let moment = row.moment.max(under.get(&row.family).and_then(|before| before.moment));
            under.insert(row.family.clone(), Row { moment, ..row });
        }
        Ok(all.into_values().flat_map(BTreeMap::into_values).collect())
    }
}

/// Writes a file whole or not at all.
pub(super) fn write(path: &Path, bytes: &[u8]) -> Result<(), Vec<String>> {
    let write = || {
        path.parent().map(fs::create_dir_all).transpose()?;
        let part = path.with_extension("part");
        fs::write(&part, bytes)?;
        fs::rename(part, path)
    };
    write().map_err(|error| vec![format!("{}: {error}", path.display())])
}
