//! Shop sheets that would endanger people, lie about their values, or show what they are not.

use super::{Change, Hostile, What, valid};
use serde_json::{Value, json};
use stepboard::content::Content;
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;

pub(super) fn all(content: &Content) -> Vec<Hostile> {
    let sheet = Change { what: What::Sheet, valid: valid::sheet(content) };
    let held = content.sheets[0].held(Setting::ALL[0]);
    let first = format!("/values/{}", Setting::ALL[0].slug());
    let huge = sheet.to(&first, json!(7)).to_string().replacen(":7", ":1e999", 1);
    let raw = |name: &str, bytes: Vec<u8>, says: &[&'static str], shape| Hostile {
        name: name.to_owned(),
        what: What::Sheet,
        bytes,
        says: says.to_vec(),
        shape,
    };
    let value_twice =
        valid::sheet(content).to_string().replacen("\"values\":{", "\"values\":{\"no-such\":1,", 1);
    let name_twice = valid::sheet(content).to_string().replacen('{', "{\"name\":\"Summer\",", 1);
    vec![
        sheet.sense("sheet: below its floor", &first, json!(held.floor - 1.0), &["`values.", "is allowed"]),
        sheet.sense(
            "sheet: above its ceiling",
            &first,
            json!(held.ceiling + 1.0),
            &["`values.", "is allowed"],
        ),
        sheet.sense("sheet: the largest number", &first, json!(f64::MAX), &["`values.", "is allowed"]),
        sheet.sense(
            "sheet: another value than its hash",
            &first,
            json!(held.floor),
            &["`hash` is", "have the hash"],
        ),
        sheet.shape("sheet: a value as text", &first, json!("12"), &["line 1", "expected f64"]),
        sheet.shape("sheet: a value as list", &first, json!([12]), &["line 1", "expected f64"]),
        raw("sheet: a number past all numbers", huge.into_bytes(), &["number out of range"], true),
        raw("sheet: an unknown setting", value_twice.into_bytes(), &["unknown variant `no-such`"], false),
        raw("sheet: a name twice", name_twice.into_bytes(), &["duplicate field `name`"], false),
        sheet.sense("sheet: another base", "/base", json!("no-such"), &["`base` is no-such", "are known"]),
        sheet.sense(
            "sheet: a base that is a path",
            "/base",
            json!("../../etc/passwd"),
            &["`base` is ../", "are known"],
        ),
        sheet.sense("sheet: a base of a shop", "/base", json!("own-0123456789abcdef"), &["`base` is own-"]),
        sheet.sense(
            "sheet: another base's hash",
            "/base_hash",
            json!("0123456789abcdef"),
            &["`base_hash` is"],
        ),
        sheet.sense("sheet: another hash", "/hash", json!("0123456789abcdef"), &["`hash` is"]),
        sheet.shape("sheet: edition 0", "/edition", json!(0), &["`edition` is 0", "1 and more"]),
        sheet.shape("sheet: an edition below 0", "/edition", json!(-1), &["line 1", "expected u32"]),
        sheet.shape("sheet: no name", "/name", json!(""), &["`name` is"]),
        sheet.shape("sheet: a long name", "/name", json!("a".repeat(61)), &["`name` is aaa"]),
        sheet.shape("sheet: a very long note", "/note", json!("a".repeat(60_000)), &["`note` is aaa"]),
        sheet.sense("sheet: a name that runs backwards", "/name", json!("safe\u{202e}txt"), &["`name` is"]),
        sheet.sense("sheet: a name on two lines", "/name", json!("safe\nsigned: Ilse"), &["`name` is"]),
        sheet.sense("sheet: a name with a control", "/by", json!("\u{1b}[31mred"), &["`by` is"]),
        sheet.sense("sheet: a name with what has no width", "/by", json!("Il\u{200b}se"), &["`by` is"]),
        sheet.safe("sheet: markup is text", "/name", json!("<script>alert(1)</script>&amp;")),
        sheet.shape("sheet: values as a list", "/values", json!([]), &["line 1", "expected a map"]),
        sheet.shape("sheet: no values", "/values", Value::Null, &["missing field `values`"]),
        raw("sheet: too large", vec![b' '; 65 * 1024], &["66560 bytes; at most 65536 are allowed"], true),
    ]
}
