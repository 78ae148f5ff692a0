//! What may be signed, and by whom.

use super::support::shop::{self, number, when};
use stepboard::content::{OnFile, Profile};
use stepboard::learn::mastery::Call;
use stepboard::signoff::{
    Barred, Demonstration, Draft, Knowledge, NotSigned, Request, Why, read_canonical, verify,
};

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
    let (at, until) = (when("2026-01-05T07:59:59Z"), when("2028-01-05T07:59:59Z"));
    let early = Request { at, until, ..shop::request(&competency, 1) };
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
    blank.observed[0].told.narrative = " ".to_owned();
    let not = Draft::new(blank, &shop::list(), &shop::assessor().public()).expect_err("nothing is told");
    assert_eq!(not.barred, [Barred::Unfit]);
    assert_eq!(not.refusal.expect("what").why, Why::WordsUnfit);
    let ended = Request { until: when("2026-03-02T15:04:05Z"), ..shop::request(&competency, 1) };
    assert_eq!(bars(ended), [Barred::Unfit]);
}

#[test]
fn exactly_the_criteria_of_the_competency_are_judged() {
    let competency = shop::competency(shop::SAFETY);
    let changed = |change: &dyn Fn(&mut Request<'_>)| {
        let mut request = shop::request(&competency, 1);
        change(&mut request);
        bars(request)
    };
    assert_eq!(changed(&|one| one.criteria.reverse()), []);
    assert_eq!(changed(&|one| drop(one.criteria.pop())), [Barred::CriterionNotMet]);
    assert_eq!(changed(&|one| one.criteria[0] = one.criteria[1].clone()), [Barred::CriterionNotMet]);
    assert_eq!(changed(&|one| one.criteria.push(one.criteria[0].clone())), [Barred::CriterionNotMet]);
    assert_eq!(changed(&|one| one.criteria[0].id = "levelled-1".to_owned()), [Barred::CriterionNotMet]);
    let mut request = shop::request(&competency, 1);
    let told: Vec<String> = request.criteria.iter().map(|one| one.text.clone()).collect();
    request.criteria.reverse();
    let draft = Draft::new(request, &shop::list(), &shop::assessor().public()).expect("nothing bars it");
    assert_eq!(draft.credential().criteria, told, "in the order of the competency");
}

/// Demonstrations and days as `content/competencies.toml` asks for: four on three days.
#[test]
fn enough_is_shown_on_enough_days() {
    let competency = shop::competency(shop::ORDINARY);
    assert_eq!((competency.demonstrations, competency.days), (4, 3));
    let on = |days: &[&str]| {
        let mut request = shop::request(&competency, 1);
        let one = request.observed[0].clone();
        request.observed =
            days.iter().map(|day| Demonstration { on: shop::date(day), ..one.clone() }).collect();
        bars(request)
    };
    assert_eq!(on(&["2026-02-10", "2026-02-10", "2026-02-11", "2026-03-02"]), []);
    for days in [
        &["2026-02-10", "2026-02-11", "2026-03-02"][..],
        &["2026-02-10", "2026-02-10", "2026-02-11", "2026-02-11"],
        &["2026-02-10", "2026-02-11", "2026-02-12", "2026-03-03"],
    ] {
        assert_eq!(on(days), [Barred::TooFewShown], "{days:?}");
    }
    let draft =
        Draft::new(shop::request(&competency, 1), &shop::list(), &shop::assessor().public()).expect("good");
    assert_eq!(draft.credential().evidence[1].name, "2026-02-11: Demonstration 1");
}

/// 29 CFR 1910.134(e)(1): a medical clearance; (f)(2): a fit test, at least yearly, here of 12 January.
#[test]
fn what_must_be_on_file_is_dated_and_in_force() {
    let competency = shop::competency(shop::SAFETY);
    let with = |what: OnFile, on: &str, until: &str| {
        let mut request = shop::request(&competency, 1);
        let one = request.on_file.iter_mut().find(|one| one.what == what).expect("it is on file");
        (one.on, one.until) = (shop::date(on), shop::date(until));
        bars(request)
    };
    let (clearance, test) = (OnFile::MedicalClearance, OnFile::FitTest);
    for (what, on, until, expected) in [
        (clearance, "2020-01-12", "2026-03-03", vec![]),
        (clearance, "2020-01-12", "2026-03-02", vec![Barred::NotOnFile]),
        (clearance, "2026-03-03", "2027-03-03", vec![Barred::NotOnFile]),
        (test, "2025-03-03", "2026-03-03", vec![]),
        (test, "2025-03-02", "2030-03-02", vec![Barred::NotOnFile]),
        (test, "2025-03-03", "2026-03-02", vec![Barred::NotOnFile]),
    ] {
        assert_eq!(with(what, on, until), expected, "{what:?} of {on} until {until}");
    }
    let none = Request { on_file: vec![], ..shop::request(&competency, 1) };
    assert_eq!(bars(none), [Barred::NotOnFile]);
    let ordinary = shop::competency(shop::ORDINARY);
    assert_eq!(bars(Request { on_file: vec![], ..shop::request(&ordinary, 1) }), []);
}

#[test]
fn a_sign_off_runs_no_longer_than_its_competency_lets_it() {
    let competency = shop::competency(shop::SAFETY);
    assert_eq!(competency.expires_months, 12, "29 CFR 1910.134(k)(5): trained anew each year");
    let until = |text: &str| bars(Request { until: when(text), ..shop::request(&competency, 1) });
    assert_eq!(until("2027-03-02T15:04:05Z"), []);
    assert_eq!(until("2027-03-02T15:04:06Z"), [Barred::ValidTooLong]);
}

/// The date of a shop is at most one day from that of universal time.
#[test]
fn the_day_of_signing_is_that_of_its_moment() {
    let competency = shop::competency(shop::ORDINARY);
    let today = |day: &str| bars(Request { today: shop::date(day), ..shop::request(&competency, 1) });
    assert_eq!((today("2026-03-01"), today("2026-03-03")), (vec![], vec![]));
    assert_eq!((today("2026-02-28"), today("2026-03-04")), (vec![Barred::Unfit], vec![Barred::Unfit]));
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

/// `needs` and `needs_knowledge` of `content/competencies.toml`.
#[test]
fn what_is_signed_for_before_stands_signed_and_what_is_known_before_is_shown() {
    let competency = shop::competency("buffed");
    assert_eq!(competency.needs, ["levelled", "room-safe"]);
    let held = |slugs: &[&str]| {
        let held = slugs.iter().map(|slug| (*slug).to_owned()).collect();
        bars(Request { held, ..shop::request(&competency, 1) })
    };
    assert_eq!(held(&["room-safe", "mask-worn", "levelled"]), []);
    for slugs in [&["levelled"][..], &["room-safe"], &[], &["buffed"]] {
        assert_eq!(held(slugs), [Barred::NeedsMissing], "{slugs:?}");
    }
    // To know a thing is not to have it signed.
    let known = competency.needs.clone();
    assert_eq!(
        bars(Request { held: vec![], known, ..shop::request(&competency, 1) }),
        [Barred::NeedsMissing]
    );
    let competency = shop::competency("plan-kept");
    assert_eq!(competency.needs_knowledge, ["wood-ready"]);
    let with = |known: &[&str], held: &[&str]| {
        let [known, held] = [known, held].map(|slugs| slugs.iter().map(|slug| (*slug).to_owned()).collect());
        bars(Request { known, held, ..shop::request(&competency, 1) })
    };
    assert_eq!(with(&[], &[]), [Barred::NeedsKnowledge]);
    assert_eq!(with(&["air-read"], &["air-read"]), [Barred::NeedsKnowledge]);
    assert_eq!((with(&["wood-ready"], &[]), with(&[], &["wood-ready"])), (vec![], vec![]));
}

#[test]
fn nobody_signs_while_assessors_disagree() {
    let competency = shop::competency(shop::ORDINARY);
    assert_eq!(bars(Request { unsettled: 1, ..shop::request(&competency, 1) }), [Barred::Unsettled]);
}
