//! xAPI 1.0.3, part two (Data). Sections named are those of its text.

use super::home;
use crate::support::log::Log;
use crate::support::watch::{ILSE, NAME, TOMAS, Watch};
use crate::support::{base, content};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::sync::Arc;
use stepboard::card::{Answer, Kind, Mark, deal, grade, solve};
use stepboard::content::World;
use stepboard::exchange::{Actors, Named, statements};
use stepboard::record::{CardKind, Certainty, Event, Inspected, Judged, SheetName, Step, WalkStep, Wrong};

fn told(events: &[Event], people: &[Named]) -> Vec<Value> {
    statements(&content(), &home(), &Actors::new(people), events).all
}

fn ana() -> Named {
    Named { journal: "Ana".to_owned(), number: "a-0017".to_owned(), name: "Ana Unwritten".to_owned() }
}

/// A journal with answers of every kind of card and every step of an attempt.
fn journal() -> Vec<Event> {
    let (content, sheet) = (content(), base());
    let world = World { content: &content, sheet: &sheet };
    let mut log = Log::new("7", "Ana");
    log.open("one", &["room-safe"]);
    for kind in [
        Kind::ChooseOne,
        Kind::ChooseAll,
        Kind::Order,
        Kind::Number,
        Kind::Point,
        Kind::Diagnose,
        Kind::Spray,
    ] {
        let dealt = content.families.iter().find_map(|family| {
            (0..3).filter_map(|seed| deal(&world, &family.id, seed).ok()).find(|card| card.kind == kind)
        });
        let card = dealt.expect("a card of each kind");
        let right = solve(&card, &world).expect("solved").right;
        for answer in [right, Answer::NotEnough] {
            log.answer(&card.family, true);
            if let Some(Event::Answered(entry)) = log.events.last_mut() {
                let entry = Arc::make_mut(entry);
                entry.mark = grade(&card, &world, &answer).expect("graded").mark;
                (entry.version, entry.seed, entry.answer) = (card.version, card.seed, answer);
                entry.sheet = SheetName::of(&sheet);
            }
        }
    }
    log.step("one", Step::Left).step("one", Step::Resumed).step("one", Step::Closed);
    log.events
}

fn text<'a>(value: &'a Value, path: &str) -> &'a str {
    value.pointer(path).and_then(Value::as_str).unwrap_or_default()
}

/// The check value of the reference: the answer of number 42 on tablet 7.
#[test]
fn ids_depend_on_tablet_and_number_alone() {
    let mut log = Log::new("7", "Ana");
    log.answer("wants-filler", true);
    log.events[0].stamp_mut().sequence = 42;
    let id = |events: &[Event]| text(&told(events, &[])[0], "/id").to_owned();
    assert_eq!(id(&log.events), "c8e4b661-ce73-5547-b0dc-9676ad8972d3");
    if let Event::Answered(entry) = &mut log.events[0] {
        let entry = Arc::make_mut(entry);
        (entry.mark, entry.stamp.person) = (Mark::Wrong, "Ben".to_owned());
    }
    assert_eq!(id(&log.events), "c8e4b661-ce73-5547-b0dc-9676ad8972d3");
    // Sent again from the same journal, a statement is the same to the byte (2.3.1).
    assert_eq!(told(&journal(), &[ana()]), told(&journal(), &[ana()]));
}

/// 2.4.1 to 2.4.7 on every statement.
#[test]
fn every_statement_has_what_the_standard_asks() {
    let all = told(&journal(), &[ana()]);
    assert_eq!(all.len(), 17, "fourteen answers, opened, left and closed");
    let mut ids = BTreeSet::new();
    for one in &all {
        let id = text(one, "/id");
        // 2.4.1: a UUID of variant 2; no two alike (2.3.1).
        assert!(ids.insert(id.to_owned()) && "89ab".contains(&id[19..20]) && &id[14..15] == "5", "{id}");
        // 2.4.2.4: one account and no other identifier; 2.4.2.1: no name.
        let account = json!({ "homePage": "https://example.org/shop", "name": "a-0017" });
        assert_eq!(one["actor"], json!({ "objectType": "Agent", "account": account }));
        // 2.4.3: an IRI and what it is called.
        assert!(text(one, "/verb/id").starts_with("http://adlnet.gov/expapi/verbs/"));
        assert!(!text(one, "/verb/display/en").is_empty());
        assert!(text(one, "/object/id").starts_with("https://example.org/shop/"));
        // 2.4.10: the version is the store's to set.
        assert_eq!((one.get("version"), one.get("stored"), one.get("authority")), (None, None, None));
        // 4.5: a moment of ISO 8601 with its offset.
        assert!(text(one, "/timestamp").ends_with('Z'), "{one}");
        // 2.4.6.1: a registration is a UUID.
        assert_eq!(text(one, "/context/registration").len(), 36);
        // No null anywhere (4.1: a value of null is not allowed outside of extensions).
        assert!(!one.to_string().contains("null"), "{one}");
    }
    let verbs: Vec<&str> = all.iter().map(|one| text(one, "/verb/display/en")).collect();
    assert_eq!((verbs[0], verbs[15], verbs[16]), ("attempted", "exited", "completed"));
    assert!(verbs[1..15].iter().all(|verb| *verb == "answered"));
    let whole = serde_json::to_string(&all).expect("json");
    assert!(!whole.contains("Unwritten"), "nobody stands there by name");
}

/// 2.4.4.1: each kind of card by the interaction that it is, with a response in its form.
#[test]
fn cards_are_interactions() {
    let all = told(&journal(), &[ana()]);
    let answers: Vec<&Value> = all.iter().filter(|one| text(one, "/verb/display/en") == "answered").collect();
    let kinds: Vec<&str> =
        answers.iter().step_by(2).map(|one| text(one, "/object/definition/interactionType")).collect();
    assert_eq!(kinds, ["choice", "choice", "sequencing", "numeric", "other", "performance", "other"]);
    for one in &answers {
        assert_eq!(
            text(one, "/object/definition/type"),
            "http://adlnet.gov/expapi/activities/cmi.interaction"
        );
        // Right answers are computed and cannot be listed.
        assert_eq!(one.pointer("/object/definition/correctResponsesPattern"), None);
        let response = text(one, "/result/response");
        match text(one, "/object/definition/interactionType") {
            _ if response == "not-enough" => {}
            "numeric" => assert!(response.parse::<f64>().is_ok(), "{response}"),
            "performance" => {
                let steps: Vec<&str> =
                    response.split("[,]").filter_map(|part| Some(part.split_once("[.]")?.0)).collect();
                assert_eq!(steps, ["tests", "fault", "cause", "remedy"], "{response}");
            }
            "sequencing" => assert!(response.split("[,]").count() >= 3, "{response}"),
            _ => {}
        }
    }
}

/// 2.4.5: a duration of ISO 8601 in one form (4.6), and a score within its ends (2.4.5.1), by the marks of certainty.
#[test]
fn results_are_within_what_is_allowed() {
    // Certainty-based marking, Gardner-Medwin 2005: 1, 2, 3 for a right answer, 0, -2, -6 for a wrong one.
    let marks = [(Certainty::AskFirst, 1, 0), (Certainty::TestBoard, 2, -2), (Certainty::OnTheJob, 3, -6)];
    for (certainty, right, wrong) in marks {
        for (is_right, raw) in [(true, right), (false, wrong)] {
            let mut log = Log::new("7", "Ana");
            log.certainty = certainty;
            log.answer("wants-filler", is_right);
            let one = told(&log.events, &[]).remove(0);
            assert_eq!(one["result"]["score"], json!({ "raw": raw, "min": -6, "max": 3 }));
            assert_eq!(one["result"]["success"], is_right);
            assert_eq!(one["result"]["duration"], "PT20S");
        }
    }
}

/// 2.4.6: what stands beside an answer, and extensions by IRIs of the shop's own (4.1).
#[test]
fn context_tells_set_competencies_and_card() {
    let one = told(&journal(), &[ana()]).remove(1);
    assert_eq!(text(&one, "/context/contextActivities/parent/0/id"), "https://example.org/shop/sets/a-set");
    assert!(
        text(&one, "/context/contextActivities/grouping/0/id")
            .starts_with("https://example.org/shop/competencies/")
    );
    for (part, wanted) in
        [("context", "seed"), ("context", "sheet-hash"), ("result", "certainty"), ("result", "mark")]
    {
        assert!(
            one[part]["extensions"].get(format!("https://example.org/shop/x/{wanted}")).is_some(),
            "{wanted}"
        );
    }
}

/// What was watched is passed or failed, with the assessor as the instructor (2.4.6); struck out it is voided (2.3.2).
#[test]
fn what_was_watched_is_passed_failed_and_voided() {
    let content = content();
    let competency = content.competency("mask-worn").expect("ships");
    let mut watch = Watch::new("9", ILSE);
    watch.saw(competency, "o1", 30, &[]);
    let failed = watch.made(competency, "o2", 31, &[("mask-worn-1", Judged::NotYet)]);
    let name = watch.put(failed);
    watch.strikes(name, 32, "Typed in twice");
    let all = told(
        &watch.events,
        &[Named { journal: NAME.to_owned(), number: "a-0017".to_owned(), name: NAME.to_owned() }],
    );
    let verbs: Vec<&str> = all.iter().map(|one| text(one, "/verb/display/en")).collect();
    assert_eq!(verbs, ["passed", "failed", "voided"]);
    assert_eq!((&all[0]["result"]["success"], &all[1]["result"]["success"]), (&json!(true), &json!(false)));
    assert_eq!(text(&all[0], "/object/definition/type"), "http://adlnet.gov/expapi/activities/performance");
    assert_eq!(text(&all[0], "/context/instructor/account/name"), "i-1");
    assert_eq!(all[2]["object"], json!({ "objectType": "StatementRef", "id": all[1]["id"] }));
}

/// 2.3.2: by the rules of the app, whichever comes first; a statement of what is not struck out is not voided.
#[test]
fn what_is_struck_out_is_voided_once_and_nothing_else() {
    let content = content();
    let competency = content.competency("mask-worn").expect("ships");
    let mut watch = Watch::new("9", ILSE);
    let (mine, theirs) = (watch.saw(competency, "o1", 30, &[]), watch.saw(competency, "o2", 30, &[]));
    let mut other = Watch::new("8", TOMAS);
    // Tomas watched the first one as well: what Ilse said of it he talks over with her, and strikes out the second alone.
    other.saw(competency, "o1", 30, &[]);
    other.strikes(mine, 31, "I saw it otherwise").strikes(theirs, 31, "Another apprentice");
    let verbs = |events: &[Event]| {
        let all = told(events, &[]);
        let voided: Vec<String> = all
            .iter()
            .filter(|one| text(one, "/verb/display/en") == "voided")
            .map(|one| text(one, "/object/id").to_owned())
            .collect();
        (all.len(), voided)
    };
    let second = text(&told(&watch.events, &[])[1], "/id").to_owned();
    let behind = [watch.events.clone(), other.events.clone()].concat();
    assert_eq!(verbs(&behind), (4, vec![second.clone()]));
    let before = [other.events.clone(), watch.events.clone()].concat();
    assert_eq!(verbs(&before), (4, vec![second.clone()]), "merged so that strikes come first");
    // Twice struck out it is voided once.
    let mut twice = behind;
    let mut again = Watch::new("7", ILSE);
    again.strikes(watch.events[1].stamp().name(), 33, "Typed in twice");
    twice.extend(again.events);
    assert_eq!(verbs(&twice), (4, vec![second]));
}

/// An answer to what was found wrong is left out, and told again, to the byte, once the finding is taken back.
#[test]
fn what_was_found_wrong_is_left_out() {
    let mut log = Log::new("7", "Ana");
    log.answer("wants-filler", true).answer("recoat", true);
    let before = told(&log.events, &[]);
    log.voids(Wrong::Cards(CardKind { family: "recoat".to_owned(), version: 1 }), "Wrong table");
    let void = log.events.last().expect("a voiding").stamp().name();
    let found = statements(&content(), &home(), &Actors::default(), &log.events);
    assert_eq!((found.all.as_slice(), found.void), (&before[..1], 1));
    log.voids(Wrong::Void { void }, "It was right after all");
    assert_eq!(told(&log.events, &[]), before);
}

/// Whoever has no number stands under a hash; whoever gave no name is told by number of answers alone.
#[test]
fn nobody_stands_there_by_name() {
    let mut log = Log::new("7", "Ana Unwritten");
    log.answer("wants-filler", true);
    let one = told(&log.events, &[]).remove(0);
    assert!(text(&one, "/actor/account/name").starts_with("unnumbered-"));
    assert!(!one.to_string().contains("Unwritten"));
    log.person = String::new();
    log.answer("wants-filler", true);
    let both = statements(&content(), &home(), &Actors::default(), &log.events);
    assert_eq!((both.all.len(), both.nobodys), (1, 1));
}

/// A journal is hostile: what it names stays inside its part of an address and of a response.
#[test]
fn what_a_journal_names_stays_where_it_is() {
    let mut log = Log::new("7/../8", "Ana");
    log.answer("no such/../family?x", true);
    if let Some(Event::Answered(entry)) = log.events.last_mut() {
        let entry = Arc::make_mut(entry);
        entry.answer = Answer::Terms(vec!["a[,]b".to_owned(), "c".to_owned()]);
        entry.stamp.at = "2027-99-99T00:00:00Z".to_owned();
    }
    let one = told(&log.events, &[]).remove(0);
    assert_eq!(text(&one, "/object/id"), "https://example.org/shop/cards/no%20such%2F..%2Ffamily%3Fx/v1");
    assert_eq!((one["result"].get("response"), one.get("timestamp")), (None, None));
}

/// Verbs and the activity type of a simulation: ADL vocabulary. A decision is one statement, whichever families it says
/// something of; what rests on a rule that is void is left out.
#[test]
fn decisions_of_walks_are_statements_of_a_simulation() {
    let says = [("seal-check", Some("hazard.seal-check-each-time")), ("recoat-now", None)];
    let mut log = Log::new("7", "Ana");
    let seen = Inspected { seed: 1, found: 1, half: 1, missed: vec!["se-09".to_owned()], wrong: 0 };
    log.decides("w", "plain-plate", &says).walks("w", "plain-plate", WalkStep::LetGo);
    log.walks("i", "plain-plate", WalkStep::Inspected(seen));
    let all = told(&log.events, &[ana()]);
    let verbs: Vec<&str> = all.iter().map(|one| text(one, "/verb/display/en")).collect();
    assert_eq!(verbs, ["interacted", "exited", "completed"]);
    for one in &all {
        assert_eq!(text(one, "/object/id"), "https://example.org/shop/walks/plain-plate");
        assert_eq!(text(one, "/object/definition/type"), "http://adlnet.gov/expapi/activities/simulation");
        assert!(!one.to_string().contains("null"), "{one}");
    }
    assert_eq!(all[0]["result"]["success"], false);
    assert_eq!(all[2]["result"]["score"], json!({ "raw": 1, "min": 0, "max": 3 }));
    assert_eq!(text(&all[0], "/context/registration"), text(&all[1], "/context/registration"));
    assert_ne!(text(&all[0], "/context/registration"), text(&all[2], "/context/registration"));
    // Sent again it is the same, and what rests on a void rule is left out.
    assert_eq!(told(&log.events, &[ana()]), all);
    log.voids(Wrong::Rule { rule: says[0].1.expect("one").to_owned(), cards: Vec::new() }, "Wrong table");
    let left = statements(&content(), &home(), &Actors::new(&[ana()]), &log.events);
    assert_eq!((left.all.len(), left.void), (2, 1));
}
