//! Valid files, from which hostile ones are made.

use super::What;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use stepboard::content::Content;
use stepboard::exchange::{Editions, Named, OwnSheet, WalkFile, on_base};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;
use stepboard::walk::{Kept, Mode, Start, Walk, right};

/// A file for each reader.
pub(crate) fn files(content: &Content) -> [(What, Value); 6] {
    [
        (What::Sheet, sheet(content)),
        (What::Set, set(content)),
        (What::Withdrawal, withdrawal()),
        (What::Walk, walk(content)),
        (What::Ticket, ticket(content)),
        (What::Results, results(content)),
    ]
}

/// Decisions of the walk.
const DECISIONS: usize = 6;
/// A moment.
pub(crate) const AT: &str = "2027-03-12T14:30:00Z";

/// A sheet of a shop's own, with the first setting moved to its middle.
pub(crate) fn sheet(content: &Content) -> Value {
    let base = &content.sheets[0];
    let (setting, held) = (Setting::ALL[0], base.held(Setting::ALL[0]));
    let values = BTreeMap::from([(setting, f64::midpoint(held.floor, held.ceiling))]);
    let hash =
        on_base(content, &base.slug, &values).map(|sheet| sheet.hash().to_owned()).expect("within its span");
    let own = OwnSheet {
        name: "Winter".to_owned(),
        edition: 2,
        base: base.slug.clone(),
        base_hash: base.hash().to_owned(),
        values,
        hash,
        before: None,
        by: "Ilse Brandt, i-1".to_owned(),
        at: AT.to_owned(),
        note: "Cold room".to_owned(),
    };
    with_kind(json!(own), "stepboard-sheet")
}

fn with_kind(mut file: Value, kind: &str) -> Value {
    (file["format"], file["version"]) = (json!(kind), json!(1));
    file
}

/// A set on a sheet that ships, with a card of the shop's own.
pub(crate) fn set(content: &Content) -> Value {
    let base = &content.sheets[0];
    json!({
        "format": "stepboard-set", "version": 1, "title": "Fillers", "note": "Before Friday", "by": "Ilse Brandt, i-1", "at": AT,
        "sheet": { "ships": { "slug": base.slug, "hash": base.hash() } },
        "task": {
            "count": 6, "stages": ["fill"], "competencies": [], "families": ["wants-filler"], "tickets": [],
            "no_pictures": true, "hard": "usual", "purpose": "practise", "same_seed": 7, "pass": { "least": 5, "safety": true },
        },
        "from": "2027-03-01", "until": "2027-04-01",
        "own_cards": [{
            "tag": "not_computed", "question": "Where do the rags go in this shop?",
            "options": ["Red can", "Blue can", "Floor"], "right": [1], "why": "It is emptied every evening.",
        }],
    })
}

/// The withdrawal of a set.
pub(crate) fn withdrawal() -> Value {
    json!({
        "format": "stepboard-withdrawal", "version": 1, "set": format!("set-{}", "0123456789abcdef".repeat(2)),
        "by": "Ilse Brandt, i-1", "at": AT, "reason": "The can has moved",
    })
}

/// A walk on one's own, with the first decisions of a right way.
pub(crate) fn walk(content: &Content) -> Value {
    let info = content.walk("plain-plate").expect("ships");
    let base = content.sheet(&info.ticket.sheet).expect("ships");
    let start = Start::of(info, base, content).expect("known woods");
    let mut walk = Walk::begin(start, Mode::Own, 7);
    for decision in right::rest(&walk, content).expect("a way").into_iter().take(DECISIONS) {
        walk.decide(decision, content).expect("possible");
    }
    let kept = Kept::begun("k".to_owned(), "17".to_owned(), AT.to_owned(), walk.saved());
    let who = Named { journal: "17".to_owned(), number: "17".to_owned(), name: "Ana".to_owned() };
    let file = WalkFile::of(&kept, who, AT, &Editions::default(), content).expect("possible");
    with_kind(json!(file), "stepboard-walk")
}

/// A job ticket on the sheet of its walk.
pub(crate) fn ticket(content: &Content) -> Value {
    let info = content.walk("plain-plate").expect("ships");
    let base = content.sheet(&info.ticket.sheet).expect("ships");
    json!({
        "format": "stepboard-ticket", "version": 1, "walk": "plain-plate", "mode": "own", "seed": 7,
        "sheet": { "ships": { "slug": base.slug, "hash": base.hash() } },
        "note": "Before Friday", "by": "Ilse Brandt, i-1", "at": AT, "until": "2027-04-01",
    })
}

/// Results with answers in a check and what opened it, an observation at the booth, cards that were found wrong and a decision of a walk.
pub(crate) fn results(content: &Content) -> Value {
    let base = &content.sheets[0];
    let stamp = |sequence: u64| json!({ "format": 6, "sequence": sequence, "device": "5f0c1e9a", "at": AT, "date": "2027-03-12", "person": "17" });
    let event = |sequence: u64, kind: &str, more: Value| {
        let mut event = stamp(sequence);
        event["event"] = json!(kind);
        for (name, value) in more.as_object().expect("an object") {
            event[name] = value.clone();
        }
        event
    };
    let opened = json!({ "attempt": "one", "step": { "opened": { "set": "first-week", "competencies": ["room-safe"] } } });
    let answer = json!({
        "family": "wants-filler", "version": 2, "seed": 7, "sheet": { "slug": base.slug, "hash": base.hash() },
        "answer": { "terms": ["koa"] }, "certainty": "on-the-job", "mark": "partly", "guess": 0.25, "active_seconds": 31,
        "help": "none", "within": { "check": { "attempt": "one", "set": "first-week" } },
    });
    let by = json!({ "number": "i-1", "name": "Ilse Brandt" });
    let observed = json!({
        "subject": "17", "competency": "mask-worn", "occasion": "o1", "on": "2027-03-11", "paper": true,
        "work": "Ticket 204, back and sides", "alone": true, "judged": { "mask-worn-1": "met", "mask-worn-2": "not-seen" },
        "note": "Seal checked twice", "seconds": 341, "by": by,
    });
    let voided = json!({
        "wrong": { "cards": { "family": "wants-filler", "version": 2 } }, "reason": "Koa was listed twice", "by": by,
    });
    let walked = json!({ "walk": "7c11", "job": "plain-plate", "step": { "decided": {
        "way": "own", "sheet": { "slug": base.slug, "hash": base.hash() }, "nth": 1, "decision": { "wait": "morning" },
        "known": { "day": 1, "hour": 8.0 }, "broke": ["hazard.oily-rag"],
        "exercised": [{ "family": "residue-place", "version": 1, "broke": ["hazard.oily-rag"] }],
    } } });
    json!({
        "format": "stepboard-results", "version": 1, "device": "5f0c1e9a", "at": AT,
        "people": [{ "journal": "17", "number": "17", "name": "Ana" }], "sheets": [], "sets": [],
        "events": [
            event(1, "attempt", opened), event(2, "answered", answer.clone()), event(3, "answered", answer),
            event(4, "observed", observed), event(5, "voided", voided), event(6, "walked", walked),
        ],
    })
}
