//! What may be done next, not before when, and what may not.

use super::told::Account;
use super::worked::Worked;
use crate::process::next::{self, Next};
use crate::quantity::{DUST, HOURS_A_DAY, Hours};
use crate::rules::drying::critical_path::WorkingDay;
use crate::rules::drying::waits::DryTest;
use crate::rules::sequence::check::check_here;
use crate::rules::sequence::duty::{Due, Duty};
use crate::rules::sequence::operation::Operation;
use crate::rules::sequence::plan::{Detail, Plan, Step};
use crate::rules::sheet::Setting;
use crate::rules::sorted::sorted;
use crate::rules::verdict::RuleId;

/// An operation that could come next.
#[derive(Debug, Clone, PartialEq)]
pub struct Coming {
    /// The operation.
    pub operation: Operation,
    /// The part, where it is done to one part only.
    pub part: Option<usize>,
    /// Hours from now; `None`: the room is too cold or too warm to tell.
    pub not_before: Option<f64>,
    /// Day of the job, from 1, and hour of the day, when the shop is at work and the wait is over.
    pub at: Option<(u32, f64)>,
    /// The value of the sheet that states the wait.
    pub waits_for: Option<Setting>,
    /// Tests on the work that must pass as well.
    pub tests: &'static [DryTest],
    /// Rules that it would break even then.
    pub spoils: Vec<RuleId>,
}

impl Coming {
    /// Whether it may be done once its wait is over.
    #[must_use]
    pub fn may(&self) -> bool {
        self.not_before.is_some() && self.spoils.is_empty()
    }
}

/// What could come next on work that is told whole; rags first. Of a schedule that lists its main steps only those are
/// named; where only some are listed, nothing is.
pub(super) fn coming(account: &Account, worked: &Worked, duties: &[Due]) -> Vec<Coming> {
    let plan = &worked.plan;
    if !worked.whole || account.handed_over || plan.detail == Detail::Some {
        return Vec::new();
    }
    let now = worked.run.now().get();
    let rags = duties.iter().any(|due| due.duty == Duty::Rags && due.done != Some(true));
    let away = rags.then(|| Coming {
        operation: Operation::RagsAway,
        part: None,
        not_before: Some(0.0),
        at: moment(account, now),
        waits_for: None,
        tests: &[],
        spoils: Vec::new(),
    });
    let mut open = next::next(&worked.run);
    open.retain(|next| plan.tells(next.operation));
    let usual = outcome(account, plan, open.iter());
    let rest = open.iter().map(|next| {
        let others = open.iter().filter(|other| *other != next);
        let turned = outcome(account, plan, std::iter::once(next).chain(others));
        let broken = turned.into_iter().filter(|found| !usual.contains(found)).map(|(rule, _)| rule);
        look(account, next, broken.collect(), now)
    });
    away.into_iter().chain(rest).collect()
}

/// A step done first, the rest of the job following in its order: `broken` is what the order checker finds then and not
/// when all of it follows in its order.
fn look(account: &Account, next: &Next, broken: Vec<RuleId>, now: f64) -> Coming {
    let spoils = next.spoils.iter().map(|defect| defect.rule()).chain(broken);
    let mut spoils = sorted(spoils.collect(), Ord::cmp);
    spoils.dedup();
    let not_before = next.not_before.map(|hours| if hours.get() > 0.0 { shown(hours) } else { 0.0 });
    let cuts = matches!(next.operation, Operation::Level | Operation::Buff);
    Coming {
        operation: next.operation,
        part: next.part,
        not_before,
        at: not_before.and_then(|hours| moment(account, now + hours)),
        waits_for: next.waits_for,
        tests: if cuts { DryTest::BEFORE_BUFF } else { &[] },
        spoils,
    }
}

/// A wait as it is told: never shorter than it is.
fn shown(wait: Hours) -> f64 {
    libm::ceil((wait.get() - DUST) * TOLD_TO) / TOLD_TO
}

/// Parts of an hour to which waits are told: some seconds.
const TOLD_TO: f64 = 1_000.0;

/// An operation and the part it is done to.
type Where = (Operation, Option<usize>);

/// Rules broken, each with its operation and part, when those steps follow.
fn outcome<'n>(
    account: &Account,
    plan: &Plan,
    then: impl Iterator<Item = &'n Next>,
) -> Vec<(RuleId, Option<Where>)> {
    let mut tried = plan.clone();
    tried.steps.extend(then.map(|next| Step { part: next.part, ..Step::of(next.operation) }));
    let checked = check_here(&account.job, &tried, &account.sheet);
    let place = |step: usize| tried.steps.get(step).map(|step| (step.operation, step.part));
    checked.findings.iter().map(|one| (one.rule(), place(one.step))).collect()
}

/// Day and hour of a moment, moved to the next working hour.
fn moment(account: &Account, hours: f64) -> Option<(u32, f64)> {
    let clock = WorkingDay::of(&account.sheet).begin(account.start + hours, Hours::saturating(0.0));
    let (day, hour) = (libm::floor(clock / HOURS_A_DAY), libm::fmod(clock, HOURS_A_DAY));
    (0..=DAYS_MOST).find(|count| f64::from(*count) >= day).map(|count| (count + 1, hour))
}

/// Days that a job is followed.
const DAYS_MOST: u32 = 2_000;
