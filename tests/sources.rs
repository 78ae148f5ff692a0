//! Every table that tests check against names its source.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

const COLUMNS: usize = 6;

#[test]
fn every_file_of_test_data_has_a_source_and_every_source_its_file() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data");
    let sources = fs::read_to_string(folder.join("SOURCES.md")).expect("SOURCES.md can be read");
    let mut named = BTreeSet::new();
    for line in sources.lines().filter(|line| line.starts_with("| `")) {
        let cells: Vec<&str> = line.trim_matches('|').split('|').map(str::trim).collect();
        assert_eq!(cells.len(), COLUMNS, "`{line}` has not all columns");
        assert!(cells.iter().all(|cell| !cell.is_empty()), "`{line}` has an empty cell");
        assert!(named.insert(cells[0].trim_matches('`').to_owned()), "{} stands twice", cells[0]);
    }
    let mut found = BTreeSet::new();
    for entry in fs::read_dir(&folder).expect("tests/data can be listed") {
        let name = entry.expect("an entry").file_name().into_string().expect("a plain name");
        if name != "SOURCES.md" {
            found.insert(name);
        }
    }
    assert_eq!(found, named, "left: files of tests/data; right: entries of SOURCES.md");
}
