//! Sets that ask what is not there, for ever, or too much; own cards that are none; withdrawals of nothing.

use super::{Change, Hostile, What, valid};
use serde_json::{Value, json};
use stepboard::content::Content;

/// Entries of a list that is long while its file is not too large.
const MANY: usize = 60_000;

pub(super) fn all(content: &Content) -> Vec<Hostile> {
    let set = Change { what: What::Set, valid: valid::set(content) };
    let withdrawal = Change { what: What::Withdrawal, valid: valid::withdrawal() };
    let card = valid::set(content)["own_cards"][0].clone();
    let mut sheet = valid::sheet(content);
    let members = sheet.as_object_mut().expect("an object");
    members.retain(|name, _| !["format", "version"].contains(&name.as_str()));
    sheet["hash"] = json!("0123456789abcdef");
    let long_member = set.to(&format!("/task/{}", "a".repeat(MANY)), json!(1));
    vec![
        set.sense("set: no card", "/task/count", json!(0), &["`task.", "is allowed"]),
        set.sense("set: cards without end", "/task/count", json!(u32::MAX), &["`task.count` is 4294967295"]),
        set.shape("set: cards below 0", "/task/count", json!(-1), &["line 1", "expected u32"]),
        set.sense(
            "set: an unknown family",
            "/task/families",
            json!(["no-such"]),
            &["`task.families.", "no-such"],
        ),
        set.sense(
            "set: a path as a family",
            "/task/families",
            json!(["../../etc/passwd"]),
            &["`task.families.", "../.."],
        ),
        set.sense(
            "set: a family twice",
            "/task/families",
            json!(["wants-filler", "wants-filler"]),
            &["`task.families.", "once"],
        ),
        set.sense(
            "set: families without end",
            "/task/families",
            Value::Array(vec![json!("a"); MANY]),
            &["`task.families` is 60000", "0 to", "is allowed"],
        ),
        set.sense(
            "set: stages without end",
            "/task/stages",
            Value::Array(vec![json!("fill"); MANY / 2]),
            &["`task.stages` is 30000", "0 to", "is allowed"],
        ),
        set.sense(
            "set: an unknown competency",
            "/task/competencies",
            json!(["fly"]),
            &["`task.competencies.", "fly"],
        ),
        set.sense("set: an unknown ticket", "/task/tickets", json!(["banjo"]), &["`task.tickets.", "banjo"]),
        set.shape("set: an unknown stage", "/task/stages", json!(["paint"]), &["unknown variant `paint`"]),
        set.shape("set: stages as text", "/task/stages", json!("fill"), &["line 1", "expected a sequence"]),
        set.shape(
            "set: a seed past all seeds",
            "/task/same_seed",
            json!(1_u64 << 32),
            &["line 1", "expected u32"],
        ),
        set.sense(
            "set: more right than cards",
            "/task/pass/least",
            json!(1000),
            &["`task.pass.least` is 1000"],
        ),
        set.shape("set: a rule too many", "/task/pass/skip", json!(true), &["unknown field `skip`"]),
        set.made(
            "set: a member without end",
            &long_member,
            &["unknown field `aaa", "a…, expected", "`count`"],
            true,
        ),
        set.shape(
            "set: a purpose that hides",
            "/task/purpose",
            json!("\u{202e}, expected nothing at line 1"),
            &["unknown variant `\\u{202e}, expected nothing at line 1`, expected", "practise"],
        ),
        set.shape("set: an unknown purpose", "/task/purpose", json!("exam"), &["unknown variant `exam`"]),
        set.sense("set: over before it begins", "/until", json!("2027-02-01"), &["`until` is 2027-02-01"]),
        set.sense("set: a day that is none", "/from", json!("2027-02-30"), &["`2027-02-30` is no date"]),
        set.safe("set: a day far away", "/until", json!("9999-12-31")),
        set.sense(
            "set: an unknown sheet",
            "/sheet/ships/slug",
            json!("no-such"),
            &["`sheet.ships.slug` is no-such"],
        ),
        set.sense(
            "set: other values",
            "/sheet/ships/hash",
            json!("0123456789abcdef"),
            &["`sheet.ships.hash` is"],
        ),
        set.sense("set: an own sheet that lies", "/sheet", json!({ "own": sheet }), &["`sheet.own.hash` is"]),
        set.shape("set: two sheets", "/sheet", json!({ "ships": {}, "own": {} }), &["line 1"]),
        set.sense("set: a title that hides", "/title", json!("a\u{2066}b"), &["`title` is"]),
        set.shape("set: a long title", "/title", json!("a".repeat(61)), &["`title` is"]),
        set.shape("set: no title", "/title", json!(""), &["`title` is"]),
        set.sense("set: a note on many lines", "/note", json!("a\n\n\nb"), &["`note` is"]),
        set.safe("set: markup is text", "/title", json!("<img src=x onerror=alert(1)>")),
        set.shape(
            "set: a card that says it is computed",
            "/own_cards/0/tag",
            json!("computed"),
            &["unknown variant `computed`"],
        ),
        set.shape("set: a card without its tag", "/own_cards/0/tag", Value::Null, &["missing field `tag`"]),
        set.shape(
            "set: a card for a competency",
            "/own_cards/0/competencies",
            json!(["room-safe"]),
            &["unknown field `competencies`"],
        ),
        set.shape("set: one option", "/own_cards/0/options", json!(["a"]), &["`own_cards.0.options` is 1"]),
        set.shape(
            "set: too many options",
            "/own_cards/0/options",
            json!(["a", "b", "c", "d", "e", "f", "g", "h", "i"]),
            &["`own_cards.0.options` is 9"],
        ),
        set.shape(
            "set: an option twice",
            "/own_cards/0/options",
            json!(["a", "a"]),
            &["`own_cards.0.options.1` is a"],
        ),
        set.shape(
            "set: an empty option",
            "/own_cards/0/options/1",
            json!(""),
            &["`own_cards.0.options.1` is"],
        ),
        set.sense(
            "set: an option that hides",
            "/own_cards/0/options/1",
            json!("b\u{0}"),
            &["`own_cards.0.options.1` is"],
        ),
        set.shape("set: nothing right", "/own_cards/0/right", json!([]), &["`own_cards.0.right` is []"]),
        set.sense(
            "set: a right one that is not there",
            "/own_cards/0/right",
            json!([4]),
            &["`own_cards.0.right` is [4]"],
        ),
        set.shape("set: right at 0", "/own_cards/0/right", json!([0]), &["`own_cards.0.right` is [0]"]),
        set.sense(
            "set: a card twice",
            "/own_cards",
            json!([card, card]),
            &["`own_cards.1` is", "each card once"],
        ),
        set.shape(
            "set: too many cards",
            "/own_cards",
            Value::Array(vec![card.clone(); 21]),
            &["`own_cards` is 21", "20 at most"],
        ),
        set.made("set: too large", &json!("x".repeat(300 * 1024)), &["at most 262144 are allowed"], true),
        withdrawal.shape("withdrawal: of no set", "/set", json!("all"), &["`set` is all"]),
        withdrawal.shape(
            "withdrawal: of a path",
            "/set",
            json!("set-../../../../../../../../../../abc"),
            &["`set` is set-.."],
        ),
        withdrawal.shape(
            "withdrawal: in capitals",
            "/set",
            json!(format!("set-{}", "0123456789ABCDEF".repeat(2))),
            &["`set` is"],
        ),
        withdrawal.shape("withdrawal: by nobody", "/by", json!(""), &["`by` is"]),
        withdrawal.sense(
            "withdrawal: a reason that runs backwards",
            "/reason",
            json!("\u{202e}x"),
            &["`reason` is"],
        ),
        withdrawal.safe("withdrawal: markup is text", "/reason", json!("</script><b>")),
    ]
}
