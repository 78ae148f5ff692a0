//! The verdict on a job as it was told.

use super::coming::{Coming, coming};
use super::cost::{self, Cost};
use super::told::Account;
use super::worked::{self, Worked};
use crate::content::Content;
use crate::process::defect::Cause;
use crate::rules::fault::Lies;
use crate::rules::sequence::check::{Finding, check_here};
use crate::rules::sequence::duty::{Due, duties};
use crate::rules::sequence::error::{Mend, OrderError};
use crate::rules::sequence::operation::{LAID, Operation};
use crate::rules::sequence::plan::{Detail, Plan};
use crate::rules::sequence::variant::Variant;
use crate::rules::sorted::sorted;
use crate::rules::term::{Severity, Stage, Term};
use crate::rules::verdict::RuleId;

/// The rule by which waits kept in too cold or too warm a room are not judged.
pub const OUTSIDE_MODEL: RuleId = RuleId("drying.outside-model");

/// Something that was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// Place of the step, from 0; the number of steps where it was found when the work was handed over.
    pub index: usize,
    /// The operation that is missing, where that is what was found.
    pub left_out: Option<Operation>,
    /// The rule broken.
    pub rule: RuleId,
    /// What it endangers.
    pub severity: Severity,
    /// Slugs of the faults that it makes, the likeliest first.
    pub faults: Vec<&'static str>,
    /// Band where it is made.
    pub made: Stage,
    /// Band where it first shows; `None`: after the work has left the finish room.
    pub shows: Option<Stage>,
    /// What mends it.
    pub mend: Mend,
    /// What it costs.
    pub cost: Cost,
}

/// A departure that is in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Excused {
    /// Place of the step, from 0.
    pub index: usize,
    /// The variant that holds.
    pub variant: Variant,
    /// The error that it would be without it.
    pub error: OrderError,
}

/// The verdict.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Judgement {
    /// Whether the work is accepted, whatever it cost in time; `None`: it cannot be judged.
    pub accepted: Option<bool>,
    /// What was found, in the order of the steps.
    pub found: Vec<Found>,
    /// What is excused.
    pub excused: Vec<Excused>,
    /// What must be seen to beside the order of work.
    pub duties: Vec<Due>,
    /// What would have to be told to judge the rest; the id of [`OUTSIDE_MODEL`] where the air gave no wait to judge by.
    pub missing: Vec<String>,
    /// Hours since the job began, where every step was told.
    pub now: Option<f64>,
    /// What could come next.
    pub coming: Vec<Coming>,
}

/// Judges a job: by the order checker, and by working it, which alone knows what cold air and the gun do.
#[must_use]
pub fn judge(account: &Account, content: &Content) -> Judgement {
    let Account { job, sheet, .. } = account;
    let worked = worked::work(account);
    let plan = &worked.plan;
    let checked = check_here(job, plan, sheet);
    let (duties, unsure) = duties(job, plan, sheet);
    let cost = |faults: &[&str], at, shows| {
        let lies = lies(plan, at, shows);
        lies.map(|lies| cost::of(faults, lies, shows, job, sheet, content)).unwrap_or_default()
    };
    let open = |one: &&Finding| account.handed_over || !unfinished(one, plan);
    let mut found: Vec<Found> = checked.findings.iter().filter(open).map(|one| order(one, cost)).collect();
    found.extend(duties.iter().filter(|due| due.done == Some(false)).map(|due| neglect(due, plan, cost)));
    shown(account, &worked, &mut found, cost);
    found.extend(left_out(account).map(|operation| lacking(operation, plan.steps.len(), cost)));
    let found = sorted(found, |a, b| a.index.cmp(&b.index));
    let outside = worked.waits_outside_model(account).then(|| OUTSIDE_MODEL.0.to_owned());
    let untold = if account.plan.detail == Detail::Every { worked.missing.clone() } else { Vec::new() };
    let missing = [checked.missing, unsure, untold].concat();
    let mut missing = sorted(missing.into_iter().chain(outside).collect(), Ord::cmp);
    missing.dedup();
    // What only departs from this shop's own order harms no work: it is told and does not refuse it.
    let sound = found.iter().all(|one| one.severity == Severity::Time);
    let accepted = if sound && !missing.is_empty() { None } else { Some(sound) };
    let coming = coming(account, &worked, &duties);
    let excused = checked.excused.iter().map(|(variant, error, index)| Excused {
        index: *index,
        variant: *variant,
        error: *error,
    });
    let holds =
        |one: &Excused| !found.iter().any(|bad| bad.index == one.index && bad.rule.0 == one.error.slug());
    let excused =
        sorted(excused.filter(holds).collect(), |a, b| (a.index, a.variant).cmp(&(b.index, b.variant)));
    let now = worked.whole.then(|| worked.run.now().get());
    Judgement { accepted, found, excused, duties, missing, now, coming }
}

/// Where a fault lies that a step of the plan made and that shows in a band.
fn lies(plan: &Plan, at: usize, shows: Option<Stage>) -> Option<Lies> {
    let mut since = plan.steps.iter().skip(at).map(|step| step.operation);
    let made = since.clone().next()?;
    let before = |operation: Operation| shows.is_none_or(|shows| operation.stage() <= shows);
    Some(Lies { made, covered: since.any(|operation| LAID.contains(&operation) && before(operation)) })
}

/// Whether a finding only says that levelling is still to come.
fn unfinished(one: &Finding, plan: &Plan) -> bool {
    let at_clear = plan.steps.get(one.step).is_some_and(|step| step.operation == Operation::Clear);
    one.error == OrderError::Finish && at_clear
}

/// What no finish does without and is missing when the work is handed over: clear where the main steps are listed, and
/// sanding where every step is.
fn left_out(account: &Account) -> impl Iterator<Item = Operation> {
    let asked: &[Operation] = match account.plan.detail {
        Detail::Every => &[Operation::Sand, Operation::Clear],
        Detail::Main => &[Operation::Clear],
        Detail::Some => &[],
    };
    let done = operations(&account.plan);
    let asked = if account.handed_over { asked } else { &[] };
    asked.iter().copied().filter(move |operation| !done.contains(operation))
}

fn lacking(
    operation: Operation,
    index: usize,
    cost: impl Fn(&[&str], usize, Option<Stage>) -> Cost,
) -> Found {
    let made = operation.stage();
    Found {
        index,
        left_out: Some(operation),
        rule: RuleId("order.left-out"),
        severity: Severity::Work,
        faults: Vec::new(),
        made,
        shows: Some(made),
        mend: Mend::AddStep,
        cost: cost(&[], index, Some(made)),
    }
}

/// Adds what working the job brought to light and the order checker cannot see. Where small steps are not listed, only
/// the gun is judged.
fn shown(
    account: &Account,
    worked: &Worked,
    found: &mut Vec<Found>,
    cost: impl Fn(&[&str], usize, Option<Stage>) -> Cost,
) {
    let operations: Vec<Operation> = account.plan.steps.iter().map(|step| step.operation).collect();
    let every = account.plan.detail == Detail::Every;
    for defect in &worked.defects {
        let rule = defect.rule();
        let known = found.iter().any(|one| one.index == defect.made && one.rule == rule);
        let mend = match defect.cause {
            Cause::Order(error) if every => error.known().mend,
            Cause::Order(_) => continue,
            Cause::Technique(_) => Mend::Redo,
        };
        if !known {
            let (made, shows) = (defect.stage_made(&operations), defect.stage_shows(&operations));
            let (severity, faults) = (defect.severity(), defect.faults().to_vec());
            let cost = cost(&faults, defect.made, shows);
            found.push(Found {
                index: defect.made,
                left_out: None,
                rule,
                severity,
                faults,
                made,
                shows,
                mend,
                cost,
            });
        }
    }
}

fn order(one: &Finding, cost: impl Fn(&[&str], usize, Option<Stage>) -> Cost) -> Found {
    Found {
        index: one.step,
        left_out: None,
        rule: one.rule(),
        severity: one.severity(),
        faults: one.faults().to_vec(),
        made: one.made,
        shows: one.shows,
        mend: one.mend(),
        cost: cost(one.faults(), one.step, one.shows),
    }
}

fn neglect(due: &Due, plan: &Plan, cost: impl Fn(&[&str], usize, Option<Stage>) -> Cost) -> Found {
    let made = plan.steps.get(due.step).map_or(Stage::Room, |step| step.operation.stage());
    let (faults, shows) = (due.duty.faults(), due.duty.shows(made));
    Found {
        index: due.step,
        left_out: None,
        rule: due.rule(),
        severity: due.duty.severity(),
        faults: faults.to_vec(),
        made,
        shows,
        mend: due.duty.mend(),
        cost: cost(faults, due.step, shows),
    }
}

/// The operations that were done, each once, in the order of the work.
#[must_use]
pub fn operations(plan: &Plan) -> Vec<Operation> {
    let mut done = Vec::new();
    for step in &plan.steps {
        if !done.contains(&step.operation) {
            done.push(step.operation);
        }
    }
    done
}
