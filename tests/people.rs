//! The apprentices of a tablet: who is taken in, what a PIN keeps out, what is told of one, what is left of one.
//!
//! What people expect of a shop number, a PIN and an erasure is common practice, no source; Argon2id behind the PIN is held
//! against its reference by the wrapped keys in `tests/signed`.

use stepboard::people::{Crew, NotTaken, Pin, erased, told};
use stepboard::record::{Event, Journal, Stamp, Step, Turn, merge};
use stepboard::signoff::ShopNumber;

fn number(text: &str) -> ShopNumber {
    ShopNumber::new(text).expect("a shop number")
}

fn crew() -> Crew {
    let crew = Crew::default().with(number("a-07"), "Mara", None, &[]).expect("taken in");
    crew.with(number("a-08"), " Jon ", Some("Jon"), &["Jon"]).expect("taken in")
}

fn stamp(device: &str, sequence: u64, person: &str) -> Stamp {
    let at = format!("2026-03-0{sequence}T10:00:00.000Z");
    let (device, person) = (device.to_owned(), person.to_owned());
    Stamp { format: 3, sequence, device, at, date: None, person }
}

fn left(device: &str, sequence: u64, person: &str) -> Event {
    Turn { stamp: stamp(device, sequence, person), attempt: "one".to_owned(), step: Step::Left }.into()
}

#[test]
fn a_number_and_what_stands_in_the_journal_are_one_persons() {
    let crew = crew();
    assert_eq!(crew.shown("a-07"), "Mara");
    assert_eq!(crew.shown("Jon"), "Jon");
    assert_eq!(crew.shown("somebody"), "somebody");
    assert_eq!(crew.with(number("a-07"), "Ina", None, &[]), Err(NotTaken::NumberTaken));
    assert_eq!(crew.with(number("a-09"), "Ina", Some("Jon"), &["Jon"]), Err(NotTaken::JournalTaken));
    // Somebody without a number answered under a name that looks like one.
    assert_eq!(crew.with(number("ina"), "Ina", None, &["ina"]), Err(NotTaken::JournalTaken));
    for unfit in ["", "  ", "a\u{202e}b", &"m".repeat(41)] {
        assert_eq!(crew.with(number("a-10"), unfit, None, &[]), Err(NotTaken::NameUnfit), "{unfit:?}");
        assert_eq!(crew.renamed("a-07", unfit), Err(NotTaken::NameUnfit), "{unfit:?}");
    }
    assert_eq!(crew.renamed("a-99", "Ina"), Err(NotTaken::Unknown));
    assert_eq!(crew.without("a-99"), Err(NotTaken::Unknown));
    assert_eq!(crew.without("a-07").expect("there").members().len(), 1);
}

#[test]
fn the_crew_is_stored_and_read_with_nothing_lost_or_guessed() {
    let crew = crew().with_pin("a-07", Pin::new("4711", [9; 16])).expect("there");
    let text = serde_json::to_string(&crew).expect("JSON");
    assert!(!text.contains("4711"), "a PIN is kept as it was typed");
    assert_eq!(serde_json::from_str::<Crew>(&text).expect("as it was written"), crew);
    let more = text.replacen("\"name\"", "\"nick\":\"x\",\"name\"", 1);
    assert!(serde_json::from_str::<Crew>(&more).is_err(), "a member that nobody knows is read over");
}

#[test]
fn only_the_pin_opens_and_wrong_ones_wait_longer_and_longer() {
    let pin = Pin::new("0471", [1; 16]).expect("a PIN");
    assert!(pin.fits("0471"));
    for other in ["0472", "471", "00471", "", "04 71", "０４７１"] {
        assert!(!pin.fits(other), "{other:?}");
    }
    for unfit in ["123", "123456789", "12a4", "-123", ""] {
        assert_eq!(Pin::new(unfit, [1; 16]), None, "{unfit:?}");
    }
    let waits: Vec<u32> = (0..12).map(Pin::wait_seconds).collect();
    assert_eq!(waits, [0, 0, 0, 5, 10, 20, 40, 80, 160, 320, 320, 320]);
}

#[test]
fn an_erased_person_is_gone_and_does_not_come_back_with_a_copy() {
    let copy = Journal::new(vec![left("t", 1, "a-07"), left("t", 2, "a-08"), left("t", 3, "a-07")]);
    let what = erased(&copy, "a-07", stamp("t", 4, "a-07"));
    assert_eq!(what.numbers, [1, 3]);
    let after = copy.clone().after(what.clone());
    let text = serde_json::to_string(&after).expect("JSON");
    assert!(!text.contains("a-07"), "{text}");
    assert_eq!(after.next_sequence(), 5, "a number would stand for two events");
    let read: Journal = serde_json::from_str(&text).expect("as it was written");
    assert_eq!(read.events(), after.events());
    for order in [[copy.clone(), after.clone()], [after.clone(), copy]] {
        let merged = merge(&order).expect("no clash");
        assert_eq!(merged, [left("t", 2, "a-08"), what.clone().into()]);
    }
    // The same numbers of another device are other events.
    let other = Journal::new(vec![left("u", 1, "a-07")]);
    assert_eq!(merge(&[after, other]).expect("no clash").len(), 3);
}

#[test]
fn what_is_told_of_a_person_is_theirs_alone() {
    let crew = crew();
    let journal = Journal::new(vec![left("t", 1, "a-07"), left("t", 2, "Jon")]);
    let of = |number: &str| told(crew.member(number).expect("there"), &journal, None);
    assert_eq!(of("a-07")["events"].as_array().expect("a list").len(), 1);
    assert_eq!(of("a-08")["events"][0]["person"], "Jon");
    assert_eq!(of("a-08")["name"], "Jon");
    assert_eq!(of("a-08")["format"], "stepboard-person");
}
