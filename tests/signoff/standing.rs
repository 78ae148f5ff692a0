//! What the book says of somebody, against what `verify` says of their file.

use super::book::{book, id};
use super::support::shop::{self, number, when};
use stepboard::content::{Competency, Profile};
use stepboard::signoff::{Act, Book, Standing, TrustList, Why, Withdrawal, read_canonical, verify};

/// What the book refuses on a day; none where it is held.
fn refused(book: &Book, competencies: &[Competency]) -> Vec<Why> {
    match book.standing(&number("17"), shop::ORDINARY, competencies, &shop::day()) {
        Standing::Held(_) => vec![],
        Standing::Refused(_, reasons) => reasons.iter().map(|one| one.why).collect(),
        Standing::Withdrawn(..) => vec![Why::Withdrawn],
        other => panic!("{other:?}"),
    }
}

/// What `verify` says of the file on that day.
fn verified(list: &TrustList, competencies: &[Competency]) -> Vec<Why> {
    let file = shop::signed(shop::ORDINARY, 3);
    let verdict = verify(file.as_bytes(), list, competencies, &shop::day());
    verdict.reasons.iter().map(|one| one.why).collect()
}

#[test]
fn an_end_brought_forward_afterwards_takes_back_what_the_key_signed() {
    let (book, all) = (book(), shop::competencies());
    assert_eq!((refused(&book, &all), verified(book.list(), &all)), (vec![], vec![]));
    let at = when("2026-03-10T08:00:00Z");
    for to in ["2026-01-05T08:00:00Z", "2026-03-02T15:04:05Z", "2026-03-02T15:04:06Z"] {
        let mut people = shop::people();
        people[1].to = Some(when(to));
        let book = book.with_people(people, &shop::root(), &at).expect("an end may be brought forward");
        let found = refused(&book, &all);
        assert_eq!(found, verified(book.list(), &all), "until {to}");
        assert_eq!(found.is_empty(), to.ends_with("6Z"), "until {to}: {found:?}");
        assert_eq!(Book::open(&book.text(), None).as_ref(), Ok(&book), "and the book is still read");
    }
}

#[test]
fn a_withdrawal_on_the_list_alone_counts() {
    let (book, all) = (book(), shop::competencies());
    let at = when("2026-03-10T08:00:00Z");
    let mut withdrawn = book.withdrawn();
    withdrawn.push(Withdrawal { credential: id(3), at: at.clone(), reason: "Not seen.".to_owned() });
    let list = book.list().next(at.clone(), shop::people(), withdrawn);
    let signed = list.signed(&shop::root()).expect("signed");
    let list = read_canonical(signed.as_bytes()).expect("canonical");
    let book = book.append(Act::Trusted { list }, &shop::root(), &at, &all).expect("it follows");
    assert_eq!(
        (refused(&book, &all), verified(book.list(), &all)),
        (vec![Why::Withdrawn], vec![Why::Withdrawn])
    );
}

/// Content changes, the book stays: it is read, and says of each sign-off what no longer fits.
#[test]
fn a_change_of_content_leaves_the_book_readable() {
    let book = Book::open(&book().text(), Some(&shop::root().public())).expect("read without content");
    let changed = |change: &dyn Fn(&mut Competency)| -> Vec<Competency> {
        let mut all = shop::competencies();
        change(all.iter_mut().find(|one| one.slug == shop::ORDINARY).expect("it is there"));
        all
    };
    for (what, content, why) in [
        ("nothing", changed(&|_| ()), vec![]),
        ("renamed", changed(&|one| one.slug = "levelled-flat".to_owned()), vec![Why::CompetencyUnknown]),
        ("stricter", changed(&|one| one.profile = Profile::Safety), vec![Why::ProfileDiffers]),
        ("sooner shown anew", changed(&|one| one.expires_months = 12), vec![Why::ValidTooLong]),
        ("no competency left", vec![], vec![Why::CompetencyUnknown]),
    ] {
        assert_eq!(refused(&book, &content), why, "{what}");
        assert_eq!(verified(book.list(), &content), why, "{what}");
    }
    // What is added is held to the content.
    let credential = read_canonical(shop::signed("buffed", 8).as_bytes()).expect("canonical");
    let act = || Act::SignedOff { credential: credential.clone() };
    let later = when("2026-03-06T16:00:00Z");
    book.append(act(), &shop::assessor(), &later, &shop::competencies()).expect("known");
    let broken = book.append(act(), &shop::assessor(), &later, &[]).expect_err("unknown");
    assert_eq!(broken.reasons.iter().map(|one| one.why).collect::<Vec<_>>(), [Why::CompetencyUnknown]);
}
