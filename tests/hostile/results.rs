//! Results that were changed, that go on for ever, or that tell a journal which cannot be.

use super::{Change, Hostile, What, valid};
use serde_json::{Value, json};
use stepboard::content::Content;

/// Events of a list that is long and small.
const MANY: usize = 1_000_000;

pub(super) fn all(content: &Content) -> Vec<Hostile> {
    let valid = valid::results(content);
    let results = Change { what: What::Results, valid: valid.clone() };
    let text = valid.to_string();
    let raw = |name: &str, bytes: Vec<u8>, says: &[&'static str], shape| Hostile {
        name: name.to_owned(),
        what: What::Results,
        bytes,
        says: says.to_vec(),
        shape,
    };
    let many = |one: &str| format!("[{one}{}]", format!(",{one}").repeat(MANY - 1)).into_bytes();
    let mark_twice = text.replacen("\"mark\":\"partly\"", "\"mark\":\"right\",\"mark\":\"partly\"", 1);
    let inside_twice =
        text.replacen("\"attempt\":\"one\",\"set\"", "\"attempt\":\"two\",\"attempt\":\"one\",\"set\"", 1);
    let deep = text.replacen(
        "\"guess\":0.25",
        &format!("\"guess\":{}{}", "[".repeat(50_000), "]".repeat(50_000)),
        1,
    );
    let huge = text.replacen("\"guess\":0.25", "\"guess\":1e999", 1);
    let nan = text.replacen("\"guess\":0.25", "\"guess\":NaN", 1);
    let stored = "{\"terms\":[\"koa\"]}";
    let run = |run: &str| text.replacen(stored, &format!("{{\"run\":{run}}}"), 1).into_bytes();
    let first = "[0,0,0,90,100,200,0]";
    let ran_twice = run(&format!("{{\"hand\":[{first},[9,0,0]],\"hand\":[{first},[9,0,0]]}}"));
    let ran_long = run(&format!("{{\"hand\":[{first}{}]}}", ",[1,0,0]".repeat(1_700)));
    let ran_off = run(&format!("{{\"hand\":[{first},[9,99999999,0]]}}"));
    let ran_back = run(&format!("{{\"hand\":[{first},[20,0,0],[-9,0,0]]}}"));
    let no_run = run("{\"passes\":[{\"line_mm\":[[0,0],[9,9]]}]}");
    vec![
        raw("results: a run with a member twice", ran_twice, &["`events.2` is"], false),
        raw("results: a run too long", ran_long, &["`events.2` is", "up to 12288 are allowed"], false),
        raw("results: a run that leaves the room", ran_off, &["`events.2` is", "x_mm"], false),
        raw("results: a run back in time", ran_back, &["`events.2` is", "times do not fall"], false),
        raw("results: passes without numbers", no_run, &["`events.2` is", "missing field"], true),
        results.shape("results: no tablet", "/device", json!(""), &["`device` is"]),
        results.shape(
            "results: a tablet with a long name",
            "/device",
            json!("x".repeat(300)),
            &["`device` is xxx"],
        ),
        results.shape("results: nobody's number", "/people/0/number", json!(""), &["`people.1.number` is"]),
        results.shape(
            "results: a person too much",
            "/people/0/admin",
            json!(true),
            &["unknown field `admin`"],
        ),
        results.shape("results: no events", "/events", Value::Null, &["missing field `events`"]),
        results.shape(
            "results: events as an object",
            "/events",
            json!({}),
            &["line 1", "expected a sequence"],
        ),
        results.shape("results: an event that is none", "/events/1", json!(7), &["`events.2` is 7"]),
        results.shape(
            "results: an event of another kind",
            "/events/1/event",
            json!("signed"),
            &["`events.2` is", "`signed` is no kind of event"],
        ),
        results.shape(
            "results: an event of a later format",
            "/events/1/format",
            json!(99),
            &["`events.2` is", "event in format 99"],
        ),
        results.shape(
            "results: an event of half a format",
            "/events/1/format",
            json!(1.5),
            &["`events.2` is", "no whole number"],
        ),
        results.shape(
            "results: an observation of nothing",
            "/events/3/judged",
            json!(7),
            &["`events.4` is", "invalid type"],
        ),
        results.shape(
            "results: a criterion judged otherwise",
            "/events/3/judged/mask-worn-1",
            json!("admin"),
            &["`events.4` is", "unknown variant `admin`"],
        ),
        results.shape(
            "results: nothing found wrong",
            "/events/4/wrong",
            json!({ "admin": 1 }),
            &["`events.5` is", "unknown variant `admin`"],
        ),
        results.shape(
            "results: cards of no version found wrong",
            "/events/4/wrong/cards/version",
            json!(-1),
            &["`events.5` is", "expected u32"],
        ),
        results.shape(
            "results: more than cards found wrong",
            "/events/4/wrong/cards/admin",
            json!(true),
            &["`events.5` is", "unknown field `admin`"],
        ),
        results.shape(
            "results: found wrong by a number",
            "/events/4/by",
            json!(17),
            &["`events.5` is", "invalid type"],
        ),
        results.safe("results: a reason that hides", "/events/4/reason", json!("\u{202e}<b>../../x")),
        results.shape(
            "results: a mark that is none",
            "/events/1/mark",
            json!("fine"),
            &["`events.2` is", "`fine`"],
        ),
        results.shape(
            "results: a certainty that is none",
            "/events/1/certainty",
            json!("very"),
            &["`events.2` is", "`very`"],
        ),
        results.shape(
            "results: an answer of two kinds",
            "/events/1/answer",
            json!({ "term": "a", "terms": [] }),
            &["`events.2` is"],
        ),
        results.shape(
            "results: an answer that is none",
            "/events/1/answer",
            json!({ "admin": 1 }),
            &["`events.2` is", "`admin`"],
        ),
        results.shape(
            "results: no answer",
            "/events/1/answer",
            Value::Null,
            &["`events.2` is", "missing field `answer`"],
        ),
        results.shape(
            "results: a seed past all seeds",
            "/events/1/seed",
            json!(1_u64 << 32),
            &["`events.2` is"],
        ),
        results.shape("results: seconds below 0", "/events/1/active_seconds", json!(-1), &["`events.2` is"]),
        results.shape(
            "results: luck above 1",
            "/events/1/guess",
            json!(1.5),
            &["`events.2.guess` is 1.5", "0 to 1 is allowed"],
        ),
        results.shape("results: luck below 0", "/events/1/guess", json!(-0.5), &["`events.2.guess` is -0.5"]),
        results.sense(
            "results: a day that is none",
            "/events/1/date",
            json!("2027-02-30"),
            &["`events.2` is", "is no date"],
        ),
        results.safe("results: a day to come", "/events/1/date", json!("2999-01-01")),
        results.safe("results: a clock that tells nothing", "/events/1/at", json!("\u{202e}<b>")),
        results.sense(
            "results: a number twice",
            "/events/1/sequence",
            json!(1),
            &["`events.2.sequence` is 1", "2 to"],
        ),
        results.sense(
            "results: number 0",
            "/events/0/sequence",
            json!(0),
            &["`events.1.sequence` is 0", "1 to"],
        ),
        results.shape("results: a number below 0", "/events/0/sequence", json!(-3), &["`events.1` is"]),
        results.sense(
            "results: a number past all numbers",
            "/events/2/sequence",
            json!(u64::MAX),
            &["`events.3.sequence` is", "9007199254740991"],
        ),
        results.sense(
            "results: a long name",
            "/events/1/person",
            json!("x".repeat(300)),
            &["`events.2.person` is xxx"],
        ),
        results.sense(
            "results: an event without end",
            "/events/1/answer",
            json!({ "term": "x".repeat(20_000) }),
            &["`events.2` is 20", "16384 bytes at most"],
        ),
        results.shape(
            "results: a walk that is none",
            "/events/5/step",
            json!("admin"),
            &["`events.6` is", "unknown variant `admin`"],
        ),
        results.shape(
            "results: more than what was known",
            "/events/5/step/decided/known/admin",
            json!(true),
            &["`events.6` is", "unknown field `admin`"],
        ),
        results.shape(
            "results: a job without a name",
            "/events/5/job",
            json!(7),
            &["`events.6` is", "invalid type"],
        ),
        results.sense("results: a walk of nothing", "/events/5/job", json!(""), &["`events.6.job` is"]),
        results.sense(
            "results: a decision before the first",
            "/events/5/step/decided/nth",
            json!(0),
            &["`events.6.step.decided.nth` is 0", "1 and more"],
        ),
        results.sense(
            "results: a decision that nobody can make",
            "/events/5/step/decided/decision",
            json!({ "wait": { "hours": -3 } }),
            &["`events.6.step.decided.decision` is", "a decision as a kept walk has it"],
        ),
        results.sense(
            "results: a family with a rule that was not broken",
            "/events/5/step/decided/exercised/0/broke",
            json!(["se-01"]),
            &["`events.6.step.decided.exercised.1.broke` is se-01", "a rule that the decision broke"],
        ),
        results.safe("results: a day of a job to come", "/events/5/step/decided/known/day", json!(4_000_000)),
        results.safe("results: markup is text", "/events/1/person", json!("<script>alert(1)</script>")),
        results.safe("results: a family that is a path", "/events/1/family", json!("../../../etc/passwd")),
        raw(
            "results: a mark twice",
            mark_twice.into_bytes(),
            &["`events.2` is", "`mark` stands twice"],
            false,
        ),
        raw(
            "results: an attempt twice",
            inside_twice.into_bytes(),
            &["`events.2` is", "`attempt` stands twice"],
            false,
        ),
        raw("results: a deep event", deep.into_bytes(), &["`events.2` is", "recursion limit"], true),
        raw(
            "results: a number that is none",
            huge.into_bytes(),
            &["`events.2` is", "number out of range"],
            true,
        ),
        raw("results: no number", nan.into_bytes(), &["line 1"], true),
        raw("results: a million of nothing", many("0"), &["`events.1` is 0"], true),
        raw("results: a million objects", many("{}"), &["`events.1` is {}"], true),
        raw("results: a million events", many(&"x".repeat(70)), &["at most 67108864 are allowed"], true),
    ]
}
