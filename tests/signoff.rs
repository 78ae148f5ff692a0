//! Who may sign what, the book as it grows, and what becomes of lost keys.

mod support;

use stepboard::content::Profile;
use stepboard::learn::mastery::Call;
use stepboard::rules::term::Term;
use stepboard::signoff::{
    Act, Barred, Book, Draft, Fault, Knowledge, Locked, NotSigned, PASSPHRASE_LEAST, Person, Request, Role,
    Standing, TrustList, Why, WrappedKey, read_canonical, verify,
};
use support::shop::{self, number, when};

fn bars(request: Request<'_>) -> Vec<Barred> {
    Draft::new(request, &shop::list(), &shop::assessor().public())
        .map_or_else(|not| not.barred, |_| Vec::new())
}

const NOT_YET: [Call; 3] = [Call::GoOn, Call::BackToStudy, Call::NotYet];

#[test]
fn a_safety_competency_is_not_signed_without_its_evidence_whatever_the_reason() {
    for competency in shop::competencies() {
        for call in NOT_YET {
            let asked = Request { call, reason: Some(shop::reason()), ..shop::request(&competency, 1) };
            let expected = match competency.profile {
                Profile::Safety => vec![Barred::SafetyNotShown],
                Profile::Ordinary => vec![],
            };
            assert_eq!(bars(asked), expected, "{} {call:?}", competency.slug);
        }
    }
}

#[test]
fn nothing_is_signed_while_a_critical_mistake_is_open_whatever_the_reason() {
    for competency in shop::competencies() {
        for reason in [None, Some(shop::reason())] {
            let asked = Request { open_critical: 1, reason, ..shop::request(&competency, 1) };
            assert_eq!(bars(asked), [Barred::CriticalOpen], "{}", competency.slug);
        }
    }
}

#[test]
fn signing_without_the_evidence_needs_a_reason_and_says_so() {
    let competency = shop::competency(shop::ORDINARY);
    let asked = || Request { call: Call::GoOn, ..shop::request(&competency, 1) };
    assert_eq!(bars(asked()), [Barred::ReasonMissing]);
    let asked = Request { reason: Some(shop::reason()), ..asked() };
    let draft = Draft::new(asked, &shop::list(), &shop::assessor().public()).expect("an ordinary one");
    assert_eq!(draft.credential().knowledge, Knowledge::Insufficient);
    assert!(draft.text().expect("text").contains("Worked six years in another shop"));
    // Where the evidence is sufficient a reason is not needed and does not stand there.
    let asked = Request { reason: Some(shop::reason()), ..shop::request(&competency, 1) };
    let draft = Draft::new(asked, &shop::list(), &shop::assessor().public()).expect("nothing bars it");
    assert!(!draft.text().expect("text").contains("Worked six years"));
}

#[test]
fn nobody_signs_for_themselves_or_from_outside_the_list() {
    let competency = shop::competency(shop::ORDINARY);
    let own = Request { subject: number("a-2"), ..shop::request(&competency, 1) };
    assert_eq!(bars(own), [Barred::OwnWork]);
    let early = Request { at: when("2026-01-05T07:59:59Z"), ..shop::request(&competency, 1) };
    assert_eq!(bars(early), [Barred::NotTrusted]);
    for key in [shop::stranger(), shop::root()] {
        let not =
            Draft::new(shop::request(&competency, 1), &shop::list(), &key.public()).expect_err("not listed");
        assert_eq!(not.barred, [Barred::NotTrusted]);
    }
    let draft =
        Draft::new(shop::request(&competency, 1), &shop::list(), &shop::assessor().public()).expect("good");
    assert_eq!(
        draft.sign(&shop::instructor()),
        Err(NotSigned { barred: vec![Barred::OtherKey], refusal: None })
    );
}

#[test]
fn cards_alone_or_a_criterion_not_met_sign_nobody_off() {
    let competency = shop::competency(shop::ORDINARY);
    let nothing = Request { observed: vec![], ..shop::request(&competency, 1) };
    assert_eq!(bars(nothing), [Barred::NothingObserved]);
    let none = Request { criteria: vec![], ..shop::request(&competency, 1) };
    assert_eq!(bars(none), [Barred::CriterionNotMet]);
    let mut one = shop::request(&competency, 1);
    one.criteria[1].met = false;
    assert_eq!(bars(one), [Barred::CriterionNotMet]);
    let mut blank = shop::request(&competency, 1);
    blank.observed[0].narrative = " ".to_owned();
    let not = Draft::new(blank, &shop::list(), &shop::assessor().public()).expect_err("nothing is told");
    assert_eq!(not.barred, [Barred::Unfit]);
    assert_eq!(not.refusal.expect("what").why, Why::WordsUnfit);
    let ended = Request { until: when("2026-03-02T15:04:05Z"), ..shop::request(&competency, 1) };
    assert_eq!(bars(ended), [Barred::Unfit]);
}

#[test]
fn what_is_shown_is_what_is_signed() {
    let competency = shop::competency(shop::SAFETY);
    let draft =
        Draft::new(shop::request(&competency, 1), &shop::list(), &shop::assessor().public()).expect("good");
    let signed = draft.sign(&shop::assessor()).expect("signed");
    let mut members = read_canonical(signed.as_bytes()).expect("canonical");
    members.remove("proof");
    let shown = read_canonical(draft.text().expect("text").as_bytes()).expect("canonical");
    assert_eq!(members, shown);
    let verdict = verify(signed.as_bytes(), &shop::list(), &shop::competencies(), &shop::day());
    assert!(verdict.accepted(), "{:?}", verdict.reasons);
    assert_eq!(verdict.credential.as_ref(), Some(draft.credential()));
    assert_eq!(verdict.hash, draft.hash().ok());
}

#[test]
fn days_and_withdrawals_decide() {
    let file = shop::signed(shop::ORDINARY, 1);
    let why = |list: &TrustList, on: &str| -> Vec<Why> {
        let verdict = verify(file.as_bytes(), list, &shop::competencies(), &when(on));
        verdict.reasons.iter().map(|reason| reason.why).collect()
    };
    let list = shop::list();
    assert_eq!(why(&list, "2026-03-02T15:04:04Z"), [Why::NotYetValid]);
    assert_eq!(why(&list, "2026-03-02T15:04:05Z"), []);
    assert_eq!(why(&list, "2028-03-02T15:04:04Z"), []);
    assert_eq!(why(&list, "2028-03-02T15:04:05Z"), [Why::Expired]);
    let mut gone = list.people.clone();
    gone[1].to = Some(when("2026-03-02T15:04:05Z"));
    let left = list.next(when("2026-04-01T08:00:00Z"), gone.clone(), vec![]);
    left.follows(&list).expect("an end may be set");
    assert_eq!(why(&left, "2026-05-01T00:00:00Z"), [Why::SignerNotThen]);
    gone[1].to = Some(when("2026-03-02T15:04:06Z"));
    assert_eq!(why(&list.next(when("2026-04-01T08:00:00Z"), gone, vec![]), "2026-05-01T00:00:00Z"), []);
}

#[test]
fn a_trust_list_takes_nothing_back_and_contradicts_itself_nowhere() {
    let (list, root) = (shop::list(), shop::root());
    let later = || when("2026-04-01T08:00:00Z");
    let next = |people: Vec<Person>| list.next(later(), people, vec![]);
    next(shop::people()).follows(&list).expect("the same people");
    assert_eq!(list.follows(&list).expect_err("the same list").why, Why::ListUnfit);
    assert_eq!(
        next(shop::people()[..1].to_vec()).follows(&list).expect_err("one left out").why,
        Why::ListUnfit
    );
    let mut ended = shop::people();
    ended[0].to = Some(later());
    let without = next(ended);
    let again = without.next(later(), shop::people(), vec![]);
    assert_eq!(again.follows(&without).expect_err("an end taken back").why, Why::ListUnfit);
    let mut renamed = shop::people();
    renamed[0].number = number("i-9");
    assert_eq!(next(renamed).follows(&list).expect_err("another number").why, Why::ListUnfit);
    for (people, why) in [
        (vec![shop::person("i-1", "Ilse Brandt", Role::Instructor, root.public())], Why::ListUnfit),
        (vec![shop::people()[0].clone(), shop::people()[0].clone()], Why::ListUnfit),
        (
            vec![shop::person("i-1", "Ilse\u{200b}Brandt", Role::Instructor, shop::instructor().public())],
            Why::WordsUnfit,
        ),
    ] {
        assert_eq!(next(people).signed(&root).expect_err("unfit").why, why);
    }
    assert_eq!(list.signed(&shop::stranger()).expect_err("not its root").why, Why::RootDiffers);
    let signed = list.signed(&root).expect("signed");
    let other = shop::stranger().public();
    assert_eq!(
        TrustList::read(signed.as_bytes(), Some(&other)).expect_err("another root").why,
        Why::RootDiffers
    );
}

fn credential(slug: &str, nth: u8) -> serde_json::Map<String, serde_json::Value> {
    read_canonical(shop::signed(slug, nth).as_bytes()).expect("canonical")
}

fn id(nth: u8) -> String {
    stepboard::signoff::credential_id([nth; 16])
}

/// A book with a sign-off, another, one assessed anew, one withdrawn and a list after it.
fn book() -> Book {
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
    book.with_people(shop::people(), &shop::root(), &at("05")).expect("a list with the withdrawal")
}

#[test]
fn the_book_tells_how_somebody_stands() {
    let book = book();
    let standing = |slug: &str, on: &str| match book.standing(&number("17"), slug, &when(on)) {
        Standing::Never => "never".to_owned(),
        Standing::Held(one) => format!("held {}", one.id),
        Standing::Expired(one) => format!("expired {}", one.id),
        Standing::Withdrawn(one, withdrawal) => format!("withdrawn {} {}", one.id, withdrawal.at),
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
    let (book, all) = (book(), shop::competencies());
    let root = shop::root().public();
    let text = book.text();
    assert_eq!(Book::open(&text, Some(&root), &all).as_ref(), Ok(&book));
    let lines: Vec<&str> = text.lines().collect();
    let joined = |lines: &[&str]| lines.iter().map(|line| format!("{line}\n")).collect::<String>();
    for place in 0..lines.len() - 1 {
        let mut without = lines.clone();
        without.remove(place);
        let broken = Book::open(&joined(&without), Some(&root), &all).expect_err("one is missing");
        assert_eq!(usize::try_from(broken.record).expect("small"), place + 1, "{broken}");
        let mut swapped = lines.clone();
        swapped.swap(place, place + 1);
        Book::open(&joined(&swapped), Some(&root), &all).expect_err("two are swapped");
        let mut doubled = lines.clone();
        doubled.insert(place, lines[place]);
        Book::open(&joined(&doubled), Some(&root), &all).expect_err("one stands twice");
    }
    // One bit in each of some bytes of every line; the laws of sign-offs try them all.
    const STRIDE: usize = 37;
    for place in (0..text.len()).step_by(STRIDE) {
        let mut bytes = text.clone().into_bytes();
        bytes[place] ^= 1;
        if let Ok(changed) = String::from_utf8(bytes) {
            Book::open(&changed, Some(&root), &all).expect_err("a byte is changed");
        }
    }
    Book::open(text.trim_end(), Some(&root), &all).expect_err("the last line is not ended");
    Book::open(&text, Some(&shop::stranger().public()), &all).expect_err("another shop's root");
    // Cut off at the end it is a book; whoever noted its head sees it.
    let (number, hash) = book.head();
    let shorter = Book::open(&joined(&lines[..lines.len() - 1]), Some(&root), &all).expect("a shorter book");
    assert!(book.holds(number, hash) && !shorter.holds(number, hash));
}

#[test]
fn what_does_not_belong_into_the_book_is_refused_and_leaves_it_as_it_was() {
    let (book, all) = (book(), shop::competencies());
    let before = book.text();
    let later = when("2026-03-06T16:00:00Z");
    let signed = |slug, nth| Act::SignedOff { credential: credential(slug, nth) };
    let again = |nth, old| Act::Reassessed { credential: credential(shop::ORDINARY, nth), replaces: id(old) };
    let withdrawn = |nth| Act::Withdrawn { credential: id(nth), reason: "Why.".to_owned() };
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
    let asked = || Request { at: when("2026-03-11T08:00:00Z"), ..shop::request(&competency, 7) };
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

#[test]
fn every_reason_is_worded() {
    let texts = support::content().texts("en").clone();
    let told = |prefix: &str, slugs: Vec<&'static str>| {
        for slug in slugs {
            assert!(texts.find(&format!("{prefix}.{slug}")).is_some(), "`{prefix}.{slug}` has no text");
        }
    };
    told("verify", Why::ALL.iter().map(|one| one.slug()).collect());
    told("sign", Barred::ALL.iter().map(|one| one.slug()).collect());
    told("book", Fault::ALL.iter().map(|one| one.slug()).collect());
    told("locked", Locked::ALL.iter().map(|one| one.slug()).collect());
}
