//! Walks that cannot have been walked, that lie about what came of them or have no end; tickets for jobs that there are not.

use super::{Change, Hostile, What, valid};
use serde_json::{Value, json};
use stepboard::content::Content;
use stepboard::walk::saved::DECISIONS_MOST;

/// Characters of a text that is long while its file is not too large.
const MANY: usize = 60_000;
/// Lists inside each other: more than a reader follows.
const DEEP: usize = 3_000;
/// A part that no ticket has: the largest whole number that every reader of JSON tells exactly (RFC 8259, section 6).
const FAR: u64 = (1 << 53) - 1;

pub(super) fn all(content: &Content) -> Vec<Hostile> {
    [walks(content), tickets(content)].concat()
}

/// Sanding with one of its members changed.
fn sanding(member: &str, value: Value) -> Value {
    let mut work = json!({ "operation": "sand-wood", "parts": [0] });
    work[member] = value;
    json!({ "work": work })
}

fn walks(content: &Content) -> Vec<Hostile> {
    let walk = Change { what: What::Walk, valid: valid::walk(content) };
    let first = "/decisions/0";
    let wear = valid::walk(content)["decisions"].as_array().expect("a list").len();
    let street = json!({ "wear": { "respirator": null, "sealed": false, "suit": "street-clothes", "gloves": false, "eyes": false } });
    let huge = walk.to(first, sanding("numbers", json!({ "distance": 7 }))).to_string();
    let deep = walk.to(first, json!("deep")).to_string();
    let raw = |name: &str, text: String, says: &[&'static str]| Hostile {
        name: name.to_owned(),
        what: What::Walk,
        bytes: text.into_bytes(),
        says: says.to_vec(),
        shape: true,
    };
    let behind = json!([{ "offer": { "day": 300 } }, "hand-over", { "wait": "morning" }]);
    let mut named = walk.to("/mode", json!("inspect"));
    named["named"] = json!([[99, "se-01"]]);
    let mut rule = walk.to("/mode", json!("inspect"));
    rule["named"] = json!([[0, "no-such"]]);
    let mut many = walk.to("/mode", json!("inspect"));
    many["named"] = Value::Array(vec![json!([0, "se-01"]); 101]);
    let mut own = valid::sheet(content);
    let members = own.as_object_mut().expect("an object");
    members.retain(|name, _| !["format", "version"].contains(&name.as_str()));
    own["hash"] = json!("0123456789abcdef");
    let last = json!("hand-over");
    assert!(wear > 2, "a valid walk has some decisions");
    vec![
        walk.sense(
            "walk: handed over before anything was done",
            first,
            json!("hand-over"),
            &["`decisions.0` is \"hand-over\""],
        ),
        walk.sense(
            "walk: gone on with after its end",
            "/decisions",
            behind,
            &["`decisions.2` is", "morning"],
        ),
        walk.sense(
            "walk: an end that was put behind",
            &format!("/decisions/{}", wear - 1),
            last,
            &["`came` is"],
        ),
        walk.sense("walk: nothing decided, something came", "/decisions", json!([]), &["`came` is", "hash"]),
        walk.sense(
            "walk: unknown",
            "/walk",
            json!("no-such"),
            &["`walk` is no-such", "plain-plate", "are known"],
        ),
        walk.sense("walk: a path", "/walk", json!("../../etc/passwd"), &["`walk` is ../", "are known"]),
        walk.sense("walk: a name without end", "/walk", json!("a".repeat(MANY)), &["`walk` is aaa", "…"]),
        walk.sense(
            "walk: an unknown sheet",
            "/sheet/ships/slug",
            json!("no-such"),
            &["`sheet.ships.slug` is no-such"],
        ),
        walk.sense(
            "walk: other values",
            "/sheet/ships/hash",
            json!("0123456789abcdef"),
            &["`sheet.ships.hash` is"],
        ),
        walk.sense("walk: an own sheet that lies", "/sheet", json!({ "own": own }), &["`sheet.own.hash` is"]),
        walk.shape("walk: two sheets", "/sheet", json!({ "ships": {}, "own": {} }), &["line 1"]),
        walk.shape(
            "walk: decisions without end",
            "/decisions",
            Value::Array(vec![street; DECISIONS_MOST + 1]),
            &["`decisions` is 2001", "2000 at most"],
        ),
        walk.shape(
            "walk: decisions as text",
            "/decisions",
            json!("sand"),
            &["line 1", "expected a sequence"],
        ),
        walk.shape("walk: an unknown decision", first, json!({ "burn": 1 }), &["unknown variant `burn`"]),
        walk.shape(
            "walk: an unknown operation",
            first,
            sanding("operation", json!("fly")),
            &["unknown variant `fly`"],
        ),
        walk.shape(
            "walk: a decision with a member too many",
            first,
            sanding("free", json!(true)),
            &["unknown field `free`"],
        ),
        walk.sense(
            "walk: an absurd number",
            first,
            sanding("numbers", json!({ "wet-film": 1e300 })),
            &["`decisions.0` is"],
        ),
        walk.sense(
            "walk: a number that is not asked",
            first,
            sanding("numbers", json!({ "overlap": 0.5 })),
            &["`decisions.0` is"],
        ),
        walk.shape(
            "walk: a number of no name",
            first,
            sanding("numbers", json!({ "luck": 1 })),
            &["unknown variant `luck`"],
        ),
        raw("walk: a number past all numbers", huge.replacen(":7", ":1e999", 1), &["number out of range"]),
        raw(
            "walk: decisions inside each other",
            deep.replacen("\"deep\"", &"[".repeat(DEEP), 1),
            &["line 1"],
        ),
        walk.sense(
            "walk: a pick that is not there",
            first,
            sanding("picks", json!({ "strokes": "sideways" })),
            &["`decisions.0` is"],
        ),
        walk.sense(
            "walk: a pick without end",
            first,
            sanding("picks", json!({ "strokes": "a".repeat(MANY) })),
            &["`decisions.0` is", "…"],
        ),
        walk.sense("walk: no part", first, sanding("parts", json!([])), &["`decisions.0` is"]),
        walk.sense("walk: a part twice", first, sanding("parts", json!([0, 0])), &["`decisions.0` is"]),
        walk.sense("walk: a part far away", first, sanding("parts", json!([FAR])), &["`decisions.0` is"]),
        walk.shape(
            "walk: a part below 0",
            first,
            sanding("parts", json!([-1])),
            &["line 1", "expected usize"],
        ),
        walk.shape("walk: a wait backwards", first, json!({ "wait": { "hours": -5 } }), &["line 1"]),
        walk.sense(
            "walk: a wait of ages",
            first,
            json!({ "wait": { "hours": 8000 } }),
            &["`decisions.0` is"],
        ),
        walk.sense("walk: no duty", first, json!({ "room": [] }), &["`decisions.0` is"]),
        walk.shape(
            "walk: a duty of no name",
            first,
            json!({ "room": ["sing"] }),
            &["unknown variant `sing`"],
        ),
        walk.sense(
            "walk: a day of no calendar",
            first,
            json!({ "offer": { "day": u32::MAX } }),
            &["`decisions.0` is"],
        ),
        walk.shape("walk: a seed past all seeds", "/seed", json!(1_u64 << 32), &["line 1", "expected u32"]),
        walk.shape("walk: an unknown mode", "/mode", json!("easy"), &["unknown variant `easy`"]),
        walk.sense(
            "walk: one's own called guided",
            "/mode",
            json!("guided"),
            &["`came` is", "another edition"],
        ),
        walk.sense("walk: other chance", "/seed", json!(8), &["`came` is", "another edition"]),
        walk.sense("walk: another outcome", "/came/hash", json!("0".repeat(32)), &["`came` is", "hash 000"]),
        walk.sense("walk: faults left out", "/came/faults", json!(999), &["`came` is", "faults 999"]),
        walk.sense("walk: an outcome that hides", "/came/hash", json!("\u{202e}x"), &["hash \\u{202e}x"]),
        walk.shape("walk: an outcome too many", "/came/good", json!(true), &["unknown field `good`"]),
        walk.sense(
            "walk: named in one's own",
            "/named",
            json!([[0, "se-01"]]),
            &["`named` is 1", "0 at most"],
        ),
        walk.sense("walk: graded in one's own", "/graded", json!(true), &["`graded` is true"]),
        walk.made("walk: named where nothing is", &named, &["`named.0.0` is 99"], false),
        walk.made("walk: named by a rule that is none", &rule, &["`named.0.1` is no-such"], false),
        walk.made("walk: named without end", &many, &["`named` is 101", "100 at most"], true),
        walk.sense("walk: a name that runs backwards", "/who/name", json!("An\u{202e}a"), &["`who.name` is"]),
        walk.shape("walk: a long name", "/who/name", json!("a".repeat(61)), &["`who.name` is aaa"]),
        walk.shape("walk: nobody", "/who", Value::Null, &["missing field `who`"]),
        walk.shape("walk: begun at no time", "/begun", json!("soon"), &["`begun` is soon"]),
        walk.safe("walk: markup is text", "/who/name", json!("<img src=x onerror=alert(1)>")),
        walk.made("walk: too large", &json!("x".repeat(600 * 1024)), &["at most 524288 are allowed"], true),
    ]
}

fn tickets(content: &Content) -> Vec<Hostile> {
    let ticket = Change { what: What::Ticket, valid: valid::ticket(content) };
    let own = content.walk("plain-plate").expect("ships").ticket.sheet.clone();
    let other = content.sheets.iter().find(|sheet| sheet.slug != own).expect("another sheet");
    let other = json!({ "ships": { "slug": other.slug, "hash": other.hash() } });
    vec![
        ticket.sense("ticket: an unknown walk", "/walk", json!("banjo"), &["`walk` is banjo", "are known"]),
        ticket.sense("ticket: a path", "/walk", json!("../../etc/passwd"), &["`walk` is ../"]),
        ticket.shape("ticket: an unknown mode", "/mode", json!("exam"), &["unknown variant `exam`"]),
        ticket.shape("ticket: a seed below 0", "/seed", json!(-1), &["line 1", "expected u32"]),
        ticket.shape("ticket: a seed as text", "/seed", json!("7"), &["line 1", "expected u32"]),
        ticket.sense(
            "ticket: another sheet",
            "/sheet",
            other,
            &["`sheet.ships.slug` is", "is worked on `water-borne`"],
        ),
        ticket.sense("ticket: other values", "/sheet/ships/hash", json!("0"), &["`sheet.ships.hash` is 0"]),
        ticket.shape("ticket: no sheet", "/sheet", Value::Null, &["missing field `sheet`"]),
        ticket.sense("ticket: a note that hides", "/note", json!("a\u{2066}b"), &["`note` is"]),
        ticket.sense("ticket: a note on two lines", "/note", json!("a\nsigned: Ilse"), &["`note` is"]),
        ticket.shape("ticket: a note without end", "/note", json!("a".repeat(MANY)), &["`note` is aaa", "…"]),
        ticket.sense("ticket: by a control", "/by", json!("\u{1b}[31mred"), &["`by` is"]),
        ticket.sense(
            "ticket: until a day that is none",
            "/until",
            json!("2027-02-30"),
            &["`2027-02-30` is no date"],
        ),
        ticket.shape("ticket: until soon", "/until", json!("soon"), &["`soon` is no date"]),
        ticket.safe("ticket: until far away", "/until", json!("9999-12-31")),
        ticket.safe("ticket: markup is text", "/note", json!("</script><b>")),
        ticket.made("ticket: too large", &json!("x".repeat(65 * 1024)), &["at most 65536 are allowed"], true),
    ]
}
