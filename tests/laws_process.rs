//! Laws of the run: it finds what the order checker finds, with no code in common; a replay is the run; it never panics.

mod support;

use std::cell::Cell;
use stepboard::process::air::AirLog;
use stepboard::process::defect::{Cause, Defect};
use stepboard::process::run::Run;
use stepboard::rules::sequence::check::check;
use stepboard::rules::sequence::error::OrderError;
use stepboard::rules::sequence::job::{Job, Part};
use stepboard::rules::sequence::plan::Plan;
use stepboard::rules::sheet::Sheet;
use support::content;
use support::works::{hold, told_work};

/// Random works.
const WORKS: u32 = 20_000;

fn works() -> impl proptest::strategy::Strategy<Value = (Job, Plan, Sheet)> {
    let content = content();
    let parts = content.woods.iter().map(Part::of).collect();
    told_work(content.sheets, parts)
}

fn run(job: &Job, plan: &Plan, sheet: &Sheet) -> Run {
    Run::of_plan(job, plan, sheet, &AirLog::default()).expect("everything is told")
}

fn errors(defects: &[Defect]) -> Vec<(usize, OrderError)> {
    let order = defects.iter().filter_map(|defect| match defect.cause {
        Cause::Order(error) => Some((defect.made, error)),
        Cause::Technique(_) => None,
    });
    let mut errors: Vec<(usize, OrderError)> = order.collect();
    errors.sort_unstable();
    errors
}

#[test]
fn a_plan_is_accepted_exactly_when_running_it_makes_no_defect() {
    let (accepted, refused) = (Cell::new(0), Cell::new(0));
    hold(WORKS, &works(), |(job, plan, sheet)| {
        let checked = check(&job, &plan, &sheet);
        assert!(checked.missing.is_empty(), "everything is told: {:?}", checked.missing);
        let found: Vec<(usize, OrderError)> =
            checked.findings.iter().map(|finding| (finding.step, finding.error)).collect();
        let ran = errors(run(&job, &plan, &sheet).defects());
        assert_eq!(ran, found, "the run and the checker");
        let count = if found.is_empty() { &accepted } else { &refused };
        count.set(count.get() + 1);
    });
    assert!(accepted.get() > WORKS / 20, "{} accepted: the law says something", accepted.get());
    assert!(refused.get() > WORKS / 20, "{} refused: the law says something", refused.get());
}
