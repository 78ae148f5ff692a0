//! The verdict on a job as it was told.

use super::cost::{self, Cost};
use super::told::Account;
use crate::content::Content;
use crate::rules::sequence::check::{Finding, check_here};
use crate::rules::sequence::duty::{Due, duties};
use crate::rules::sequence::error::{Mend, OrderError};
use crate::rules::sequence::operation::Operation;
use crate::rules::sequence::plan::Plan;
use crate::rules::sequence::variant::Variant;
use crate::rules::sorted::sorted;
use crate::rules::term::{Severity, Stage};
use crate::rules::verdict::RuleId;

/// Something that was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// Place of the step, from 0.
    pub index: usize,
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
    /// Whether the work is accepted; `None`: it cannot be judged.
    pub accepted: Option<bool>,
    /// What was found, in the order of the steps.
    pub found: Vec<Found>,
    /// What is excused.
    pub excused: Vec<Excused>,
    /// What must be seen to beside the order of work.
    pub duties: Vec<Due>,
    /// What would have to be told to judge the rest.
    pub missing: Vec<String>,
}

/// Judges a job.
#[must_use]
pub fn judge(account: &Account, content: &Content) -> Judgement {
    let Account { job, sheet, .. } = account;
    let plan = in_its_air(account);
    let checked = check_here(job, &plan, sheet);
    let (duties, unsure) = duties(job, &plan, sheet);
    let cost = |faults: &[&str], made, shows| cost::of(faults, made, shows, job, sheet, content);
    let mut found: Vec<Found> = checked.findings.iter().map(|one| order(one, cost)).collect();
    found.extend(duties.iter().filter(|due| due.done == Some(false)).map(|due| neglect(due, &plan, cost)));
    let found = sorted(found, |a, b| a.index.cmp(&b.index));
    let missing = sorted([checked.missing, unsure].concat(), Ord::cmp);
    let accepted = if found.is_empty() && !missing.is_empty() { None } else { Some(found.is_empty()) };
    let excused = checked.excused.iter().map(|(variant, error, index)| Excused {
        index: *index,
        variant: *variant,
        error: *error,
    });
    let excused = sorted(excused.collect(), |a, b| (a.index, a.variant).cmp(&(b.index, b.variant)));
    Judgement { accepted, found, excused, duties, missing }
}

fn order(one: &Finding, cost: impl Fn(&[&str], Stage, Option<Stage>) -> Cost) -> Found {
    Found {
        index: one.step,
        rule: one.rule(),
        severity: one.severity(),
        faults: one.faults().to_vec(),
        made: one.made,
        shows: one.shows,
        mend: one.mend(),
        cost: cost(one.faults(), one.made, one.shows),
    }
}

fn neglect(due: &Due, plan: &Plan, cost: impl Fn(&[&str], Stage, Option<Stage>) -> Cost) -> Found {
    let made = plan.steps.get(due.step).map_or(Stage::Room, |step| step.operation.stage());
    let (faults, shows) = (due.duty.faults(), due.duty.shows(made));
    Found {
        index: due.step,
        rule: due.rule(),
        severity: due.duty.severity(),
        faults: faults.to_vec(),
        made,
        shows,
        mend: due.duty.mend(),
        cost: cost(faults, made, shows),
    }
}

/// The plan with the air of the room at each coat that tells none of its own.
fn in_its_air(account: &Account) -> Plan {
    use crate::rules::sequence::operation::COATS;
    use crate::rules::sequence::plan::Told;
    let mut plan = account.plan.clone();
    let mut now = 0.0;
    for step in &mut plan.steps {
        if let Told::Is(hours) = step.after {
            now += hours.get();
        }
        let reading = account.air.iter().rev().find(|reading| reading.from.get() <= now);
        if let Some(reading) = reading.or(account.air.first())
            && COATS.contains(&step.operation)
            && step.climate == Told::Kept
        {
            step.climate = Told::Is(reading.climate);
        }
        if let (Told::Is(coats), Told::Is(hours)) = (step.coats, step.between) {
            now += hours.get() * f64::from(coats.saturating_sub(1));
        }
    }
    plan
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
