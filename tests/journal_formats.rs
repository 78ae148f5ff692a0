//! Every format that a journal was ever written in is read, and what cannot be read says why.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod support;

use serde_json::{Value, json};
use stepboard::content::{OnFile, World};
use stepboard::learn::evidence::{Asked, Uncounted, evidence};
use stepboard::record::{Attempts, Event, FORMAT, Help, Journal, Judged, LocalDate, Standing, Within, merge};
use support::log::Log;
use support::watch::{ILSE, NAME, Watch};

/// A journal as it was written before events told their format: one answer of each kind.
const FIRST: &str = include_str!("data/journal-format-1.json");
/// A journal as it was written before assessors wrote into it.
const SECOND: &str = include_str!("data/journal-format-2.json");
/// A journal as it was written before anything could be voided: an event of each kind.
const THIRD: &str = include_str!("data/journal-format-3.json");
/// A journal as it was written before decisions of walks stood in it.
const FOURTH: &str = include_str!("data/journal-format-4.json");
/// A journal as it was written before a face could be sprayed as an answer.
const FIFTH: &str = include_str!("data/journal-format-5.json");

#[test]
fn answers_of_the_first_format_are_read_and_count_as_practice() {
    let journal: Journal = serde_json::from_str(FIRST).unwrap();
    let stored: Vec<Value> = serde_json::from_str(FIRST).unwrap();
    assert_eq!((stored.len(), journal.answers().count()), (7, 7));
    let content = support::content();
    let sheet = &content.sheets[0];
    let world = World { content: &content, sheet };
    for (entry, stored) in journal.answers().zip(&stored) {
        assert_eq!(entry.within, Within::Practice);
        assert_eq!((entry.help, entry.guess, entry.active_seconds), (Help::None, None, None));
        assert_eq!((entry.stamp.format, entry.stamp.date), (1, None));
        // The day of universal time stands in.
        assert_eq!(entry.stamp.day().unwrap().to_string(), stored["at"].as_str().unwrap()[..10]);
        // Nothing that was written is lost when it is written again.
        let again = serde_json::to_value(Event::from(entry.clone())).unwrap();
        for (key, value) in stored.as_object().unwrap() {
            assert_eq!(&again[key], value, "{key}");
        }
        // What was seen can still be dealt.
        assert!(stepboard::card::deal(&world, &entry.family, entry.seed).is_ok());
    }
    let person = journal.people()[0].to_owned();
    for competency in &content.competencies {
        let found = evidence(journal.events(), &Asked::usual(&content, &person, competency));
        assert_eq!((found.attempt, found.state.answers, found.hazards.len()), (0, 0, 0));
        assert!(found.uncounted.keys().all(|why| *why == Uncounted::Practice), "{:?}", found.uncounted);
    }
}

#[test]
fn events_of_the_second_format_are_read_and_nothing_of_them_is_lost() {
    let journal: Journal = serde_json::from_str(SECOND).unwrap();
    let stored: Vec<Value> = serde_json::from_str(SECOND).unwrap();
    assert_eq!((stored.len(), journal.events().len(), journal.answers().count()), (9, 9, 4));
    assert!(journal.events().iter().all(|event| event.stamp().format == 2));
    assert_eq!(serde_json::to_value(&journal).unwrap(), Value::Array(stored));
    let (attempts, strays) = Attempts::of(journal.events());
    let [one] = attempts.all() else { panic!("one attempt") };
    assert_eq!((one.answers, one.standing, strays.len()), (2, Standing::Closed, 0));
    // A right answer whose luck is unknown, and one of practice, are left out; the error was taught.
    let content = support::content();
    let competency = content.competency("mask-worn").unwrap();
    let found = evidence(journal.events(), &Asked::usual(&content, "Ana", competency));
    assert_eq!((found.attempt, found.state.answers, found.hazards.len()), (1, 1, 1));
    assert!(!found.hazards[0].wants_initials);
}

/// What was written before anything could be voided.
#[test]
fn events_of_the_third_format_are_read_and_nothing_of_them_is_lost() {
    let journal: Journal = serde_json::from_str(THIRD).unwrap();
    let stored: Vec<Value> = serde_json::from_str(THIRD).unwrap();
    assert_eq!((stored.len(), journal.events().len(), journal.answers().count()), (8, 8, 1));
    assert!(journal.events().iter().all(|event| event.stamp().format == 3));
    assert_eq!(serde_json::to_value(&journal).unwrap(), Value::Array(stored));
}

/// What was written before decisions of walks stood in it: sets taken, and what was found wrong.
#[test]
fn events_of_the_fourth_format_are_read_and_nothing_of_them_is_lost() {
    let journal: Journal = serde_json::from_str(FOURTH).unwrap();
    let stored: Vec<Value> = serde_json::from_str(FOURTH).unwrap();
    assert_eq!((stored.len(), journal.events().len(), journal.answers().count()), (10, 10, 4));
    assert!(journal.events().iter().all(|event| event.stamp().format == 4));
    assert_eq!(serde_json::to_value(&journal).unwrap(), Value::Array(stored));
    let voids = stepboard::record::Voids::of(journal.events());
    // The cards were found right after all, the rule and the set stay void.
    assert!(voids.of_set("set-x").is_some() && voids.of_rule("wood.pores-filled").is_some());
}

/// What was written before a face could be sprayed as an answer: what happened on walks.
#[test]
fn events_of_the_fifth_format_are_read_and_nothing_of_them_is_lost() {
    let journal: Journal = serde_json::from_str(FIFTH).unwrap();
    let stored: Vec<Value> = serde_json::from_str(FIFTH).unwrap();
    assert_eq!((stored.len(), journal.events().len(), journal.answers().count()), (5, 5, 1));
    assert!(journal.events().iter().all(|event| event.stamp().format == 5));
    assert_eq!(serde_json::to_value(&journal).unwrap(), Value::Array(stored));
    assert_eq!(journal.events().iter().filter_map(Event::walked).count(), 4);
}

/// What assessors write down stands beside answers, counts for no knowledge evidence, and is read as it was written.
#[test]
fn what_assessors_write_down_is_read_as_it_was_written() {
    let content = support::content();
    let competency = content.competency("mask-worn").unwrap();
    let mut watch = Watch::new("5f0c1e9a", ILSE);
    let mut made = watch.made(competency, "o1", 30, &[("mask-worn-1", Judged::NotSeen)]);
    (made.paper, made.seconds, made.note) = (true, Some(341), "Seal checked twice".to_owned());
    let name = watch.put(made);
    watch.saw(competency, "o2", 31, &[]);
    watch.filed(OnFile::FitTest, 20, 300);
    watch.strikes(name, 32, "Typed in twice");
    let journal = Journal::new(watch.events.clone());
    let text = serde_json::to_string(&journal).unwrap();
    assert_eq!(serde_json::from_str::<Journal>(&text).unwrap(), journal);
    for part in [
        r#""event":"observed","format":6,"sequence":1,"device":"5f0c1e9a""#,
        r#""paper":true,"#,
        r#""mask-worn-1":"not-seen","mask-worn-2":"met""#,
        r#""seconds":341,"by":{"number":"i-1","name":"Assessor i-1"}"#,
        r#""what":"fit-test","on":"2027-01-21","until":"2027-10-28""#,
        r#""strikes":{"device":"5f0c1e9a","sequence":1},"reason":"Typed in twice""#,
    ] {
        assert!(text.contains(part), "{part} in {text}");
    }
    let asked = Asked::usual(&content, NAME, competency);
    assert_eq!(evidence(journal.events(), &asked), evidence(&[], &asked));
    assert_eq!(journal.answers().count(), 0);
}

#[test]
fn old_answers_and_new_events_stand_in_one_journal() {
    let mut log = Log::new("5f0c1e9a", "Ana");
    log.open("one", &["room-safe"]).answer("wants-filler", true).taught("wants-filler");
    let mut events = serde_json::from_str::<Journal>(FIRST).unwrap().events().to_vec();
    for event in &mut log.events {
        event.stamp_mut().sequence += 7;
    }
    events.extend(log.events);
    let journal = Journal::new(events);
    let text = serde_json::to_string(&journal).unwrap();
    assert_eq!(serde_json::from_str::<Journal>(&text).unwrap(), journal);
    assert_eq!((journal.answers().count(), journal.events().len()), (8, 10));
    assert_eq!(journal.next_sequence(), 11);
    assert!(journal.has(8) && journal.find(8).is_none(), "number 8 is no answer");
    assert_eq!(merge(std::slice::from_ref(&journal)).unwrap(), journal.events());
}

#[track_caller]
fn refused(event: Value, says: &[&str]) {
    let error = serde_json::from_value::<Event>(event).unwrap_err().to_string();
    for part in says {
        assert!(error.contains(part), "`{part}` is not in `{error}`");
    }
}

#[test]
fn what_cannot_be_read_says_why_and_what_is_allowed() {
    let stored: Vec<Value> = serde_json::from_str(FIRST).unwrap();
    let with = |key: &str, value: Value| {
        let mut event = stored[0].clone();
        event[key] = value;
        event
    };
    refused(with("format", json!(FORMAT + 1)), &["format 7", "1 to 6"]);
    refused(with("format", json!(0)), &["format 0", "1 to 6"]);
    // Only what is left off is taken to be of the first format, and an answer only in that one.
    for (format, told) in
        [(json!("2"), "`\"2\"`"), (json!(1.5), "`1.5`"), (json!(-1), "`-1`"), (Value::Null, "`null`")]
    {
        refused(with("format", format), &[told, "no whole number", "1 to 6"]);
    }
    refused(
        with("format", json!(2)),
        &[
            "format 2 tells no kind",
            "allowed: answered, attempt, taught, observed, filed, struck, erased, voided, walked",
        ],
    );
    for (kind, told) in [(json!(7), "`7`"), (Value::Null, "`null`")] {
        refused(
            with("event", kind),
            &[
                told,
                "no kind of event",
                "allowed: answered, attempt, taught, observed, filed, struck, erased, voided, walked",
            ],
        );
    }
    refused(
        with("event", json!("signed")),
        &["`signed`", "allowed: answered, attempt, taught, observed, filed, struck, erased, voided, walked"],
    );
    refused(with("mark", json!("fine")), &["event `answered`", "`fine`", "`right`"]);
    refused(with("date", json!("2027-02-29")), &["`2027-02-29` is no date", "2027-03-12"]);
    refused(with("event", json!("attempt")), &["event `attempt`", "missing field `attempt`"]);
    refused(with("event", json!("observed")), &["event `observed`", "missing field `subject`"]);
    refused(with("event", json!("filed")), &["event `filed`", "missing field `subject`"]);
}

/// Numbers of days by the Python standard library: `datetime.date(...).toordinal() - 719163`.
#[test]
fn dates_are_counted_as_the_calendar_has_them() {
    for (text, number) in [
        ("1970-01-01", 0),
        ("1999-12-31", 10_956),
        ("2000-02-29", 11_016),
        ("2000-03-01", 11_017),
        ("2001-09-09", 11_574),
        ("2027-03-12", 20_889),
        ("2028-02-29", 21_243),
        ("2100-03-01", 47_541),
        ("9999-12-31", 2_932_896),
    ] {
        let date: LocalDate = text.parse().unwrap();
        assert_eq!((date.number(), date.to_string().as_str()), (number, text));
    }
    for text in [
        "2027-02-29",
        "2100-02-29",
        "2027-13-01",
        "2027-00-01",
        "2027-04-31",
        "1969-12-31",
        "27-03-12",
        "2027-3-12",
        "2027-03-12T",
        "+027-03-12",
        "",
    ] {
        let error = text.parse::<LocalDate>().unwrap_err().to_string();
        assert!(error.contains(&format!("`{text}` is no date")), "{error}");
    }
}
