//! Keys under a passphrase, and keys that are lost.

use super::book::book;
use super::support::shop::{self, number, when};
use stepboard::signoff::{Barred, Draft, Locked, PASSPHRASE_LEAST, Person, Request, WrappedKey, verify};

/// The written way out: the old key gets an end, the person another key, and what was signed before still counts.
#[test]
fn a_lost_key_is_replaced_and_what_it_signed_before_still_counts() {
    let (book, all) = (book(), shop::competencies());
    let lost = when("2026-03-10T08:00:00Z");
    let mut people = shop::people();
    people[1].to = Some(lost.clone());
    let new = Person { from: lost.clone(), to: None, key: shop::stranger().public(), ..people[1].clone() };
    people.push(new);
    let book = book.with_people(people, &shop::root(), &lost).expect("a list with another key");
    let file = shop::signed(shop::ORDINARY, 3);
    assert!(verify(file.as_bytes(), book.list(), &all, &shop::day()).accepted(), "signed before the loss");
    let competency = shop::competency(shop::ORDINARY);
    let asked = || Request {
        at: when("2026-03-11T08:00:00Z"),
        today: shop::date("2026-03-11"),
        ..shop::request(&competency, 7)
    };
    let not = Draft::new(asked(), book.list(), &shop::assessor().public()).expect_err("the lost key");
    assert_eq!(not.barred, [Barred::NotTrusted]);
    let own = Request { subject: number("a-2"), ..asked() };
    let not = Draft::new(own, book.list(), &shop::stranger().public()).expect_err("the same person");
    assert_eq!(not.barred, [Barred::OwnWork]);
    let draft = Draft::new(asked(), book.list(), &shop::stranger().public()).expect("the new key");
    let signed = draft.sign(&shop::stranger()).expect("signed");
    assert!(verify(signed.as_bytes(), book.list(), &all, &shop::day()).accepted());
    assert!(
        !verify(signed.as_bytes(), &shop::list(), &all, &shop::day()).accepted(),
        "an old list knows no new key"
    );
}

#[test]
fn a_passphrase_opens_the_key_and_another_says_that_it_does_not() {
    let key = shop::assessor();
    let short = "x".repeat(PASSPHRASE_LEAST - 1);
    assert_eq!(WrappedKey::wrap(&key, &short, &[9; 32]), Err(Locked::PassphraseShort));
    let wrapped = WrappedKey::wrap(&key, shop::PASSPHRASE, &[9; 32]).expect("wrapped");
    let text = wrapped.text().expect("a file");
    assert!(!text.contains(&bs58::encode([3; 32]).into_string()), "the seed does not stand there");
    let read = WrappedKey::read(text.as_bytes()).expect("a key file");
    assert_eq!(read.open(shop::PASSPHRASE).expect("opened").public(), key.public());
    assert_eq!(read.open("four words of oak and elm").map(|key| key.public()), Err(Locked::WrongPassphrase));
    let newer = text.replacen("\"version\":1}", "\"version\":2}", 1);
    assert_eq!(WrappedKey::read(newer.as_bytes()), Err(Locked::VersionUnknown));
    let weaker = text.replacen("\"passes\":3", "\"passes\":1", 1);
    assert_ne!(weaker, text);
    assert_eq!(WrappedKey::read(weaker.as_bytes()), Err(Locked::FileUnreadable));
    assert!(!format!("{key:?}").contains("SigningKey"), "a key is not shown");
}
