//! `check`: content folders, set files, shop sheet files and files of a content list; and files that travel.

use crate::Output;
use crate::args::Args;
use serde_json::{Value, json};
use std::path::Path;
use stepboard::content::{Content, load};
use stepboard::exchange::set::{SET, Set, WITHDRAWAL, Withdrawal};
use stepboard::exchange::{JobTicket, OwnSheet, RESULTS, Refused, Results, SHEET, TICKET, WALK, WalkFile};

pub(crate) fn run(content: &Content, args: Args) -> Output {
    args.nothing_left(&["PATH"])?;
    let mut checked = Vec::new();
    let mut wrong = Vec::new();
    for name in &args.names {
        match one(content, Path::new(name)) {
            Ok(kind) => checked.push(json!({ "path": name, "kind": kind })),
            Err(mut lines) => wrong.append(&mut lines),
        }
    }
    if args.names.is_empty() {
        checked.push(json!({ "path": Value::Null, "kind": "content", "counts": counts(content) }));
    }
    if wrong.is_empty() { Ok(json!({ "ok": true, "checked": checked }).to_string()) } else { Err(wrong) }
}

fn counts(content: &Content) -> Value {
    json!({
        "woods": content.woods.len(), "sheets": content.sheets.len(), "tickets": content.tickets.len(),
        "competencies": content.competencies.len(), "families": content.families.len(), "rules": content.rules.len(), "cautions": content.cautions.len(),
    })
}

/// What the path holds, or what is wrong with it.
fn one(content: &Content, path: &Path) -> Result<&'static str, Vec<String>> {
    let lines = |problems: Vec<load::Problem>| problems.iter().map(ToString::to_string).collect::<Vec<_>>();
    if path.is_dir() {
        // Problems name files inside the folder; say where the folder is.
        let inside = |problem: load::Problem| load::Problem { file: path.join(problem.file), ..problem };
        let all = |problems: Vec<load::Problem>| lines(problems.into_iter().map(inside).collect());
        let sources = load::sources(path).map_err(|problem| all(vec![problem]))?;
        return load::load(&sources).map(|_| "content").map_err(all);
    }
    let text = std::fs::read_to_string(path).map_err(|error| vec![format!("{}: {error}", path.display())])?;
    if text.trim_start().starts_with('{') {
        return travels(content, &text).map_err(|refused| vec![format!("{}: {refused}", path.display())]);
    }
    let shipped = load::Source::embedded().map_err(|error| vec![format!("this build is broken: {error}")])?;
    let source = load::Source { path: path.to_path_buf(), text };
    load::file(&source, content, &shipped).map(load::FileKind::word).map_err(lines)
}

/// What a file that travels is, or why it is refused.
fn travels(content: &Content, text: &str) -> Result<&'static str, Refused> {
    let format = serde_json::from_str::<Value>(text)?["format"].as_str().unwrap_or_default().to_owned();
    let bytes = text.as_bytes();
    if format == SHEET.format {
        OwnSheet::read(bytes, content).map(|_| SHEET.format)
    } else if format == WITHDRAWAL.format {
        Withdrawal::read(bytes).map(|_| WITHDRAWAL.format)
    } else if format == RESULTS.format {
        Results::read(bytes).map(|_| RESULTS.format)
    } else if format == WALK.format {
        WalkFile::read(bytes, content).map(|_| WALK.format)
    } else if format == TICKET.format {
        JobTicket::read(bytes, content).map(|_| TICKET.format)
    } else {
        // Whatever else it calls itself is told as no set.
        Set::read(bytes, content).map(|_| SET.format)
    }
}
