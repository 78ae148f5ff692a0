//! A spoiled panel is tested, then its fault, its cause and its remedy are named; tests that tell nothing more count.
//!
//! Faults, tests, causes and remedies are drawn from the content: a fault that can be drawn and cured is asked about.

use super::fault::{FIRST_LOOK, MISDIRECTED, after_rework, rework_of, rework_slip, shown_by, slug};
use super::fault_mend::likeliest_tempts;
use super::panel::{UNLIKE, a_spoiled_panel, fault_tempts};
use super::staged::is_told;
use super::workup_offer::{offer, twins};
use crate::bench::Facts;
use crate::bench::fault::shown;
use crate::card::question::{After, Ask, Astray, Question, Tempt};
use crate::card::{Answer, Diagnosis, Dice, Offered, Weighed, Worth};
use crate::content::{Panel, World};
use crate::rules::fault::{Case, Observation, Test, deciding_probe, first_cause, remedy};
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&PANEL_DIAGNOSIS];

/// What is wrong, why, and what is done? Misconceptions: its look-alike; a test for nothing; a rarer cause.
const PANEL_DIAGNOSIS: Question = Question {
    id: "panel-diagnosis",
    settle: a_case,
    ask: Ask::Diagnose { offer, answer, astray, weigh },
    after: After::is(MISDIRECTED),
};

fn a_case(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let cured = |panel: &&Panel| world.content.fault(&panel.fault).is_some_and(|fault| fault.cure.is_some());
    let panel = a_spoiled_panel(world.content.panels.iter().filter(cured), facts, dice);
    let Some(fault) = panel.and_then(|panel| world.content.fault(&panel.fault)) else { return };
    let told = shown_by(fault, world, dice, |key, answer| is_told(fault, facts, key, answer));
    for (key, answer) in told {
        facts.set_term(key, answer);
    }
}

fn case<'a>(facts: &'a Facts, world: &World<'a>, offered: &Offered) -> Result<Case<'a>, CannotJudge> {
    let fault = world.fault(facts.slug("fault")?)?;
    let mut case = Case {
        faults: offered.faults.iter().filter_map(|id| world.content.fault(id)).collect(),
        fault,
        twins: twins(fault, world),
        seen: Vec::new(),
        tests: Vec::new(),
    };
    for probe in world.content.probes() {
        if probe.key == FIRST_LOOK {
            case.seen.extend(shown(facts, &probe).map(|answer| Observation { probe, answer }));
        } else if offered.tests.iter().any(|test| test == probe.key) {
            case.tests.push(Test { probe, shows: shown(facts, &probe) });
        }
    }
    Ok(case)
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

/// A test more than was needed costs time and spoils nothing.
const FOR_NOTHING: Astray = ("tested-for-nothing", "time-lost");
/// One of two that look the same was named, and nothing was done to tell them apart.
const UNTESTED: Astray = ("named-before-it-was-tested", "");

/// What is wrong with the diagnosis given last: the fault first, then its cause, its remedy, its tests.
fn astray(
    facts: &Facts,
    world: &World<'_>,
    offered: &Offered,
    right: &Diagnosis,
    given: &Diagnosis,
) -> Option<Astray> {
    let done: Vec<&str> = given.tests.iter().map(String::as_str).collect();
    // The tests of the right diagnosis are neither too few nor too many.
    let case = if given.tests == right.tests { None } else { case(facts, world, offered).ok() };
    let alike = case.as_ref().and_then(|case| case.still_alike(&done));
    if alike.is_some_and(|twin| [&right.fault, &twin.id].contains(&&given.fault)) {
        return Some(UNTESTED);
    }
    if given.fault != right.fault {
        return Some((slip(fault_tempts(facts, world), &given.fault).unwrap_or(UNLIKE), ""));
    }
    if given.cause != right.cause {
        let slip = slip(likeliest_tempts(facts, world), &given.cause).unwrap_or("cause-of-another-fault");
        return Some((slip, "fault-repeated"));
    }
    if given.remedy != right.remedy {
        let fault = world.content.fault(&right.fault);
        let done = world.content.faults.iter().find(|one| rework_of(one) == Answer::term(&given.remedy));
        // What no fault is mended by is wrong all the same.
        let (Some(fault), Some(done)) = (fault, done) else { return Some((UNLIKE, "")) };
        return Some((rework_slip(fault, done, world), after_rework(done.severity, fault.severity)));
    }
    case.is_some_and(|case| !case.needless(&done).answer.is_empty()).then_some(FOR_NOTHING)
}

/// The misconception behind something that tempts.
fn slip(tempts: Vec<Tempt>, given: &str) -> Option<&'static str> {
    tempts.into_iter().find(|tempt| tempt.answer == Answer::term(given)).map(|tempt| tempt.slip)
}

/// Of tests that are needless beside each other the dearest is called so first; the rest may then be needed.
fn weigh(
    facts: &Facts,
    world: &World<'_>,
    offered: &Offered,
    right: &Diagnosis,
    given: &Diagnosis,
) -> Vec<Weighed> {
    let Ok(case) = case(facts, world, offered) else { return Vec::new() };
    let done: Vec<&str> = given.tests.iter().map(String::as_str).collect();
    let minutes = |key: &str| {
        let effort = world.content.fact(key).and_then(|fact| fact.probe);
        effort.map_or(0.0, |effort| effort.all_minutes())
    };
    let mut kept = done.clone();
    while let Some(dearest) =
        case.needless(&kept).answer.into_iter().max_by(|a, b| minutes(a).total_cmp(&minutes(b)))
    {
        kept.retain(|key| *key != dearest);
    }
    let worth = |key: &&str| match (facts.maybe_slug(key).is_some(), kept.contains(key)) {
        (false, _) => Worth::Silent,
        (true, true) => Worth::Needed,
        (true, false) => Worth::Needless,
    };
    let lacking = given.fault != right.fault || case.still_alike(&done).is_some();
    let wanted = right.tests.iter().map(String::as_str).filter(|_| lacking);
    let missing = wanted.filter(|key| !done.contains(key)).map(|key| (key, Worth::Missing));
    let weighed = done.iter().map(|key| (*key, worth(key))).chain(missing);
    weighed.map(|(key, worth)| Weighed { test: key.to_owned(), worth }).collect()
}
