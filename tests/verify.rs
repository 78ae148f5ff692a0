//! `stepboard verify` as a shop uses it: two files, offline, exit codes 0, 1 and 2.

mod support;

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;
use stepboard::rules::term::Term;
use stepboard::signoff::Why;
use support::binary::{json, refused, run};
use support::shop;

fn data(name: &str) -> String {
    format!("{}/tests/data/signoff/{name}", env!("CARGO_MANIFEST_DIR"))
}

/// A file of its own for each test.
fn written(name: &str, text: &str) -> PathBuf {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::write(&path, text).expect("the file can be written");
    path
}

#[test]
fn an_accepted_file_ends_with_0_and_says_who_signed_for_whom() {
    let (file, list) = (data("sign-off.json"), data("trust.json"));
    let told = json(&["verify", &file, "--trust", &list, "--on", "2026-06-01", "--json"]);
    assert_eq!(told["accepted"], true);
    assert_eq!(told["on"], "2026-06-01T23:59:59Z");
    assert_eq!(told["sign_off"]["subject"], "17");
    assert_eq!(told["trust"]["fingerprint"], shop::root().public().fingerprint());
    let output = run(&["verify", &file, "--trust", &list, "--on", "2026-06-01"], "");
    assert!(output.status.success());
    let said = String::from_utf8(output.stdout).expect("text");
    assert!(said.starts_with("Accepted\n"), "{said}");
    for part in
        ["Tomás Øye", "number 17", "Film levelled", "2026-01-05", &shop::root().public().fingerprint()]
    {
        assert!(said.contains(part), "`{part}` is not in `{said}`");
    }
}

#[test]
fn a_refused_file_ends_with_1_and_says_why() {
    let text = shop::signed(shop::ORDINARY, 1).replacen("\"17\"", "\"18\"", 1);
    let file = written("verify-changed.json", &text);
    let file = file.to_str().expect("a plain path");
    let list = data("trust.json");
    let output = run(&["verify", file, "--trust", &list, "--on", "2026-06-01"], "");
    assert_eq!(output.status.code(), Some(1));
    let said = String::from_utf8(output.stdout).expect("text");
    assert!(said.starts_with("Not accepted\n- The signature does not fit"), "{said}");
    assert!(output.stderr.is_empty());
    let expired =
        run(&["verify", &data("sign-off.json"), "--trust", &list, "--on", "2028-03-02", "--json"], "");
    assert_eq!(expired.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&expired.stdout).contains("\"why\":\"expired\""));
}

#[test]
fn what_cannot_be_read_ends_with_2() {
    let (file, list) = (data("sign-off.json"), data("trust.json"));
    let stranger = shop::stranger().public().did();
    refused(&["verify", &file], "", &["trust list", "--trust LIST"]);
    refused(&["verify", "--trust", &list], "", &["FILE"]);
    refused(&["verify", "no-such.json", "--trust", &list], "", &["no-such.json"]);
    refused(&["verify", &file, "--trust", "no-such.json"], "", &["no-such.json"]);
    refused(
        &["verify", &file, "--trust", &file],
        "",
        &["sign-off.json: It is not written as this program writes such a file", "format"],
    );
    refused(&["verify", &file, "--trust", &list, "--on", "soon"], "", &["soon", "2026-03-02T15:04:05Z"]);
    refused(&["verify", &file, "--trust", &list, "--on", "2026-02-30"], "", &["2026-02-30"]);
    refused(&["verify", &file, "--trust", &list, "--root", &stranger], "", &["another root key"]);
    refused(&["verify", &file, "--trust", &list, "--root", "key"], "", &["--root", "key"]);
    refused(&["verify", &file, "--trust", &list, "--at", "x"], "", &["`at` is not known", "--on DATE"]);
    let torn = written("verify-torn.json", "{\"@context\":");
    refused(&["verify", torn.to_str().expect("a plain path"), "--trust", &list], "", &["no JSON"]);
}

/// A file from anywhere says nothing to the terminal: no control character of it is printed, and no page of it.
#[test]
fn a_hostile_file_does_not_steer_the_terminal() {
    let name = format!("\\u001b[2J\\u001b]0;Accepted\\u0007\\u202e{}", "x".repeat(10_000));
    let file = written("verify-hostile.json", &format!("{{\"{name}\":1,\"{name}\":2}}"));
    let file = file.to_str().expect("a plain path");
    let (good, list) = (data("sign-off.json"), data("trust.json"));
    for (words, code) in [([file, "--trust", list.as_str()], 1), ([good.as_str(), "--trust", file], 2)] {
        let output = run(&["verify", words[0], words[1], words[2], "--on", "2026-06-01"], "");
        assert_eq!(output.status.code(), Some(code));
        let said = [output.stdout, output.stderr].concat();
        let said = String::from_utf8(said).expect("text");
        assert!(said.contains("is told twice") && said.contains("u{1b}[2J"), "{said}");
        assert!(said.chars().all(|one| one == '\n' || !(one.is_control() || one == '\u{202e}')), "{said:?}");
        assert!(said.lines().all(|line| line.chars().count() < 400), "{said}");
    }
}

#[test]
fn the_root_that_is_told_is_held() {
    let root = shop::root().public().did();
    let told = json(&[
        "verify",
        &data("sign-off.json"),
        "--trust",
        &data("trust.json"),
        "--root",
        &root,
        "--on",
        "2026-06-01",
        "--json",
    ]);
    assert_eq!(told["trust"]["root"], root.as_str());
}

/// The schema lists every reason by hand: none is forgotten there.
#[test]
fn the_schema_lists_every_reason() {
    let path = format!("{}/content/schema/verify.schema.json", env!("CARGO_MANIFEST_DIR"));
    let schema: serde_json::Value =
        serde_json::from_str(&fs::read_to_string(path).expect("a schema")).expect("JSON");
    let listed = schema.pointer("/properties/reasons/items/properties/why/enum").expect("a list");
    let listed: BTreeSet<&str> =
        listed.as_array().expect("a list").iter().map(|one| one.as_str().expect("text")).collect();
    assert_eq!(listed, Why::ALL.iter().map(|why| why.slug()).collect());
}
