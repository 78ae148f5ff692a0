//! The trust list, and days.

use super::support::shop::{self, number, when};
use stepboard::signoff::{
    BYTES_MOST, LIST_BYTES_MOST, Person, Role, TrustList, Why, Withdrawal, credential_id, verify,
};

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

/// Withdrawals stay on the list for ever: short reasons, names of sign-offs only, and a limit that is told when signing.
#[test]
fn a_list_has_room_for_many_withdrawals_and_says_when_it_is_full() {
    let root = shop::root();
    let at = when("2026-04-01T08:00:00Z");
    let withdrawal = |nth: u16, reason: &str| {
        let mut random = [0; 16];
        random[..2].copy_from_slice(&nth.to_be_bytes());
        Withdrawal { credential: credential_id(random), at: at.clone(), reason: reason.to_owned() }
    };
    let list = |withdrawn| shop::list().next(at.clone(), shop::people(), withdrawn);
    let longest = "\u{1f3b8}".repeat(200);
    let many = list((0..400).map(|nth| withdrawal(nth, &longest)).collect());
    let text = many.signed(&root).expect("a list larger than a sign-off may be");
    assert!(text.len() > BYTES_MOST, "{}", text.len());
    assert_eq!(TrustList::read(text.as_bytes(), Some(&root.public())).as_ref(), Ok(&many));
    let full = list((0..6_000).map(|nth| withdrawal(nth, &longest)).collect());
    assert_eq!(full.signed(&root).expect_err("too many").why, Why::TooLarge);
    let long = "x".repeat(LIST_BYTES_MOST + 1);
    assert_eq!(TrustList::read(long.as_bytes(), None).expect_err("too large").why, Why::TooLarge);
    let wordy = list(vec![withdrawal(1, &"x".repeat(201))]);
    assert_eq!(wordy.signed(&root).expect_err("a long reason").why, Why::WordsUnfit);
    for name in ["", "urn:uuid:1", "\u{1b}[2J"] {
        let unnamed = Withdrawal { credential: name.to_owned(), ..withdrawal(1, "Why.") };
        assert_eq!(list(vec![unnamed]).signed(&root).expect_err(name).why, Why::ListUnfit);
    }
}
