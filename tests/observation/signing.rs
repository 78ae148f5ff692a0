//! From what was watched to what is signed.

use super::support::log::date;
use super::support::shop;
use super::support::watch::{ILSE, TOMAS, Watch};
use super::{ask_after, levelled};
use stepboard::content::{Competency, OnFile};
use stepboard::record::Event;
use stepboard::record::Judged::NotYet;
use stepboard::signoff::{Barred, Draft, Request, Watched};

/// A request of 2 March 2026, with its watched part from the journal instead: of 2 March 2027.
fn request<'a>(competency: &'a Competency, events: &[Event]) -> Request<'a> {
    let today = date(60);
    let content = super::support::content();
    let shown = ask_after(events, competency, None, today);
    let Watched { criteria, observed, unsettled, on_file } =
        Watched::of(&shown, competency, content.texts("en"));
    let (at, until) = (shop::when("2027-03-02T15:04:05Z"), shop::when("2027-12-02T15:04:05Z"));
    Request { criteria, observed, unsettled, on_file, at, until, today, ..shop::request(competency, 1) }
}

fn draft(request: Request<'_>) -> Result<Draft, Vec<Barred>> {
    Draft::new(request, &shop::list(), &shop::assessor().public()).map_err(|not| not.barred)
}

#[test]
fn what_was_shown_can_be_signed_and_stands_there_in_words() {
    let competency = levelled();
    let mut watch = Watch::new("a", ILSE);
    let mut noted = watch.made(&competency, "o0", 30, &[("levelled-2", NotYet)]);
    noted.note = "Blocks kept flat".to_owned();
    noted.paper = true;
    watch.put(noted);
    for (nth, day) in [30, 40, 41].into_iter().enumerate() {
        assert_eq!(
            draft(request(&competency, &watch.events)).expect_err("too few"),
            [(nth == 0).then_some(Barred::CriterionNotMet), Some(Barred::TooFewShown)]
                .into_iter()
                .flatten()
                .collect::<Vec<_>>()
        );
        watch.saw(&competency, &format!("o{}", nth + 1), day, &[]);
    }
    let signed = draft(request(&competency, &watch.events)).expect("nothing bars it");
    let told: Vec<(&str, &str)> = signed.credential().evidence[1..]
        .iter()
        .map(|one| (one.name.as_str(), one.narrative.as_str()))
        .collect();
    assert_eq!(told.len(), 4);
    assert_eq!(
        told[0],
        (
            "2027-01-31: Ticket 204, back and sides",
            "Done alone; 5 of 6 criteria met, none of the critical ones failed. Written on paper that day. \
             Watched by Assessor i-1 (number i-1): Blocks kept flat"
        )
    );
    assert_eq!(
        told[3].1,
        "Done alone; 6 of 6 criteria met, none of the critical ones failed. Watched by Assessor i-1 (number i-1)."
    );
    assert_eq!(signed.credential().criteria.len(), 6);
}

#[test]
fn a_failed_one_is_not_signed_and_a_disagreement_bars_signing() {
    let competency = levelled();
    let (mut ilse, mut tomas) = (Watch::new("a", ILSE), Watch::new("b", TOMAS));
    for (nth, day) in (30..33).enumerate() {
        ilse.saw(&competency, &format!("o{nth}"), day, &[]);
    }
    ilse.saw(&competency, "o5", 40, &[("levelled-4", NotYet)]);
    let barred = draft(request(&competency, &ilse.events)).expect_err("three and a failed one");
    assert_eq!(barred, [Barred::TooFewShown]);
    ilse.saw(&competency, "o6", 41, &[]);
    tomas.saw(&competency, "o7", 42, &[]);
    ilse.saw(&competency, "o7", 42, &[("levelled-4", NotYet)]);
    let all: Vec<Event> = ilse.events.iter().chain(&tomas.events).cloned().collect();
    assert_eq!(draft(request(&competency, &all)).expect_err("to be talked over"), [Barred::Unsettled]);
    assert!(draft(request(&competency, &ilse.events)).is_ok());
}

#[test]
fn papers_come_from_the_journal_and_stand_on_no_sign_off() {
    let competency = shop::competency("mask-worn");
    let mut watch = Watch::new("a", ILSE);
    for nth in 0..competency.demonstrations {
        watch.saw(&competency, &format!("o{nth}"), 30 + nth, &[]);
    }
    watch.filed(OnFile::MedicalClearance, 10, 800);
    assert_eq!(draft(request(&competency, &watch.events)).expect_err("no fit test"), [Barred::NotOnFile]);
    watch.filed(OnFile::FitTest, 10, 800);
    let text = draft(request(&competency, &watch.events)).expect("nothing bars it").text().expect("text");
    assert!(!text.contains("fit-test") && !text.contains("2027-01-11"), "{text}");
}
