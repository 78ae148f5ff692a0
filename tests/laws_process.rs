//! Laws of the run: it finds what the order checker finds, with no code in common; a replay is the run; it never panics.

mod support;

use proptest::prelude::*;
use proptest::sample;
use std::cell::RefCell;
use std::collections::BTreeMap;
use stepboard::process::air::AirLog;
use stepboard::process::defect::{Cause, Defect};
use stepboard::process::run::Run;
use stepboard::rules::sequence::check::check;
use stepboard::rules::sequence::error::OrderError;
use stepboard::rules::sequence::job::{Job, Part};
use stepboard::rules::sequence::plan::Plan;
use stepboard::rules::sequence::variant::Variant;
use stepboard::rules::sheet::Sheet;
use stepboard::rules::term::Term;
use support::any::{hold, sheet};
use support::works::told_work;
use support::{content, inputs};

/// Random works.
const WORKS: u32 = 20_000;

fn works() -> impl Strategy<Value = (Job, Plan, Sheet)> {
    let content = content();
    let parts = content.woods.iter().map(Part::of).collect();
    let sheets = prop_oneof![2 => sample::select(content.sheets), 1 => sheet()];
    told_work(sheets, parts)
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

/// Departures from the order of a shop sheet are no defects of the work.
const OF_THE_SHOP: [OrderError; 3] =
    [OrderError::ShopStain, OrderError::ShopWashcoat, OrderError::ShopProtective];

#[test]
fn a_plan_is_accepted_exactly_when_running_it_makes_no_defect() {
    let (errors_met, variants_met) = (RefCell::new(BTreeMap::new()), RefCell::new(BTreeMap::new()));
    let accepted = RefCell::new(0);
    let inputs = inputs(WORKS);
    hold(inputs, &works(), |(job, plan, sheet)| {
        let checked = check(&job, &plan, &sheet);
        assert!(checked.missing.is_empty(), "everything is told: {:?}", checked.missing);
        let found: Vec<(usize, OrderError)> =
            checked.findings.iter().map(|finding| (finding.step, finding.error)).collect();
        let ran = errors(run(&job, &plan, &sheet).defects());
        assert_eq!(ran, found, "the run and the checker");
        *accepted.borrow_mut() += u32::from(found.is_empty());
        for (_, error) in found {
            *errors_met.borrow_mut().entry(error).or_insert(0_u32) += 1;
        }
        for (variant, ..) in checked.excused {
            *variants_met.borrow_mut().entry(variant).or_insert(0_u32) += 1;
        }
    });
    let accepted = accepted.into_inner();
    assert!(accepted > inputs / 20 && accepted < inputs / 20 * 19, "{accepted} of {inputs} accepted");
    println!("{:?}\n{:?}\naccepted {accepted}", errors_met.borrow(), variants_met.borrow());
    // Fewer works than every change is held against do not meet everything.
    if inputs < WORKS {
        return;
    }
    for error in OrderError::ALL.iter().filter(|error| !OF_THE_SHOP.contains(error)) {
        assert!(errors_met.borrow().contains_key(error), "{} was never made", error.slug());
    }
    for variant in Variant::ALL {
        assert!(variants_met.borrow().contains_key(variant), "{} never held", variant.slug());
    }
}
