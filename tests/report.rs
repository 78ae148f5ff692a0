//! `stepboard report`: journals of several tablets read as one. The numbers are those of the matrix that `reference_items.rs`
//! takes from Python, now through journals and the command.

mod support;

use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use stepboard::card::{Answer, Card, deal, grade};
use stepboard::content::World;
use stepboard::record::{CardKind, Certainty, Entry, Event, Journal, SheetName, Within, Wrong};
use support::binary::{json, refused};
use support::log::{Log, families};
use support::table::{Row, table};

/// One unit of the last printed digit.
const SIXTH: f64 = 1e-6;

fn file(name: &str, value: &Value) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::write(&path, value.to_string()).expect("written");
    path
}

fn report(files: &[&PathBuf]) -> Value {
    let mut words = vec!["report"];
    words.extend(files.iter().map(|path| path.to_str().expect("text")));
    json(&words)
}

fn near(found: &Value, wanted: f64) {
    let found = found.as_f64().expect("a number");
    assert!((found - wanted).abs() <= SIXTH, "{found}, wanted {wanted}");
}

/// The families that stand for the items of the matrix.
fn eight() -> Vec<String> {
    families(&support::content(), "room-safe").into_iter().take(8).collect()
}

/// What one of the twelve did: a check of eight cards, each family again afterwards, which counts no more.
fn log(row: &Row, families: &[String]) -> Log {
    let mut log = Log::new(row.text("person"), row.text("person"));
    log.open("one", &["room-safe"]);
    for (place, family) in families.iter().enumerate() {
        log.answer(family, row.number(&format!("i{}", place + 1)) == 1.0);
    }
    for family in families {
        log.answer(family, true);
    }
    log
}

#[test]
fn the_matrix_comes_out_of_journals_as_computed() {
    let families = eight();
    let rows = table("item_matrix.csv");
    let logs: Vec<Log> = rows.iter().map(|row| log(row, &families)).collect();
    let write = |name: &str, logs: &[Log]| {
        let paths = logs.iter().map(|log| {
            let journal = json!(Journal::new(log.events.clone()));
            file(&format!("{name}-{}.json", log.person), &journal)
        });
        paths.collect::<Vec<_>>()
    };
    let paths = write("matrix", &logs);
    let told = report(&paths.iter().collect::<Vec<_>>());
    assert_eq!((&told["files"], &told["answers"], &told["counted"]), (&json!(12), &json!(192), &json!(96)));
    for (place, row) in table("item_check.csv").iter().enumerate() {
        let item = told["families"].as_array().expect("families").iter();
        let mut item = item.filter(|one| one["family"] == families[place].as_str());
        let item = item.next().expect("told");
        near(&item["difficulty"], row.number("difficulty_p"));
        near(&item["with_rest"], row.number("r_pointbiserial_corrected"));
        near(&item["known"], row.number("p_corrected_for_guessing_4opt"));
        assert_eq!(item["look"].as_array().map(Vec::len), Some(usize::from(place == 5)), "{item}");
    }
    assert_eq!(told["families"][0]["family"], families[5].as_str(), "the one to look at comes first");
    let set = &told["sets"][0];
    assert_eq!(set["set"], "a-set");
    near(&set["reliability"]["kr20"], 0.558_415);
    near(&set["reliability"]["standard_error"], 1.217_025);
    // The same file twice counts once.
    let twice: Vec<&PathBuf> = paths.iter().chain(&paths).collect();
    let again = report(&twice);
    assert_eq!(again["families"], told["families"]);
    assert_eq!(again["people"], told["people"]);
}

#[test]
fn what_was_misread_and_who_was_sure_is_told() {
    let content = support::content();
    let sheet = support::base();
    let world = World { content: &content, sheet: &sheet };
    // A wrong answer to which the model knows what was misread.
    let misread = |card: &Card| {
        card.options.iter().find_map(|answer| Some((answer.clone(), grade(card, &world, answer)?.slip?)))
    };
    let (card, answer, slip) = content
        .families
        .iter()
        .flat_map(|family| (0..20).filter_map(|seed| deal(&world, &family.id, seed).ok()))
        .find_map(|card| misread(&card).map(|(answer, slip)| (card, answer, slip.to_owned())))
        .expect("a card with a slip");
    let mut log = Log::new("t", "Mara");
    log.certainty = Certainty::OnTheJob;
    log.open("one", &["room-safe"]).answer(&card.family, false);
    let last = log.events.last_mut().expect("an answer");
    if let Event::Answered(entry) = last {
        let entry = Arc::make_mut(entry);
        let dealt = Entry { version: card.version, seed: card.seed, answer: answer.clone(), ..entry.clone() };
        *entry = Entry { sheet: SheetName::of(&sheet), ..dealt };
    }
    let told = report(&[&file("misread.json", &json!(Journal::new(log.events.clone())))]);
    assert_eq!(told["families"][0]["slips"], json!({ slip: 1 }), "{answer:?}");
    assert_eq!(told["families"][0]["sure_and_wrong"], 1);
    assert_eq!(told["people"], json!([{ "person": "Mara", "answers": 1, "right": 0, "sure_and_wrong": 1 }]));
    assert_eq!(told["families"][0]["with_rest"], Value::Null, "of one person nothing is told");
    assert_eq!(told["sets"][0]["reliability"], Value::Null);
    // Of a shop sheet that is not known here nothing is said of what was misread.
    log.events.truncate(1);
    log.answer(&card.family, false);
    if let Some(Event::Answered(entry)) = log.events.last_mut() {
        let entry = Arc::make_mut(entry);
        (entry.version, entry.answer) = (card.version, Answer::NotEnough);
    }
    let told = report(&[&file("unknown-sheet.json", &json!(Journal::new(log.events)))]);
    assert_eq!(told["families"][0]["slips"], json!({}));
}

/// What was found wrong counts for nobody, and no second answer takes the place of a first one.
#[test]
fn what_was_found_wrong_counts_no_more() {
    let families = eight();
    let log = |set: &str, right: bool| {
        let mut log = Log::new(&format!("{set}-{right}"), "Mara");
        for (nth, set) in [set, "another"].into_iter().enumerate() {
            log.on(u32::try_from(nth).expect("few")).open(set, &["room-safe"]);
            log.within = Within::Check { attempt: set.to_owned(), set: set.to_owned() };
            log.answers(&families, families.len(), if right { &[] } else { &[0, 1] });
        }
        log
    };
    let told = |name: &str, log: &Log| report(&[&file(name, &json!(Journal::new(log.events.clone())))]);
    let sets = |told: &Value| {
        told["sets"].as_array().expect("sets").iter().map(|one| one["set"].clone()).collect::<Vec<_>>()
    };
    let mut wrong = log("one", false);
    assert_eq!(told("not-voided.json", &wrong)["counted"], 8);
    let kind = CardKind { family: families[0].clone(), version: 1 };
    wrong.voids(Wrong::Cards(kind), "Wrong table");
    let found = told("cards-voided.json", &wrong);
    assert_eq!(found["people"][0]["right"], 6);
    assert_eq!(
        (&found["answers"], &found["counted"], &found["people"][0]["answers"]),
        (&json!(16), &json!(7), &json!(7))
    );
    assert!(
        found["families"]
            .as_array()
            .expect("families")
            .iter()
            .all(|one| one["family"] != families[0].as_str())
    );
    assert_eq!(sets(&found), ["another", "one"]);
    let void = wrong.events.last().expect("a voiding").stamp().name();
    wrong.voids(Wrong::Void { void }, "It was right after all");
    assert_eq!(told("taken-back.json", &wrong)["counted"], 8);
    // The first answers stood in the set; those to the same cards in another one are second ones.
    wrong.voids(Wrong::Set { set: "one".to_owned() }, "Wrong picture");
    let found = told("set-voided.json", &wrong);
    assert_eq!((&found["counted"], &found["people"]), (&json!(0), &json!([])));
    assert_eq!(sets(&found), ["another"]);
}

#[test]
fn practice_and_help_do_not_count() {
    let families = eight();
    let mut log = Log::new("t", "Mara");
    log.answer(&families[0], true);
    log.open("one", &["room-safe"]);
    log.help = stepboard::record::Help::Hint;
    log.answer(&families[1], true);
    let told = report(&[&file("practice.json", &json!(Journal::new(log.events)))]);
    assert_eq!((&told["answers"], &told["counted"]), (&json!(2), &json!(0)));
    assert_eq!(told["families"], json!([]));
}

#[test]
fn what_cannot_be_read_is_named_and_nothing_is_reported() {
    let mut log = Log::new("t", "Mara");
    log.open("one", &["room-safe"]).answer(&eight()[0], true);
    let journal = json!(Journal::new(log.events.clone()));
    let good = file("good.json", &journal);
    refused(&["report"], "", &["at least one file of results"]);
    refused(&["report", "no-such-file.json"], "", &["no-such-file.json"]);
    let no_list = file("no-list.json", &json!({ "events": [] }));
    refused(
        &["report", no_list.to_str().expect("text")],
        "",
        &["no-list.json", "a list of events is needed"],
    );
    let mut half = journal.clone();
    half[1]["mark"] = json!("almost");
    let half = file("half.json", &half);
    let paths = ["report", good.to_str().expect("text"), half.to_str().expect("text")];
    refused(&paths, "", &["half.json", "`events.2`", "almost"]);
    let mut other = journal;
    other[1]["mark"] = json!("wrong");
    let other = file("other.json", &other);
    let paths = ["report", good.to_str().expect("text"), other.to_str().expect("text")];
    refused(&paths, "", &["two different events of number 2", "nothing was merged"]);
}
