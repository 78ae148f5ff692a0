//! `export`: answers as rows for other programs, and what open standards carry of answers, competencies and cards.

mod folder;
mod rows;
mod standards;
mod table;
mod voidings;

use crate::Output;
use crate::args::Args;
use stepboard::content::Content;
use table::Table;

/// The formats, for messages.
const FORMATS: &str = "ndjson, csv, xapi, case or qti";

pub(crate) fn run(content: &Content, mut args: Args) -> Output {
    let format = args.take("format").unwrap_or_else(|| Table::Ndjson.name().to_owned());
    let out = args.take("out").ok_or_else(|| vec!["a folder is needed, out=FOLDER".to_owned()])?;
    match (format.as_str(), Table::named(&format)) {
        (_, Some(table)) => rows::run(content, args, &out, table),
        ("xapi", _) => standards::xapi(content, args, &out),
        ("case", _) => standards::case(content, args, &out),
        ("qti", _) => standards::qti(content, args, &out),
        _ => Err(vec![format!("`format` is `{format}`; {FORMATS} is allowed")]),
    }
}
