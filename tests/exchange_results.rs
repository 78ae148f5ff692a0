//! Results as a file: written, read back whole, and refused with the place where something is not allowed.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod support;

use serde_json::{Value, json};
use stepboard::exchange::{Named, RESULTS, Reading, Refused, Results};
use stepboard::record::{Journal, LocalDate, Wrong};
use support::log::Log;

fn journal() -> Journal {
    let mut log = Log::new("tablet-a", "Ana");
    log.answer("wants-filler", true).open("one", &["room-safe"]).answer("wants-filler", false);
    Journal::new(log.events)
}

fn results() -> Results {
    let ana = Named { journal: "Ana".to_owned(), number: "p-07".to_owned(), name: "Ana".to_owned() };
    let of = ("tablet-a", "2027-03-12T14:30:00.000Z");
    Results::of(&support::content(), &journal(), &[], vec![ana], of)
}

fn value() -> Value {
    serde_json::from_str(&results().text().unwrap()).unwrap()
}

#[track_caller]
fn refused(file: &Value, place: &str, says: &str) {
    let refused = Results::read(file.to_string().as_bytes()).unwrap_err();
    let Refused::Value { place: found, allowed, .. } = &refused else { panic!("{refused}") };
    assert_eq!(found, place, "{refused}");
    assert!(allowed.contains(says), "`{says}` is not in `{refused}`");
}

#[test]
fn what_is_written_is_read_back() {
    let results = results();
    let text = results.text().unwrap();
    assert_eq!(Results::read(text.as_bytes()).unwrap(), results);
    assert_eq!(results.events, journal().events());
    assert_eq!(results.sets, ["a-set"], "a set that does not ship is named");
    let value = value();
    assert_eq!((&value["format"], &value["version"]), (&json!("stepboard-results"), &json!(1)));
    assert_eq!(value["events"], json!(journal()), "events stand in it as they are stored");
}

#[test]
fn it_can_be_read_a_few_events_at_a_time() {
    let text = results().text().unwrap();
    let mut reading = Reading::begin(text.as_bytes()).unwrap();
    let mut turns = 1;
    while reading.read_some(1).unwrap() {
        turns += 1;
    }
    assert_eq!((turns, reading.results()), (3, results()));
}

#[test]
fn a_file_of_nothing_but_what_was_found_wrong_is_told_from_results() {
    let is_finding = |results: &Results| {
        let text = results.text().unwrap();
        let mut reading = Reading::begin(text.as_bytes()).unwrap();
        let unread = reading.is_finding();
        while reading.read_some(1).unwrap() {}
        assert_eq!(reading.is_finding(), unread, "however much of it was read");
        unread
    };
    let mut log = Log::new("tablet-a", "Ana");
    log.voids(Wrong::Set { set: "a-set".to_owned() }, "The wrong set");
    let void = log.events[0].stamp().name();
    log.voids(Wrong::Void { void }, "It was right after all");
    let found = Results { people: Vec::new(), events: log.events.clone(), ..results() };
    assert!(is_finding(&found));
    assert!(!is_finding(&results()));
    assert!(!is_finding(&Results { people: results().people, ..found.clone() }), "it tells of somebody");
    assert!(!is_finding(&Results { events: Vec::new(), ..found.clone() }), "it tells of nothing");
    log.answer("wants-filler", true);
    assert!(!is_finding(&Results { events: log.events, ..found }), "it holds an answer");
}

#[test]
fn a_bare_list_is_read_as_the_results_of_its_device() {
    let bare = Results::read(json!(journal()).to_string().as_bytes()).unwrap();
    assert_eq!((bare.device.as_str(), bare.at.as_str()), ("tablet-a", "2027-01-01T08:03:00.000Z"));
    assert_eq!(bare.events, journal().events());
    assert_eq!(Results::read(b" []").unwrap().events, []);
}

#[test]
fn what_is_not_allowed_is_told_by_its_place() {
    let with = |change: &dyn Fn(&mut Value)| {
        let mut value = value();
        change(&mut value);
        value
    };
    refused(&with(&|v| v["events"][2]["mark"] = json!("almost")), "events.3", "`almost`");
    refused(&with(&|v| v["events"][1]["format"] = json!(99)), "events.2", "event in format 99");
    refused(&with(&|v| v["events"][1] = json!([1])), "events.2", "an event is an object");
    refused(&with(&|v| v["events"][2]["guess"] = json!(1.5)), "events.3.guess", "0 to 1");
    refused(&with(&|v| v["events"][1]["sequence"] = json!(1)), "events.2.sequence", "2 to ");
    refused(
        &with(&|v| v["events"][1]["sequence"] = json!(1_u64 << 60)),
        "events.2.sequence",
        "9007199254740991",
    );
    refused(&with(&|v| v["events"][0]["sequence"] = json!(0)), "events.1.sequence", "1 to ");
    refused(&with(&|v| v["events"][0]["device"] = json!("")), "events.1.device", "1 to 256");
    refused(&with(&|v| v["events"][0]["person"] = json!("x".repeat(300))), "events.1.person", "256");
    refused(&with(&|v| v["events"][0]["family"] = json!("x".repeat(20_000))), "events.1", "16384");
    refused(&with(&|v| v["device"] = json!("")), "device", "1 to 256");
    refused(&with(&|v| v["at"] = json!("yesterday")), "at", "2027-03-12T14:30:00Z");
    refused(&with(&|v| v["people"][0]["name"] = json!("")), "people.1.name", "1 to 256");
    refused(&with(&|v| v["sets"][0] = json!("")), "sets.1", "1 to 256");
}

#[test]
fn what_is_no_such_file_is_refused_whole() {
    let mut other = value();
    other["format"] = json!("stepboard-sheet");
    assert!(matches!(Results::read(other.to_string().as_bytes()), Err(Refused::OtherKind { .. })));
    let mut later = value();
    later["version"] = json!(2);
    assert!(matches!(
        Results::read(later.to_string().as_bytes()),
        Err(Refused::OtherVersion { found: 2, .. })
    ));
    let mut more = value();
    more["note"] = json!("");
    assert!(matches!(Results::read(more.to_string().as_bytes()), Err(Refused::Form { .. })));
    let mut text = results().text().unwrap();
    text.truncate(text.len() / 2);
    assert!(matches!(Results::read(text.as_bytes()), Err(Refused::Form { .. })));
    let large = vec![b' '; RESULTS.most + 1];
    assert!(matches!(Results::read(&large), Err(Refused::TooLarge { .. })));
}

#[test]
fn a_file_is_named_by_whose_answers_it_holds() {
    let mut some = results();
    let day = LocalDate::new(2027, 3, 12);
    let journal = some.events[0].stamp().person.clone();
    some.events.retain(|event| event.stamp().person == journal);
    some.people = vec![Named { journal: journal.clone(), number: "17".to_owned(), name: "Bo".to_owned() }];
    assert_eq!(some.save_name(day), "stepboard-results-Bo-17-2027-03-12.json");
    let mut other = some.events[0].clone();
    other.stamp_mut().person = "guest".to_owned();
    some.events.push(other);
    assert_eq!(some.save_name(day), "stepboard-results-Bo-17-guest-2027-03-12.json");
    some.events.clear();
    assert_eq!(some.save_name(day), "stepboard-results-2027-03-12.json");
}
