//! Laws of the order checker over many random plans: it never panics, it always says the same, and longer waits never make
//! a plan worse unless a window closes.

mod support;

use std::cell::Cell;
use stepboard::quantity::Hours;
use stepboard::rules::sequence::check::{Checked, accepts, accepts_here, check, check_here};
use stepboard::rules::sequence::duty::duties;
use stepboard::rules::sequence::error::OrderError;
use stepboard::rules::sequence::job::{Job, Part};
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::sequence::plan::{Plan, Step, Told};
use stepboard::rules::sequence::route;
use stepboard::rules::sheet::Sheet;
use support::any::{USUAL, hold};
use support::works::{job, plan, told_work};
use support::{content, inputs};

/// Errors that a longer wait can only cure.
const CURED_BY_WAITING: [OrderError; 6] = [
    OrderError::FillerNotDry,
    OrderError::StainNotDry,
    OrderError::RecoatTooSoon,
    OrderError::MaskPulledWet,
    OrderError::LevelledTooSoon,
    OrderError::PackedTooSoon,
];

fn each(law: impl Fn(&Job, &Plan, &Sheet)) {
    let content = content();
    let parts: Vec<Part> = content.woods.iter().map(Part::of).collect();
    let strategy = (job(parts), plan(), proptest::sample::select(content.sheets.clone()));
    hold(inputs(USUAL), &strategy, |(job, plan, sheet)| law(&job, &plan, &sheet));
}

/// Works of which everything is told, many of them near a route.
fn each_told(law: impl Fn(&Job, &Plan, &Sheet)) {
    let content = content();
    let parts: Vec<Part> = content.woods.iter().map(Part::of).collect();
    let strategy = told_work(proptest::sample::select(content.sheets.clone()), parts);
    hold(inputs(USUAL), &strategy, |(job, plan, sheet)| law(&job, &plan, &sheet));
}

fn longer(plan: &Plan) -> Plan {
    let more = |told: Told<Hours>| match told {
        Told::Is(hours) => Told::Is(Hours::new((hours.get() * 1.5 + 1.0).min(Hours::MAX)).expect("in range")),
        other => other,
    };
    let mut plan = plan.clone();
    for step in &mut plan.steps {
        (step.after, step.between) = (more(step.after), more(step.between));
    }
    plan
}

fn timing(checked: &Checked) -> Vec<(OrderError, usize)> {
    let found = checked.findings.iter().map(|finding| (finding.error, finding.step));
    found.filter(|(error, _)| CURED_BY_WAITING.contains(error)).collect()
}

#[test]
fn no_plan_panics_and_the_same_plan_gets_the_same_verdict() {
    each(|job, plan, sheet| {
        let (trade, here) = (check(job, plan, sheet), check_here(job, plan, sheet));
        assert_eq!(trade, check(job, plan, sheet));
        assert!(
            trade.findings.iter().all(|finding| here.findings.contains(finding)),
            "the shop adds, never takes"
        );
        for finding in &here.findings {
            assert!(finding.step < plan.steps.len());
        }
        let (due, missing) = duties(job, plan, sheet);
        assert_eq!((&due, &missing), (&duties(job, plan, sheet).0, &duties(job, plan, sheet).1));
        assert!(due.iter().all(|one| one.step < plan.steps.len()));
        assert!(due.windows(2).all(|pair| (pair[0].step, pair[0].duty) <= (pair[1].step, pair[1].duty)));
        match (accepts(job, plan, sheet), accepts_here(job, plan, sheet)) {
            (Ok(trade), Ok(here)) => assert!(trade.answer || !here.answer),
            (Err(cannot), _) | (_, Err(cannot)) => assert!(!cannot.missing.is_empty()),
        }
    });
}

#[test]
fn a_longer_wait_adds_no_timing_error() {
    let cured = Cell::new(0);
    each_told(|job, plan, sheet| {
        let before = check(job, plan, sheet);
        let was = timing(&before);
        let is = timing(&check(job, &longer(plan), sheet));
        assert!(is.iter().all(|error| was.contains(error)), "{is:?} after {was:?}");
        cured.set(cured.get() + u32::from(is.len() < was.len()));
    });
    let cured = cured.get();
    println!("{cured} plans got better");
    assert!(cured >= inputs(USUAL) / 100, "{cured} plans got better: the law says something");
}

/// Windows that a longer wait can close: the wipe of the filler, the life of a mix, the recoat of a film that does not melt.
fn windowless(step: &Step) -> bool {
    step.operation != Operation::WipeFiller
}

#[test]
fn an_accepted_plan_stays_accepted_when_every_wait_grows() {
    let accepted = Cell::new(0);
    each(|job, _, sheet| {
        let mut job = job.clone();
        job.melts = true;
        for part in &mut job.parts {
            part.moisture = Told::Kept;
        }
        let mut plan = route::plan(&job, sheet);
        for (place, step) in plan.steps.iter_mut().enumerate().filter(|(_, step)| windowless(step)) {
            // Waits from minutes to weeks, so that some are too short.
            let hours = f64::from(u32::try_from(place * 97 % 13).expect("small")) * 31.0;
            step.after = Told::Is(Hours::new(hours).expect("in range"));
        }
        if accepts(&job, &plan, sheet).is_ok_and(|ruling| ruling.answer) {
            accepted.set(accepted.get() + 1);
            let ruling = accepts(&job, &longer(&plan), sheet).expect("nothing was hidden");
            assert!(ruling.answer, "{:?}", ruling.rules);
        }
    });
    let accepted = accepted.get();
    assert!(accepted > inputs(USUAL) / 100, "{accepted} plans were accepted: the law says something");
}

#[test]
fn the_route_of_every_job_is_accepted_on_every_sheet() {
    each(|job, _, sheet| {
        let mut job = job.clone();
        (job.coating, job.melts) = (sheet.coating(), Job::melting(sheet.coating()));
        for part in &mut job.parts {
            part.moisture = Told::Kept;
        }
        let plan = route::plan(&job, sheet);
        let checked = check_here(&job, &plan, sheet);
        assert!(checked.findings.is_empty(), "{:?} in {:?}", checked.findings, route::order(&job, sheet));
        assert!(checked.missing.is_empty());
    });
}
