//! `stepboard export`: one row an answer, each once whatever is exported again; CSV as RFC 4180 has it; columns as documented.

mod support;

use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use stepboard::exchange::paper::PaperCode;
use stepboard::exchange::{COLUMNS, Row, rows};
use stepboard::record::{CardKind, Event, Help, Journal, WalkStep, Within, Wrong};
use support::binary::{json, refused};
use support::log::Log;

/// A folder of its own that is empty.
fn empty(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("export").join(name);
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).expect("a folder");
    folder
}

fn save(folder: &Path, name: &str, events: &[Event]) -> PathBuf {
    let path = folder.join(name);
    fs::write(&path, json!(Journal::new(events.to_vec())).to_string()).expect("written");
    path
}

/// What lies in a folder, by path.
fn files(folder: &Path) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(next) = folders.pop() {
        for entry in fs::read_dir(next).expect("a folder").map(|entry| entry.expect("an entry").path()) {
            if entry.is_dir() {
                folders.push(entry);
            } else {
                let path = entry.strip_prefix(folder).expect("inside").display().to_string();
                found.push((path, fs::read_to_string(&entry).expect("text")));
            }
        }
    }
    found.sort();
    found
}

fn lines(folder: &Path) -> Vec<Row> {
    let answers = files(folder).into_iter().filter(|(path, _)| path.starts_with("answers"));
    answers
        .flat_map(|(_, text)| {
            text.lines().map(|line| serde_json::from_str(line).expect("a row")).collect::<Vec<_>>()
        })
        .collect()
}

fn export(folder: &Path, paths: &[&PathBuf], more: &[&str]) -> Value {
    let out = format!("out={}", folder.display());
    let mut words = vec!["export"];
    words.extend(paths.iter().map(|path| path.to_str().expect("text")));
    words.push(&out);
    words.extend(more);
    json(&words)
}

/// Two days on a tablet whose name would leave the folder if it were taken for a path.
fn two_days() -> Log {
    let mut log = Log::new("../../escape", "Ana, \"the\nfirst\"");
    log.answer("wants-filler", true).open("one", &["room-safe"]);
    log.help = Help::Hint;
    log.answer("wants-filler", false).on(1).answer("recoat", true);
    log.within = Within::Walk { walk: "w".to_owned(), guided: true };
    log.answer("recoat", false);
    log
}

#[test]
fn exporting_again_doubles_nothing_and_loses_nothing() {
    let folder = empty("again");
    let log = two_days();
    let whole = save(&folder, "whole.json", &log.events);
    let part = save(&folder, "part.json", &log.events[..3]);
    let out = folder.join("out");
    assert_eq!(export(&out, &[&whole], &[])["answers"], 4);
    let first = files(&out);
    // Two days, and the list of competencies; nothing beside the folder.
    assert_eq!(first.len(), 3, "{first:?}");
    assert!(
        first[0].0.starts_with("answers/day=2027-01-01/")
            && first[1].0.starts_with("answers/day=2027-01-02/")
    );
    export(&out, &[&whole], &[]);
    assert_eq!(files(&out), first);
    // An older file of the same tablet, and the same file twice.
    export(&out, &[&part], &[]);
    export(&out, &[&whole, &whole, &part], &[]);
    assert_eq!(files(&out), first);
    // The other way round the rows come out the same.
    let other = folder.join("other");
    export(&other, &[&part], &[]);
    export(&other, &[&whole], &[]);
    assert_eq!(files(&other), first);
}

#[test]
fn a_row_tells_what_the_answer_was() {
    let rows = rows(&support::content(), &two_days().events, "0.0.0");
    let [practice, check, _, walk] = rows.as_slice() else { panic!("four answers") };
    assert_eq!((practice.sequence, practice.is_right, practice.set_name.as_deref()), (1, 1, None));
    assert_eq!(
        (check.sequence, check.is_right, check.set_name.as_deref(), check.attempt.as_deref()),
        (3, 0, Some("a-set"), Some("one"))
    );
    assert_eq!(
        (walk.attempt.as_deref(), walk.guided, walk.day.as_deref()),
        (Some("w"), Some(1), Some("2027-01-02"))
    );
    assert_eq!(
        practice.moment,
        Some(1_798_790_460),
        "2027-01-01T08:01:00Z by `date -u -d @…` of GNU coreutils"
    );
    assert_eq!((practice.competencies.as_str(), practice.voided), ("pores-filled", 0));
}

/// A decision of a walk is a row for each family that it says something of, under one number.
#[test]
fn a_decision_of_a_walk_is_a_row_for_each_family() {
    let says = [("seal-check", Some("hazard.seal-check-each-time")), ("recoat-now", None)];
    let mut log = two_days();
    log.decides("w-1", "plain-plate", &says).walks("w-1", "plain-plate", WalkStep::LetGo);
    let all = rows(&support::content(), &log.events, "");
    assert_eq!(all.len(), 6);
    let told: Vec<_> = all[4..]
        .iter()
        .map(|row| (row.sequence, row.family.as_str(), row.is_right, row.sure_and_wrong, row.slip.as_deref()))
        .collect();
    let rule = Some("hazard.seal-check-each-time");
    assert_eq!(told, [(6, "seal-check", 0, 1, rule), (6, "recoat-now", 1, 0, None)]);
    assert_eq!((all[4].guided, all[4].guess, all[4].attempt.as_deref()), (Some(0), Some(0.5), Some("w-1")));
    // Exported again, each is there once; another answer of that number is refused.
    let folder = empty("walked");
    let (whole, out) = (save(&folder, "whole.json", &log.events), folder.join("out"));
    for _ in 0..2 {
        export(&out, &[&whole], &[]);
        assert_eq!(lines(&out).len(), 6);
    }
    log.events.truncate(5);
    log.within = Within::Practice;
    log.answer("mask-wants", true);
    let other = save(&folder, "other.json", &log.events);
    let (out, other) = (format!("out={}", out.display()), other.display().to_string());
    refused(&["export", &other, &out], "", &["two different answers of number 6"]);
    // A rule that is void takes the rows that rest on it with it.
    log.events.truncate(5);
    log.decides("w-1", "plain-plate", &says);
    log.voids(Wrong::Rule { rule: says[0].1.expect("one").to_owned(), cards: Vec::new() }, "Wrong table");
    let voided: Vec<u8> = rows(&support::content(), &log.events, "").iter().map(|row| row.voided).collect();
    assert_eq!(voided[4..], [1, 0]);
    // Where another rule was broken too, it stands until that is void as well.
    log.events.truncate(5);
    let mut two = support::log::decided(&says);
    two.exercised[0].broke.push("hazard.draw-is-no-respirator".to_owned());
    log.walks("w-1", "plain-plate", WalkStep::Decided(Box::new(two)));
    for (rule, wanted) in [(says[0].1.expect("one"), 0), ("hazard.draw-is-no-respirator", 1)] {
        log.voids(Wrong::Rule { rule: rule.to_owned(), cards: Vec::new() }, "Wrong table");
        let rows = rows(&support::content(), &log.events, "");
        assert_eq!((rows[4].voided, rows[5].voided), (wanted, 0));
        assert_eq!(rows[4].clone().marked(&stepboard::record::Voids::of(&log.events)).voided, wanted);
    }
}

#[test]
fn what_was_voided_is_marked() {
    let mut log = two_days();
    let cards = CardKind { family: "wants-filler".to_owned(), version: 1 };
    log.voids(Wrong::Cards(cards), "Wrong table");
    let voided: Vec<u8> = rows(&support::content(), &log.events, "").iter().map(|row| row.voided).collect();
    assert_eq!(voided, [1, 1, 0, 0]);
}

/// A file that knows less of what was found wrong takes nothing back; a voiding that is taken back is taken back in any order.
#[test]
fn what_was_voided_stays_so_whatever_is_exported_again() {
    let folder = empty("voided");
    let mut log = two_days();
    let part = save(&folder, "part.json", &log.events);
    let cards = CardKind { family: "wants-filler".to_owned(), version: 1 };
    log.voids(Wrong::Cards(cards), "Wrong table");
    let void = log.events.last().expect("a voiding").stamp().name();
    let whole = save(&folder, "whole.json", &log.events);
    log.voids(Wrong::Void { void }, "It was right after all");
    let lifted = save(&folder, "lifted.json", &log.events);
    let voided = |out: &Path| lines(out).iter().map(|row| row.voided).collect::<Vec<_>>();
    let out = folder.join("out");
    for (path, wanted) in [
        (&part, [0, 0, 0, 0]),
        (&whole, [1, 1, 0, 0]),
        (&part, [1, 1, 0, 0]),
        (&lifted, [0, 0, 0, 0]),
        (&whole, [0, 0, 0, 0]),
    ] {
        export(&out, &[path], &[]);
        assert_eq!(voided(&out), wanted, "{}", path.display());
    }
    // Another tablet's voiding touches what lay in the same files already.
    let mut other = Log::new("b", "Ben");
    other.voids(Wrong::Set { set: "a-set".to_owned() }, "Wrong picture");
    let other = save(&folder, "other.json", &other.events);
    let out = folder.join("beside");
    export(&out, &[&part], &["format=csv"]);
    export(&out, &[&part, &other], &["format=csv"]);
    export(&out, &[&part], &["format=csv"]);
    let all = files(&out).into_iter().map(|(_, text)| text).collect::<String>();
    assert_eq!(all.matches(",room-safe,1,").count() + all.matches(",pores-filled,1,").count(), 1, "{all}");
    assert!(all.contains("Wrong picture") && !all.contains("Ilse"), "nobody stands there by name");
}

/// What spreadsheets take for a formula by its first character (OWASP, "CSV Injection"), and names that are empty.
#[test]
fn a_table_reckons_nothing_and_reads_back_as_it_was() {
    let folder = empty("formulas");
    let formulas = ["=1+1", "+cmd|'/c calc'!A0", "-2+3", "@SUM(A1)", "\t=1", "\r=1", " =1", "'=1", "-7"];
    let mut paths = Vec::new();
    for (nth, name) in formulas.iter().enumerate() {
        let mut log = Log::new(&format!("{name} {nth}"), name);
        log.open("", &["room-safe"]).answer("wants-filler", true);
        log.within = Within::Check { attempt: String::new(), set: String::new() };
        log.answer("wants-filler", true);
        paths.push(save(&folder, &format!("{nth}.json"), &log.events));
    }
    let paths: Vec<&PathBuf> = paths.iter().collect();
    let (out, beside) = (folder.join("out"), folder.join("beside"));
    export(&out, &paths, &["format=csv"]);
    let first = files(&out);
    // Read back, joined and written again, nothing is refused and nothing changes.
    export(&out, &paths, &["format=csv"]);
    assert_eq!(files(&out), first);
    export(&beside, &paths, &[]);
    let mut told: Vec<Row> = Vec::new();
    for (_, text) in first.iter().filter(|(path, _)| path.starts_with("answers")) {
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let names = reader.headers().expect("names").clone();
        for record in reader.records() {
            let record = record.expect("a record");
            for field in record.iter().filter(|field| field.parse::<f64>().is_err()) {
                assert!(!field.trim_start().starts_with(['=', '+', '-', '@']), "{field}");
            }
            // As `sql/README.md` says: without the apostrophe a field is what it was.
            let plain: csv::StringRecord =
                record.iter().map(|field| field.strip_prefix('\'').unwrap_or(field)).collect();
            told.push(plain.deserialize(Some(&names)).expect("a row"));
        }
    }
    let key = |row: &Row| (row.device.clone(), row.sequence);
    let mut wanted = lines(&beside);
    told.sort_by_key(key);
    wanted.sort_by_key(key);
    assert_eq!(told, wanted);
    assert!(wanted.len() == 2 * formulas.len() && wanted.iter().all(|row| row.attempt.is_none()));
}

/// RFC 4180, section 2: a line of names, lines ended by CR LF, a field with a quote, a comma or a line end in quotes, a quote
/// in it doubled.
#[test]
fn csv_is_as_the_standard_has_it() {
    let folder = empty("csv");
    let out = folder.join("out");
    export(&out, &[&save(&folder, "whole.json", &two_days().events)], &["format=csv"]);
    let text = files(&out).into_iter().find(|(path, _)| path.starts_with("answers")).expect("a file").1;
    let names: Vec<&str> = COLUMNS.iter().map(|column| column.name).collect();
    assert!(text.starts_with(&format!("{}\r\n", names.join(","))), "{text}");
    assert!(text.ends_with("\r\n"));
    assert!(text.contains(",\"Ana, \"\"the\nfirst\"\"\","), "{text}");
    // The same rows as the lines of JSON.
    let beside = folder.join("beside");
    export(&beside, &[&folder.join("whole.json")], &[]);
    let mut read: Vec<Row> = Vec::new();
    for (path, text) in files(&out).iter().filter(|(path, _)| path.starts_with("answers")) {
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        read.extend(reader.deserialize().map(|row| row.unwrap_or_else(|error| panic!("{path}: {error}"))));
    }
    assert_eq!(read, lines(&beside));
}

#[test]
fn what_cannot_be_exported_changes_nothing() {
    let folder = empty("refused");
    let log = two_days();
    let whole = save(&folder, "whole.json", &log.events);
    let out = folder.join("out");
    export(&out, &[&whole], &[]);
    let before = files(&out);
    let words = |path: &PathBuf, more: &str| {
        vec![
            "export".to_owned(),
            path.display().to_string(),
            format!("out={}", out.display()),
            more.to_owned(),
        ]
    };
    let refuse = |words: Vec<String>, says: &[&str]| {
        refused(&words.iter().map(String::as_str).collect::<Vec<_>>(), "", says);
        assert_eq!(files(&out), before);
    };
    // Another answer under a number that is taken, behind a new one that would be written.
    let mut other = log.clone();
    other.on(9).answer("recoat", true);
    if let Some(Event::Answered(entry)) = other.events.get_mut(0) {
        let entry = Arc::make_mut(entry);
        entry.seed += 1;
    }
    let other = save(&folder, "other.json", &other.events);
    refuse(words(&other, "format=ndjson"), &["two different answers of number 1", "nothing was written"]);
    refuse(words(&whole, "format=xml"), &["`format` is `xml`", "ndjson, csv, xapi, case or qti is allowed"]);
    refuse(words(&folder.join("none.json"), "format=ndjson"), &["none.json"]);
    refuse(vec!["export".to_owned(), whole.display().to_string()], &["out=FOLDER"]);
    refuse(words(&whole, "format=xapi"), &["home=ADDRESS is needed"]);
}

#[test]
fn a_set_is_exported_as_one_of_its_worksheets_has_it() {
    let folder = empty("set");
    let out = format!("out={}", folder.display());
    let words = ["export", "first-week", &out, "format=qti"];
    let told = json(&words);
    let count = |told: &Value| {
        told["items"].as_u64().expect("a count") + told["left_out"].as_array().expect("a list").len() as u64
    };
    assert_eq!(count(&told), 12, "{told}");
    // Whatever is left out says why, in a word and in words.
    assert!(
        told["left_out"]
            .as_array()
            .expect("a list")
            .iter()
            .all(|one| one["words"].as_str().is_some_and(|words| words.ends_with('.')))
    );
    let first = PaperCode::of("first-week", "", 0).to_string();
    assert_eq!(told["code"], json!(first));
    assert_eq!(json(&[&words[..], &[&format!("code={first}")]].concat()), told);
    let other = format!("code={}", PaperCode::of("first-week", "", 1));
    assert_ne!(json(&[&words[..], &[&other]].concat())["file"], told["file"]);
    let strange = format!("code={}", PaperCode::of("filling", "", 0));
    refused(&[&words[..], &[&strange]].concat(), "", &["code", "a worksheet of this set is wanted"]);
    refused(&[&words[..], &["sheet=nitrocellulose"]].concat(), "", &["`sheet` is told by the set itself"]);
    refused(
        &["export", "wants-filler:7", &out, "format=qti", &other],
        "",
        &["`code` goes with one set alone"],
    );
    refused(&["export", "first-month", &out, "format=qti"], "", &["first-month"]);
}

#[test]
fn columns_are_documented_as_they_are_written() {
    let row = rows(&support::content(), &two_days().events, "0.0.0").remove(0);
    let written = serde_json::to_string(&row).expect("json");
    let places: Vec<usize> = COLUMNS
        .iter()
        .map(|column| written.find(&format!("\"{}\":", column.name)).expect(column.name))
        .collect();
    assert!(places.is_sorted(), "the columns stand in the order of COLUMNS");
    assert_eq!(
        serde_json::to_value(&row).expect("json").as_object().expect("an object").len(),
        COLUMNS.len()
    );
    let sql = |name: &str| {
        fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("sql").join(name)).expect("text")
    };
    let told = COLUMNS.map(|one| {
        let empty = if one.empty { ", may be empty" } else { "" };
        format!("| `{}` | {}{empty} | {} |\n", one.name, one.sql, one.means)
    });
    let table = format!("| column | type | says |\n| --- | --- | --- |\n{}", told.concat());
    assert!(sql("README.md").contains(&table), "sql/README.md is out of date; it should have\n{table}");
    // Both views name every column with its type.
    let (duckdb, clickhouse) = (sql("duckdb.sql"), sql("clickhouse.sql"));
    for one in COLUMNS {
        assert!(duckdb.contains(&format!("{}: '{}'", one.name, one.sql)), "{}", one.name);
        let plain = match one.sql {
            "VARCHAR" => "String",
            "BIGINT" => "Int64",
            "INTEGER" => "Int32",
            "DOUBLE" => "Float64",
            "DATE" => "Date32",
            other => panic!("{other}"),
        };
        let told = if one.empty {
            format!("{} Nullable({plain})", one.name)
        } else {
            format!("{} {plain}", one.name)
        };
        assert!(clickhouse.contains(&told), "{told}");
    }
    let names: BTreeSet<&str> = COLUMNS.iter().map(|one| one.name).collect();
    assert_eq!(names.len(), COLUMNS.len());
}
