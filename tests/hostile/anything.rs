//! What any file can be: cut off, deep, twice, of another kind.

use super::{Change, Hostile, What, valid};
use serde_json::{Value, json};
use stepboard::content::Content;

/// Lists inside each other: more than a reader follows, and not too large for the smallest file.
const DEEP: usize = 3_000;
/// Characters of a text that is no kind.
const LONG: usize = 2_000;
/// How a picture begins: the signature of Portable Network Graphics (ISO/IEC 15948, section 5.2).
const PICTURE: [u8; 8] = [137, 80, 78, 71, 13, 10, 26, 10];
/// How a document begins: its version, and the comment of bytes above 127 that shows it is no text (ISO 32000-1, section 7.5.2).
const DOCUMENT: &[u8] = b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n";

pub(super) fn all(content: &Content) -> Vec<Hostile> {
    valid::files(content).into_iter().flat_map(|(what, valid)| of(&Change { what, valid })).collect()
}

fn of(change: &Change) -> Vec<Hostile> {
    let (what, valid) = (change.what, &change.valid);
    let text = valid.to_string();
    let raw = |name: &str, bytes: Vec<u8>, says: &[&'static str]| {
        let name = format!("{}: {name}", what.schema());
        Hostile { name, what, bytes, says: says.to_vec(), shape: true }
    };
    let twice = |member: &str, value: Value| {
        format!("{{{}:{value},{}", json!(member), text.strip_prefix('{').expect("an object")).into_bytes()
    };
    let other = if what == What::Sheet { "stepboard-set" } else { "stepboard-sheet" };
    let mut all = vec![
        raw("empty", Vec::new(), &["line 1", "the file is empty"]),
        raw("a number", b"7".to_vec(), &["it says `7`", "is wanted"]),
        raw("null", b"null".to_vec(), &["it says `null`", "is wanted"]),
        raw("a picture", PICTURE.to_vec(), &["no text"]),
        raw("a document", DOCUMENT.to_vec(), &["no text"]),
        raw("cut off", text.as_bytes()[..text.len() / 2].to_vec(), &["line 1", "cut short"]),
        raw("something behind", format!("{text} {{}}").into_bytes(), &["line 1", "damaged from here on"]),
        raw(
            "a mark of byte order",
            format!("\u{feff}{text}").into_bytes(),
            &["it says `\\u{feff}{", "is wanted"],
        ),
        raw("no UTF-8", [&text.as_bytes()[..text.len() - 2], b"\xc3\x28\"}"].concat(), &["line 1"]),
        raw(
            "NaN",
            text.replacen("\"version\":1", "\"version\":NaN", 1).into_bytes(),
            &["line 1", "damaged from here on"],
        ),
        raw("deep", [b"{\"format\":".to_vec(), vec![b'['; DEEP]].concat(), &["line 1"]),
        raw("format twice", twice("format", json!("x")), &["duplicate field `format`"]),
        raw("version twice", twice("version", json!(1)), &["duplicate field `version`"]),
    ];
    for one in &mut all {
        // JSON text has no duplicate members for a validator: the last one stands.
        one.shape = !one.name.ends_with("twice");
    }
    let named = |mut one: Hostile| {
        one.name = format!("{}: {}", what.schema(), one.name);
        one
    };
    let changed = vec![
        change.shape("another kind", "/format", json!(other), &["it says", "is wanted"]),
        change.shape("a kind with marks", "/format", json!("\u{202e}<b>../../x"), &["it says", "is wanted"]),
        change.shape("a long kind", "/format", json!("x".repeat(LONG)), &["it says `xxx", "…", "is wanted"]),
        change.shape("no kind", "/format", Value::Null, &["it says `{", "is wanted"]),
        change.shape("version 0", "/version", json!(0), &["`version` is 0; 1 to 1 can be read"]),
        change.shape("a later version", "/version", json!(2), &["`version` is 2; 1 to 1 can be read"]),
        change.shape("a huge version", "/version", json!(u64::MAX), &["line 1", "expected u32"]),
        change.shape("a version as text", "/version", json!("1"), &["line 1", "expected u32"]),
        change.shape("a version and a half", "/version", json!(1.5), &["line 1", "expected u32"]),
        change.shape(
            "a member too many",
            "/__proto__",
            json!({ "admin": true }),
            &["unknown field `__proto__`", "expected"],
        ),
        change.shape("a moment that is none", "/at", json!("yesterday"), &["`at` is yesterday"]),
        change.shape("a moment of another type", "/at", json!(7), &["line 1", "expected a string"]),
        change.sense("a moment on no day", "/at", json!("2027-02-30T10:00:00Z"), &["`at` is 2027-02-30"]),
        change.safe("a moment to come", "/at", json!("2999-12-31T23:59:59Z")),
    ];
    all.into_iter().chain(changed.into_iter().map(named)).collect()
}
