//! The book as it grows, and what breaks it.

use super::support::shop::{self, number, when};
use serde_json::{Map, Value};
use stepboard::signoff::{
    Act, Book, Draft, Fault, Person, Role, SecretKey, Standing, Why, credential_id, read_canonical, verify,
};

fn credential(slug: &str, nth: u8) -> Map<String, Value> {
    read_canonical(shop::signed(slug, nth).as_bytes()).expect("canonical")
}

pub(super) fn id(nth: u8) -> String {
    credential_id([nth; 16])
}

/// A book with a sign-off, another, one assessed anew, one withdrawn and a list after it.
pub(super) fn book() -> Book {
    book_with(shop::people())
}

/// The same, with these people on the last list.
fn book_with(people: Vec<Person>) -> Book {
    let all = shop::competencies();
    let at = |day: &str| when(&format!("2026-03-{day}T16:00:00Z"));
    let signed = |slug, nth| Act::SignedOff { credential: credential(slug, nth) };
    let again = Act::Reassessed { credential: credential(shop::ORDINARY, 3), replaces: id(1) };
    let withdrawn = Act::Withdrawn { credential: id(2), reason: "The mask was of another kind.".to_owned() };
    let book = Book::begin(&shop::list(), &shop::root()).expect("a first record");
    let book =
        book.append(signed(shop::ORDINARY, 1), &shop::assessor(), &at("02"), &all).expect("signed off");
    let book = book.append(signed(shop::SAFETY, 2), &shop::assessor(), &at("02"), &all).expect("signed off");
    let book = book.append(again, &shop::assessor(), &at("03"), &all).expect("assessed anew");
    let book = book.append(withdrawn, &shop::instructor(), &at("04"), &all).expect("withdrawn");
    book.with_people(people, &shop::root(), &at("05")).expect("a list with the withdrawal")
}

#[test]
fn the_book_tells_how_somebody_stands() {
    let (book, all) = (book(), shop::competencies());
    let standing = |slug: &str, on: &str| match book.standing(&number("17"), slug, &all, &when(on)) {
        Standing::Never => "never".to_owned(),
        Standing::Held(one) => format!("held {}", one.id),
        Standing::Expired(one) => format!("expired {}", one.id),
        Standing::Withdrawn(one, withdrawal) => format!("withdrawn {} {}", one.id, withdrawal.at),
        Standing::Refused(one, reasons) => format!("refused {} {reasons:?}", one.id),
    };
    assert_eq!(standing(shop::ORDINARY, "2026-03-01T00:00:00Z"), "never");
    assert_eq!(standing(shop::ORDINARY, "2026-06-01T00:00:00Z"), format!("held {}", id(3)));
    assert_eq!(standing(shop::ORDINARY, "2028-06-01T00:00:00Z"), format!("expired {}", id(3)));
    assert_eq!(standing(shop::SAFETY, "2026-03-03T00:00:00Z"), format!("held {}", id(2)));
    assert_eq!(
        standing(shop::SAFETY, "2026-06-01T00:00:00Z"),
        format!("withdrawn {} 2026-03-04T16:00:00Z", id(2))
    );
    assert_eq!(standing("buffed", "2026-06-01T00:00:00Z"), "never");
    let file = shop::signed(shop::SAFETY, 2);
    let verdict = verify(file.as_bytes(), book.list(), &shop::competencies(), &shop::day());
    assert_eq!(verdict.reasons.iter().map(|one| one.why).collect::<Vec<_>>(), [Why::Withdrawn]);
}

#[test]
fn a_book_is_read_back_and_any_change_breaks_it() {
    let book = book();
    let root = shop::root().public();
    let text = book.text();
    assert_eq!(Book::open(&text, Some(&root)).as_ref(), Ok(&book));
    let lines: Vec<&str> = text.lines().collect();
    let joined = |lines: &[&str]| lines.iter().map(|line| format!("{line}\n")).collect::<String>();
    for place in 0..lines.len() - 1 {
        let mut without = lines.clone();
        without.remove(place);
        let broken = Book::open(&joined(&without), Some(&root)).expect_err("one is missing");
        assert_eq!(usize::try_from(broken.record).expect("small"), place + 1, "{broken}");
        let mut swapped = lines.clone();
        swapped.swap(place, place + 1);
        Book::open(&joined(&swapped), Some(&root)).expect_err("two are swapped");
        let mut doubled = lines.clone();
        doubled.insert(place, lines[place]);
        Book::open(&joined(&doubled), Some(&root)).expect_err("one stands twice");
    }
    // One bit in each of some bytes of every line: a book is opened slowly, since every signature in it is checked.
    const STRIDE: usize = 37;
    for place in (0..text.len()).step_by(STRIDE) {
        let mut bytes = text.clone().into_bytes();
        bytes[place] ^= 1;
        if let Ok(changed) = String::from_utf8(bytes) {
            Book::open(&changed, Some(&root)).expect_err("a byte is changed");
        }
    }
    Book::open(text.trim_end(), Some(&root)).expect_err("the last line is not ended");
    Book::open(&text, Some(&shop::stranger().public())).expect_err("another shop's root");
    // Cut off at the end it is a book; whoever noted its head sees it.
    let (number, hash) = book.head();
    let shorter = Book::open(&joined(&lines[..lines.len() - 1]), Some(&root)).expect("a shorter book");
    assert!(book.holds(number, hash) && !shorter.holds(number, hash));
}

#[test]
fn what_does_not_belong_into_the_book_is_refused_and_leaves_it_as_it_was() {
    let all = shop::competencies();
    // Somebody whose key ended the day after they signed; the sign-off stands in no book yet.
    let gone = SecretKey::from_seed(&[5; 32]);
    let mut people = shop::people();
    people.push(Person {
        to: Some(when("2026-03-03T08:00:00Z")),
        ..shop::person("a-3", "Ada Lund", Role::Assessor, gone.public())
    });
    let book = book_with(people);
    let competency = shop::competency("buffed");
    let kept = Draft::new(shop::request(&competency, 7), book.list(), &gone.public()).expect("trusted then");
    let kept = read_canonical(kept.sign(&gone).expect("signed").as_bytes()).expect("canonical");
    let kept = || Act::SignedOff { credential: kept.clone() };
    let before = book.text();
    let later = when("2026-03-06T16:00:00Z");
    let signed = |slug, nth| Act::SignedOff { credential: credential(slug, nth) };
    let again = |nth, old| Act::Reassessed { credential: credential(shop::ORDINARY, nth), replaces: id(old) };
    let withdrawn = |nth| Act::Withdrawn { credential: id(nth), reason: "Why.".to_owned() };
    let wordy = Act::Withdrawn { credential: id(3), reason: "x".repeat(201) };
    let (assessor, instructor, root) = (shop::assessor(), shop::instructor(), shop::root());
    let old_list = shop::list().next(later.clone(), shop::people(), vec![]);
    let old_list = read_canonical(old_list.signed(&root).expect("signed").as_bytes()).expect("canonical");
    let mut cut = credential(shop::ORDINARY, 6);
    cut["name"] = "Other".into();
    for (what, act, key, at, fault) in [
        ("a second sign-off", signed(shop::ORDINARY, 4), &assessor, &later, Fault::ReplacesWrong),
        ("a name used before", signed("buffed", 3), &assessor, &later, Fault::CredentialTwice),
        ("anew for one replaced", again(5, 1), &assessor, &later, Fault::ReplacesWrong),
        ("anew for one unknown", again(5, 9), &assessor, &later, Fault::ReplacesWrong),
        ("written down after the key ended", kept(), &gone, &later, Fault::NotTheirs),
        ("of a key that ended, by another", kept(), &assessor, &later, Fault::NotTheirs),
        ("recorded by another", again(5, 3), &instructor, &later, Fault::NotTheirs),
        (
            "changed after signing",
            Act::SignedOff { credential: cut },
            &assessor,
            &later,
            Fault::CredentialRefused,
        ),
        ("withdrawn twice", withdrawn(2), &instructor, &later, Fault::WithdrawnTwice),
        ("withdrawn but unknown", withdrawn(9), &instructor, &later, Fault::CredentialUnknown),
        ("withdrawn with a long reason", wordy, &instructor, &later, Fault::Unreadable),
        ("withdrawn by a stranger", withdrawn(3), &shop::stranger(), &later, Fault::NotTheirs),
        ("a list that forgets", Act::Trusted { list: old_list }, &root, &later, Fault::ListRefused),
        ("before the last", withdrawn(3), &instructor, &when("2026-03-05T15:59:59Z"), Fault::DateEarlier),
    ] {
        let broken = book.append(act, key, at, &all).expect_err(what);
        assert_eq!((broken.fault, broken.record), (fault, 7), "{what}: {broken}");
    }
    assert_eq!(book.text(), before);
    // A withdrawn sign-off does not stand in the way of a new one.
    book.append(signed(shop::SAFETY, 8), &assessor, &later, &all).expect("signed off again");
}
