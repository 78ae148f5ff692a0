//! What may be signed, and by whom.

use super::support::shop::{self, number, when};
use stepboard::content::Profile;
use stepboard::learn::mastery::Call;
use stepboard::signoff::{Barred, Draft, Knowledge, NotSigned, Request, Why, read_canonical, verify};

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
