//! Files of sheets, sets, walks, job tickets and results are hostile until they were read whole and checked: each of a corpus is refused with a
//! message that says what is wrong and where, or accepted as plain text and numbers; mutated ones panic nowhere.

#[path = "hostile/mod.rs"]
mod files;
mod support;

use files::stored::readers;
use files::{Hostile, What, corpus, valid};
use proptest::prelude::*;
use serde_json::Value;
use std::collections::BTreeSet;
use stepboard::content::Content;
use stepboard::exchange::set::{Set, Withdrawal};
use stepboard::exchange::{JobTicket, OwnSheet, Refused, Results, SHEET, WalkFile, read, write};
use stepboard::record::{Journal, merge};
use support::any::hold;
use support::inputs;

/// What a reader makes of a file: its text written again, or why it is refused.
fn taken(content: &Content, what: What, bytes: &[u8]) -> Result<String, Refused> {
    match what {
        What::Sheet => {
            let own: OwnSheet = read(bytes, SHEET)?;
            own.sheet(content)?;
            write(&own, SHEET)
        }
        What::Set => Set::read(bytes, content)?.write(),
        What::Withdrawal => Withdrawal::read(bytes)?.write(),
        What::Walk => WalkFile::read(bytes, content)?.write(),
        What::Ticket => JobTicket::read(bytes, content)?.write(),
        What::Results => Results::read(bytes)?.text(),
    }
}

/// What is accepted is the same when it is written and read again.
fn lasts(content: &Content, what: What, text: &str) {
    assert_eq!(taken(content, what, text.as_bytes()).as_deref(), Ok(text));
}

/// Characters of a message, at most: the longest lists every setting of a sheet.
const MESSAGE_MOST: usize = 4_000;

#[test]
fn each_hostile_file_is_refused_by_place_or_is_plain_text() {
    let content = support::content();
    let before = content.clone();
    let all = corpus(&content);
    let names: BTreeSet<&str> = all.iter().map(|one| one.name.as_str()).collect();
    let mut wrong = Vec::new();
    for Hostile { name, what, bytes, says, .. } in &all {
        match (taken(&content, *what, bytes), says.is_empty()) {
            (Ok(text), true) => lasts(&content, *what, &text),
            (Err(refused), false) => {
                let told = refused.to_string();
                // It says what and where: a place in the file, or its size, kind or version.
                let place = match &refused {
                    Refused::Form { line, column, .. } => *line > 0 && (*column > 0 || bytes.is_empty()),
                    Refused::Value { place, .. } => !place.is_empty(),
                    _ => true,
                };
                if !place || told.len() > MESSAGE_MOST || says.iter().any(|part| !told.contains(part)) {
                    wrong.push(format!("{name}: {told}; {says:?} is wanted"));
                }
            }
            (Ok(_), false) => wrong.push(format!("{name}: accepted; {says:?} is wanted")),
            (Err(refused), true) => wrong.push(format!("{name}: {refused}; it should be accepted")),
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(names.len() == all.len() && all.len() > 300, "each of {} has a name of its own", all.len());
    assert_eq!(content, before);
}

#[test]
fn what_is_valid_is_accepted() {
    let content = support::content();
    for (what, file) in valid::files(&content) {
        let text = taken(&content, what, file.to_string().as_bytes())
            .unwrap_or_else(|refused| panic!("{what:?}: {refused}"));
        lasts(&content, what, &text);
    }
}

/// Two files that give one number to two events: neither is taken.
#[test]
fn files_that_clash_are_not_joined() {
    let content = support::content();
    let mut other = valid::results(&content);
    let events = |file: &Value| {
        let results = Results::read(file.to_string().as_bytes()).expect("valid");
        Journal::new(results.events)
    };
    let first = events(&other);
    other["events"][1]["mark"] = "right".into();
    let clash = merge(&[first, events(&other)]).expect_err("a clash").to_string();
    assert!(
        clash.contains("`5f0c1e9a` has two different events of number 2")
            && clash.contains("nothing was merged")
    );
}

/// Mutated files of one law.
const MUTATED: u32 = 1_000;
/// As many as are asked for in the long run.
const MUTATED_MOST: u32 = 100_000;

/// One change of a file.
#[derive(Debug, Clone)]
enum Mutation {
    Byte(usize, u8),
    Cut(usize, usize),
    Twice(usize, usize),
    Put(usize, &'static str),
    Swapped(usize, usize),
    Nested(usize, usize),
    End(usize),
}

/// What is put somewhere: what trips readers of JSON, of text and of paths.
const PUT: [&str; 17] = [
    "\"",
    "{",
    "}",
    "[",
    "]",
    ",",
    ":",
    "null",
    "-1",
    "1e999",
    "\\u0000",
    "\u{202e}",
    "../",
    "9007199254740993",
    "18446744073709551616",
    "\u{1}",
    "\r\n\t",
];

fn mutation() -> impl Strategy<Value = Mutation> {
    let place = any::<usize>();
    prop_oneof![
        (place, any::<u8>()).prop_map(|(at, byte)| Mutation::Byte(at, byte)),
        (place, 1..40_usize).prop_map(|(at, length)| Mutation::Cut(at, length)),
        (place, 1..200_usize).prop_map(|(at, length)| Mutation::Twice(at, length)),
        (place, 0..PUT.len()).prop_map(|(at, which)| Mutation::Put(at, PUT[which])),
        (place, 1..40_usize).prop_map(|(at, length)| Mutation::Swapped(at, length)),
        (place, 1..1_000_usize).prop_map(|(at, deep)| Mutation::Nested(at, deep)),
        place.prop_map(Mutation::End),
    ]
}

fn mutated(mut bytes: Vec<u8>, mutations: &[Mutation]) -> Vec<u8> {
    for mutation in mutations {
        let length = bytes.len().max(1);
        match mutation {
            Mutation::Byte(at, byte) => {
                if let Some(there) = bytes.get_mut(at % length) {
                    *there = *byte;
                }
            }
            Mutation::Cut(at, cut) => {
                let at = (at % length).min(bytes.len());
                bytes.drain(at..(at + cut).min(bytes.len()));
            }
            Mutation::Twice(at, copied) => {
                let at = (at % length).min(bytes.len());
                let again = bytes[at..(at + copied).min(bytes.len())].to_vec();
                bytes.splice(at..at, again);
            }
            Mutation::Put(at, text) => {
                let at = (at % length).min(bytes.len());
                bytes.splice(at..at, text.bytes());
            }
            // Two stretches beside each other change places.
            Mutation::Swapped(at, half) => {
                let at = (at % length).min(bytes.len());
                let end = (at + 2 * half).min(bytes.len());
                bytes[at..end].rotate_left((end - at) / 2);
            }
            Mutation::Nested(at, deep) => {
                let at = (at % length).min(bytes.len());
                bytes.splice(at..at, std::iter::repeat_n(b'[', *deep));
            }
            Mutation::End(at) => bytes.truncate(at % length),
        }
    }
    bytes
}

/// Whatever is changed, nothing panics; what is accepted is the same when written and read again, and what is refused says so.
#[test]
fn mutated_files_are_refused_or_accepted_safely() {
    let content = support::content();
    let valid = valid::files(&content).map(|(what, file)| (what, serde_json::to_vec(&file).expect("json")));
    let cases = inputs(MUTATED).min(MUTATED_MOST);
    hold(cases, &(0..valid.len(), proptest::collection::vec(mutation(), 1..4)), |(which, mutations)| {
        let (what, bytes) = &valid[which];
        match taken(&content, *what, &mutated(bytes.clone(), &mutations)) {
            Ok(text) => lasts(&content, *what, &text),
            Err(refused) => assert!(!refused.to_string().is_empty()),
        }
    });
}

/// The same of what no screen takes as a file; what is read is read alike from what is written of it.
#[test]
fn mutated_values_of_the_tablet_codes_and_listings_are_refused_or_read_safely() {
    let content = support::content();
    let last = |name: &str, reader: files::stored::Reader, bytes: &[u8]| {
        let taken = reader(&content, bytes);
        match &taken {
            Ok(Some(written)) => assert_eq!(reader(&content, written.as_bytes()), taken, "{name}"),
            Ok(None) => {}
            Err(why) => assert!(!why.is_empty(), "{name}"),
        }
        taken
    };
    let cases = inputs(MUTATED).min(MUTATED_MOST);
    for (name, reader, bytes) in readers(&content) {
        assert!(last(name, reader, &bytes).is_ok(), "{name}: {:?}", reader(&content, &bytes));
        hold(cases, &proptest::collection::vec(mutation(), 1..4), |mutations| {
            last(name, reader, &mutated(bytes.clone(), &mutations)).ok();
        });
    }
}
