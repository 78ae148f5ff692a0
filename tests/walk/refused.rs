//! What is refused, with its words, and a kept walk that cannot be walked.

use crate::damp::{air, in_air};
use crate::steps::{begin, does, go, rest, up_to_work, wait, work};
use crate::support::content;
use std::collections::BTreeSet;
use stepboard::content::{Ask, Content, Texts};
use stepboard::rules::drying::waits::DryTest;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::term::Term;
use stepboard::walk::decision::{Decision, Offer, Parts, Wait};
use stepboard::walk::saved::NotKept;
use stepboard::walk::{Impossible, Lapse, RoomAct, Saved, Walk, Why};

fn refused(walk: &Walk, content: &Content, decision: Decision) -> Impossible {
    let mut tried = walk.clone();
    let no = tried.decide(decision.clone(), content).expect_err("it cannot be done");
    assert_eq!(&tried, walk, "nothing is changed");
    assert_eq!(no.what, decision);
    *no
}

fn why(walk: &Walk, content: &Content, operation: Op) -> Why {
    refused(walk, content, work(walk, content, operation, &[], &[])).why
}

#[test]
fn an_operation_that_has_nothing_to_act_on_is_refused() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let bare = [
        (Op::WipeFiller, Why::NoFiller),
        (Op::SandFiller, Why::NoFiller),
        (Op::Unmask, Why::NoMask),
        (Op::Level, Why::NoFilm),
        (Op::Scuff, Why::NoFilm),
        (Op::Rework, Why::NoFilm),
        (Op::Buff, Why::NoClear),
        (Op::SandBack, Why::NoStain),
        (Op::Scrape, Why::NoTrim),
    ];
    for (operation, wanted) in bare {
        assert_eq!(why(&walk, &content, operation), wanted, "{operation:?}");
    }
    let seal = up_to_work(&mut walk, &content, Op::Seal);
    go(&mut walk, [Decision::Work(seal)], &content);
    for operation in [Op::Sand, Op::Damp, Op::GlueCheck] {
        assert_eq!(why(&walk, &content, operation), Why::FilmOverWood, "{operation:?}");
    }
}

#[test]
fn what_is_done_already_or_not_yet_is_refused() {
    let content = content();
    let mut filled = begin(&content, "shaded-lute");
    let wipe = Decision::Work(up_to_work(&mut filled, &content, Op::WipeFiller));
    go(&mut filled, [wipe.clone()], &content);
    assert_eq!(refused(&filled, &content, wipe).why, Why::FillerWiped);
    // Bound, and no colour lies on it yet.
    assert_eq!(why(&begin(&content, "shaded-lute"), &content, Op::Scrape), Why::NothingOnTrim);
    let mut over = begin(&content, "plain-plate");
    let all = rest(&over, &content);
    go(&mut over, all, &content);
    for decision in [wait(1.0), Decision::HandOver, work(&over, &content, Op::Buff, &[], &[])] {
        assert_eq!(refused(&over, &content, decision).why, Why::Over);
    }
}

#[test]
fn no_wait_and_no_work_goes_beyond_the_year() {
    /// Hours of sixty days, the longest wait in one go, and how often they go into the 360 days of a walk.
    const SIXTY_DAYS: f64 = 60.0 * 24.0;
    const TIMES: usize = 5;
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    go(&mut walk, (0..TIMES).map(|_| wait(SIXTY_DAYS)), &content);
    assert_eq!(refused(&walk, &content, wait(SIXTY_DAYS)).why, Why::YearOver);
    // To the afternoon of the last day, and sanding would end on the day after.
    go(&mut walk, [wait(SIXTY_DAYS - 24.0)], &content);
    assert_eq!(refused(&walk, &content, Decision::Wait(Wait::Morning)).why, Why::YearOver);
}

/// A film in a room that is far too cold: solvent hardly leaves below 10 °C (row se-19 of `sequence-errors.csv`), and the model
/// lets no wait end there.
#[test]
fn a_film_that_never_dries_is_not_waited_for() {
    let content = content();
    let mut walk = in_air(&content, vec![air(1, 4.0, 45.0)]);
    does(&mut walk, &content, Op::Seal);
    for test in DryTest::ALL {
        assert_eq!(
            refused(&walk, &content, Decision::Wait(Wait::Until(*test))).why,
            Why::NeverReady,
            "{test:?}"
        );
    }
}

#[test]
fn the_shop_is_closed_at_night_and_too_short_a_day_says_from_when() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    go(&mut walk, [wait(8.0)], &content);
    // Sanding takes two hours, the day ends at 17:00: content/settings.toml.
    let no = refused(&walk, &content, work(&walk, &content, Op::Sand, &[], &[]));
    assert_eq!((no.why, no.when), (Why::DayTooShort, Some(32.0)));
    go(&mut walk, [wait(4.0)], &content);
    let no = refused(&walk, &content, work(&walk, &content, Op::CleanOff, &[], &[]));
    assert_eq!((no.why, no.when), (Why::Closed, Some(32.0)));
    go(&mut walk, [Decision::Wait(Wait::Morning)], &content);
    assert_eq!(walk.clock(), 32.0);
    does(&mut walk, &content, Op::Sand);
}

#[test]
fn values_are_held_to_what_is_at_hand() {
    let content = content();
    let walk = begin(&content, "plain-plate");
    let sand =
        |numbers: &[(Ask, f64)], picks: &[(&str, &str)]| work(&walk, &content, Op::Sand, numbers, picks);
    let no = refused(&walk, &content, sand(&[(Ask::LastGrit, 5000.0)], &[]));
    assert_eq!((no.why, no.key.as_deref()), (Why::UnknownValue, Some("last-grit")));
    assert_eq!(no.allowed, Some((120.0, 600.0)));
    assert_eq!(refused(&walk, &content, sand(&[(Ask::WetFilm, 100.0)], &[])).why, Why::UnknownValue);
    assert_eq!(refused(&walk, &content, sand(&[], &[("strokes", "up-hill")])).why, Why::UnknownValue);
    let Decision::Work(mut sanding) = sand(&[], &[]) else { unreachable!() };
    sanding.picks.remove("ladder");
    let no = refused(&walk, &content, Decision::Work(sanding.clone()));
    assert_eq!((no.why, no.key.as_deref()), (Why::Unchosen, Some("ladder")));
    for (parts, wanted) in
        [(vec![], Why::NoPart), (vec![1], Why::UnknownPart), (vec![0, 0], Why::UnknownPart)]
    {
        sanding.parts = parts;
        assert_eq!(refused(&walk, &content, Decision::Work(sanding.clone())).why, wanted);
    }
    let others = [
        (Decision::Wait(Wait::Until(DryTest::Smell)), Why::NothingToTest),
        (wait(0.0), Why::WaitSpan),
        (Decision::Strip(Parts { parts: vec![0] }), Why::NothingToStrip),
        (Decision::Room(vec![]), Why::NoDuty),
        (Decision::Room(vec![RoomAct::GaugeRead]), Why::FanStill),
        (Decision::Room(vec![RoomAct::RagsAway]), Why::NoRags),
        (Decision::Room(vec![RoomAct::GunCleaned]), Why::GunClean),
        (Decision::Offer(Offer { day: 7 }), Why::DaySpan),
        (Decision::HandOver, Why::NothingDone),
    ];
    for (decision, wanted) in others {
        assert_eq!(refused(&walk, &content, decision).why, wanted);
    }
}

#[test]
fn whatever_is_said_has_its_words() {
    let content = content();
    let texts = content.texts("en");
    let said = |key: String| assert!(texts.find(&key).is_some(), "text `{key}` is missing");
    for lapse in Lapse::ALL {
        said(format!("walk.lapse.{}", lapse.slug()));
        assert!(content.rule(lapse.rule().0).is_some(), "{}", lapse.slug());
        assert!(content.cautions.iter().any(|caution| caution.id == lapse.caution()), "{}", lapse.slug());
        assert_eq!(content.rule(lapse.rule().0).map(|rule| rule.severity), Some(lapse.severity()));
    }
    for duty in RoomAct::ALL {
        said(format!("walk.room.{}", duty.slug()));
    }
    for not in ["walk", "sheet", "wood", "too-long", "decision"] {
        said(format!("walk.refused.{not}"));
    }
}

/// Each refusal names the decision, says why by a reason of its own, and then what is done now: three parts, whole sentences.
#[test]
fn a_refusal_says_what_why_and_what_now() {
    let content = content();
    content.texts.keys().for_each(|language| has_three_parts(content.texts(language)));
}

fn has_three_parts(texts: &Texts) {
    let said = |part: &str, why: &Why| {
        let key = format!("walk.{part}.{}", why.slug());
        let text = texts.find(&key).unwrap_or_else(|| panic!("text `{key}` is missing"));
        let starts = text.chars().next().is_some_and(char::is_uppercase);
        assert!(starts && text.ends_with('.') && text.len() > 3, "{key}: `{text}`");
        text.to_owned()
    };
    let mut reasons = BTreeSet::new();
    for why in Why::ALL {
        let (reason, now) = (said("why", why), said("now", why));
        assert_ne!(reason, now, "{why:?}");
        assert!(reasons.insert(reason), "{why:?}: its reason is another one's");
    }
    let what = texts.find("app.walk.cannot").expect("what cannot be done");
    assert!(what.contains("{what}"), "{what}");
    // Whatever can be refused is a decision that has a name.
    let task = ["strip", "wait.morning", "wait.for", "wait.until", "dressed", "offer-day", "hand-over"]
        .map(|task| format!("app.walk.{task}"));
    let work = Op::ALL.iter().filter(|op| **op != Op::RagsAway).map(|op| format!("term.{}", op.slug()));
    for key in work.chain(task) {
        assert!(texts.find(&key).is_some(), "text `{key}` is missing");
    }
}

#[test]
fn a_kept_walk_that_cannot_be_walked_says_what_and_where() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    does(&mut walk, &content, Op::Sand);
    let kept = walk.saved();
    let place = |saved: &Saved| saved.replay(&content).expect_err("refused").place();
    assert_eq!(place(&Saved { walk: "no-such".to_owned(), ..kept.clone() }), "walk");
    let mut other = kept.clone();
    "0000".clone_into(&mut other.sheet.hash);
    assert_eq!(place(&other), "sheet");
    let mut late = kept.clone();
    late.decisions.push(work(&walk, &content, Op::Level, &[], &[]));
    let refused = late.replay(&content).expect_err("refused");
    assert_eq!(refused.place(), "decisions.1");
    assert!(matches!(refused, NotKept::Decision(1, no) if no.why == Why::NoFilm));
    let text = serde_json::to_string(&kept).expect("plain data").replacen("\"mode\"", "\"made\"", 1);
    assert!(serde_json::from_str::<Saved>(&text).is_err(), "an unknown member is refused");
}
