//! A spoiled panel is tested, then its fault, its cause and its remedy are named; tests that tell nothing more count.
//!
//! Faults, tests, causes and remedies are drawn from the content: a fault that can be drawn and cured is asked about.

use super::fault::{LOOK, mends_tempts, rework_of, shown_by};
use super::fault_mend::likeliest_tempts;
use super::panel::{fault_tempts, show};
use crate::bench::Facts;
use crate::bench::fault::shown;
use crate::card::question::{After, Ask, Astray, Question, Tempt};
use crate::card::{Answer, Diagnosis, Dice, Offered};
use crate::content::{Panel, World};
use crate::rules::fault::{Case, Fault, Observation, Test, deciding_probe, first_cause, remedy, separates};
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&PANEL_DIAGNOSIS];

/// What is wrong, why, and what is done? Misconceptions: its look-alike; a test for nothing; a rarer cause.
const PANEL_DIAGNOSIS: Question = Question {
    id: "panel-diagnosis",
    settle: a_case,
    ask: Ask::Diagnose { offer, answer, astray },
    after: After::is("rework-wrong-size"),
};

/// Things that a card has room for, of each kind.
const OFFERED: usize = 5;
/// Of these, tests about which the fault says nothing.
const DUMB: usize = 2;
/// On one card in so many the test that would decide between twins is not at hand.
const LACKING_ONE_IN: u32 = 4;

fn a_case(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let cured = |panel: &&Panel| world.content.fault(&panel.fault).is_some_and(|fault| fault.cure.is_some());
    let (twins, others): (Vec<&Panel>, Vec<&Panel>) =
        world.content.panels.iter().filter(cured).partition(|panel| !panel.twins.is_empty());
    /// One panel in so many has a fault that looks like another until it is tested.
    const TWINS_ONE_IN: u32 = 4;
    let from = if dice.one_in(TWINS_ONE_IN) { &twins } else { &others };
    let Some(panel) = dice.pick(from) else { return };
    facts.set_term("fault", &panel.fault);
    show(facts, panel, dice);
    let Ok(fault) = world.fault(&panel.fault) else { return };
    for (key, answer) in shown_by(fault, world, dice) {
        facts.set_term(key, answer);
    }
}

fn fault_of<'a>(facts: &Facts, world: &World<'a>) -> Result<&'a Fault, CannotJudge> {
    world.fault(facts.slug("fault")?)
}

/// The faults that look the same on a panel.
fn twins<'a>(fault: &Fault, world: &World<'a>) -> Vec<&'a Fault> {
    let twins = world.content.panel(&fault.id).map(|panel| panel.twins.as_slice()).unwrap_or_default();
    twins.iter().filter_map(|twin| world.content.fault(twin)).collect()
}

fn case<'a>(facts: &'a Facts, world: &World<'a>, offered: &Offered) -> Result<Case<'a>, CannotJudge> {
    let fault = fault_of(facts, world)?;
    let mut case = Case {
        faults: offered.faults.iter().filter_map(|id| world.content.fault(id)).collect(),
        fault,
        twins: twins(fault, world),
        seen: Vec::new(),
        tests: Vec::new(),
    };
    for probe in world.content.probes() {
        let at_hand = offered.tests.iter().any(|test| test == probe.key);
        if at_hand || probe.key == LOOK {
            let shows = shown(facts, &probe);
            if probe.key == LOOK {
                case.seen.extend(shows.map(|answer| Observation { probe, answer }));
            }
            if at_hand {
                case.tests.push(Test { probe, shows });
            }
        }
    }
    Ok(case)
}

/// Tests of which the fault speaks and some of which it says nothing, faults, causes and remedies.
fn offer(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Option<Offered> {
    let fault = fault_of(facts, world).ok()?;
    let lacking = dice.one_in(LACKING_ONE_IN);
    let twins = twins(fault, world);
    let decides = |key: &str| twins.iter().any(|twin| separates(fault, twin, key));
    let (mut telling, mut dumb): (Vec<_>, Vec<_>) = world
        .content
        .probes()
        .into_iter()
        .map(|probe| probe.key)
        .filter(|key| *key != LOOK)
        .partition(|key| facts.maybe_slug(key).is_some());
    dice.shuffle(&mut telling);
    dice.shuffle(&mut dumb);
    telling.retain(|key| !(lacking && decides(key)));
    telling.sort_by_key(|key| !decides(key));
    let mut tests: Vec<&str> = telling.into_iter().take(OFFERED - DUMB).collect();
    tests.extend(dumb.into_iter().take(OFFERED - tests.len()));
    dice.shuffle(&mut tests);
    let cause = first_cause(fault, &[]).ok()?.answer;
    Some(Offered {
        tests: tests.into_iter().map(str::to_owned).collect(),
        faults: among(&fault.id, fault_tempts(facts, world), dice)?,
        causes: among(cause, likeliest_tempts(facts, world), dice)?,
        remedies: among(&slug(rework_of(fault))?, mends_tempts(facts, world), dice)?,
    })
}

fn slug(answer: Answer) -> Option<String> {
    if let Answer::Term(slug) = answer { Some(slug) } else { None }
}

/// What names something of a look-alike comes first among what tempts.
const OF_LOOK_ALIKES: [&str; 3] =
    ["look-alike-not-told-apart", "cause-of-its-look-alike", "rework-of-its-look-alike"];

/// The right one among tempting ones.
fn among(right: &str, mut tempts: Vec<Tempt>, dice: &mut Dice) -> Option<Vec<String>> {
    let mut all = vec![right.to_owned()];
    dice.shuffle(&mut tempts);
    let (alike, others): (Vec<Tempt>, Vec<Tempt>) =
        tempts.into_iter().partition(|tempt| OF_LOOK_ALIKES.contains(&tempt.slip));
    for slug in alike.into_iter().chain(others).filter_map(|tempt| slug(tempt.answer)) {
        if all.len() < OFFERED && !all.contains(&slug) {
            all.push(slug);
        }
    }
    dice.shuffle(&mut all);
    (all.len() >= crate::card::deal::OPTIONS_LEAST).then_some(all)
}

fn answer(facts: &Facts, world: &World<'_>, offered: &Offered) -> Judged<Diagnosis> {
    let case = case(facts, world, offered)?;
    let all: Vec<&str> = offered.tests.iter().map(String::as_str).collect();
    if let Some(twin) = case.still_alike(&all) {
        let decides = deciding_probe(&world.content.pairs, &case.fault.id, &twin.id)?;
        return Err(CannotJudge::without(&decides.answer));
    }
    let tests = case.enough();
    let (cause, cure) = (first_cause(case.fault, &[])?, remedy(case.fault));
    let right = Diagnosis {
        tests: tests.answer.iter().map(|test| (*test).to_owned()).collect(),
        fault: case.fault.id.clone(),
        cause: cause.answer.to_owned(),
        remedy: slug(rework_of(case.fault)).unwrap_or_default(),
    };
    Ok(tests.map(|_| right).resting_on(&cause).resting_on(&cure))
}

fn astray(
    facts: &Facts,
    world: &World<'_>,
    offered: &Offered,
    right: &Diagnosis,
    given: &Diagnosis,
) -> Option<Astray> {
    let slip = slip_of(facts, world, offered, right, given)?;
    Some((slip, if slip == FOR_NOTHING { "time-lost" } else { "" }))
}

/// A test more than was needed costs time and spoils nothing.
const FOR_NOTHING: &str = "tested-for-nothing";

fn slip_of(
    facts: &Facts,
    world: &World<'_>,
    offered: &Offered,
    right: &Diagnosis,
    given: &Diagnosis,
) -> Option<&'static str> {
    let slip = |tempts: Vec<Tempt>, given: &str| {
        tempts.into_iter().find(|tempt| tempt.answer == Answer::term(given)).map(|tempt| tempt.slip)
    };
    if given.fault != right.fault {
        return Some(slip(fault_tempts(facts, world), &given.fault).unwrap_or("does-not-fit-what-is-seen"));
    }
    let done: Vec<&str> = given.tests.iter().map(String::as_str).collect();
    // The tests of the right diagnosis are neither too few nor too many.
    let case = if given.tests == right.tests { None } else { case(facts, world, offered).ok() };
    if case.as_ref().is_some_and(|case| case.still_alike(&done).is_some()) {
        return Some("named-before-it-was-tested");
    }
    if given.cause != right.cause {
        return Some(slip(likeliest_tempts(facts, world), &given.cause).unwrap_or("cause-of-another-fault"));
    }
    if given.remedy != right.remedy {
        return Some(slip(mends_tempts(facts, world), &given.remedy).unwrap_or("rework-of-another-fault"));
    }
    case.is_some_and(|case| !case.needless(&done).answer.is_empty()).then_some(FOR_NOTHING)
}
