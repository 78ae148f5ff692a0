//! One row an answer, a folder a day.

use super::folder::{Folder, write};
use super::table::Table;
use super::voidings;
use crate::Output;
use crate::args::Args;
use crate::results::{Read, read_all};
use serde_json::json;
use std::collections::BTreeMap;
use std::path::Path;
use stepboard::content::Content;
use stepboard::exchange::{Row, family_competencies, rows};
use stepboard::record::Voids;

/// The program's edition, as it stands in each row.
const EDITION: &str = env!("CARGO_PKG_VERSION");

pub(super) fn run(content: &Content, args: Args, out: &str, table: Table) -> Output {
    args.nothing_left(&["FILE ...", "out=FOLDER", "format=ndjson|csv"])?;
    let Read { content, events, .. } = read_all(content, &args.names)?;
    let rows = rows(&content, &events, EDITION);
    let counted = rows.len();
    let folder = Folder { root: Path::new(out), table };
    let voidings = voidings::joined(folder.root, &events)?;
    let voids = Voids::of(&voidings);
    // All is read and joined before anything is written: where a file is refused, none is changed.
    let mut joined = Vec::new();
    for ((day, device), theirs) in parted(rows) {
        let path = folder.answers(day.as_deref(), &device);
        let all = folder.joined(&path, theirs)?;
        joined.push((path, all.into_iter().map(|row| row.marked(&voids)).collect::<Vec<_>>()));
    }
    let files = joined.len();
    for (path, rows) in joined {
        write(&path, &table.bytes(&rows).map_err(|what| vec![what])?)?;
    }
    if !voidings.is_empty() {
        let lines = Table::Ndjson.bytes(&voidings).map_err(|what| vec![what])?;
        write(&voidings::path(folder.root), &lines)?;
    }
    let pairs = table.bytes(&family_competencies(&content)).map_err(|what| vec![what])?;
    write(&folder.competencies(), &pairs)?;
    Ok(json!({ "answers": counted, "files": files, "out": out }).to_string())
}

/// Rows of a day and a tablet.
type Parts = BTreeMap<(Option<String>, String), Vec<Row>>;

fn parted(rows: Vec<Row>) -> Parts {
    let mut parts = Parts::new();
    for row in rows {
        parts.entry((row.day.clone(), row.device.clone())).or_default().push(row);
    }
    parts
}
