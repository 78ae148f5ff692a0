//! Checks a plan: variants first, then the errors that no variant excuses.

use super::error::{Mend, OrderError, Shows};
use super::job::Job;
use super::operation::COATS;
use super::plan::{Plan, Step};
use super::variant::Variant;
use super::view::View;
use super::{clear, colour, filling, finishing, order, preparation, sealing, shop, trim, variant_holds};
use crate::rules::sheet::Sheet;
use crate::rules::sorted::sorted;
use crate::rules::term::{Severity, Stage, Term};
use crate::rules::verdict::{CannotJudge, Judged, RuleId, Ruling};

/// Places of the steps at which an error has its shape, before variants are heard.
pub(super) type Shape = Result<Vec<usize>, CannotJudge>;
/// A rule: the error and its shape in the work of one part.
pub(super) type Rule = (OrderError, fn(&View<'_>) -> Shape);

/// An error found in a plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// The error; its slug is the id of the rule broken.
    pub error: OrderError,
    /// Place of the step in the plan, from 0.
    pub step: usize,
    /// Band where it is made.
    pub made: Stage,
    /// Band where it first shows; `None`: after the work has left the finish room.
    pub shows: Option<Stage>,
    /// The variants that were tested and did not hold.
    pub tested: Vec<Variant>,
}

impl Finding {
    /// The rule broken.
    #[must_use]
    pub fn rule(&self) -> RuleId {
        RuleId(self.error.slug())
    }

    /// What it endangers.
    #[must_use]
    pub const fn severity(&self) -> Severity {
        self.error.known().severity
    }

    /// Slugs of the faults it makes.
    #[must_use]
    pub const fn faults(&self) -> &'static [&'static str] {
        self.error.known().faults
    }

    /// What mends it.
    #[must_use]
    pub const fn mend(&self) -> Mend {
        self.error.known().mend
    }
}

/// What a check found.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Checked {
    /// Errors, in the order of the steps.
    pub findings: Vec<Finding>,
    /// Variants that hold, with the error each excuses and the place of its step.
    pub excused: Vec<(Variant, OrderError, usize)>,
    /// What would have to be told to judge the rest.
    pub missing: Vec<String>,
}

const GROUPS: [&[Rule]; 8] = [
    preparation::RULES,
    trim::RULES,
    colour::RULES,
    filling::RULES,
    sealing::RULES,
    clear::RULES,
    finishing::RULES,
    order::RULES,
];

/// Checks a plan for a job against the trade's rules and the sheet's values.
#[must_use]
pub fn check(job: &Job, plan: &Plan, sheet: &Sheet) -> Checked {
    let rules = GROUPS.iter().flat_map(|group| group.iter());
    run(job, plan, sheet, rules)
}

/// Checks a plan against the order that the shop sheet names, the trade's rules included.
#[must_use]
pub fn check_here(job: &Job, plan: &Plan, sheet: &Sheet) -> Checked {
    let rules = GROUPS.iter().flat_map(|group| group.iter()).chain(shop::RULES);
    run(job, plan, sheet, rules)
}

/// Whether a plan is accepted by the trade's rules. Cannot be judged when what is missing could still make it wrong.
///
/// # Errors
/// [`CannotJudge`] with everything that is missing.
pub fn accepts(job: &Job, plan: &Plan, sheet: &Sheet) -> Judged<bool> {
    verdict(check(job, plan, sheet))
}

/// Whether a plan is accepted and follows the order that the shop sheet names.
///
/// # Errors
/// [`CannotJudge`] with everything that is missing.
pub fn accepts_here(job: &Job, plan: &Plan, sheet: &Sheet) -> Judged<bool> {
    verdict(check_here(job, plan, sheet))
}

fn verdict(checked: Checked) -> Judged<bool> {
    if let Some(worst) = checked.findings.iter().min_by_key(|finding| (finding.severity(), finding.step)) {
        let ruling = Ruling::by(worst.error.slug(), false);
        return Ok(checked.findings.iter().fold(ruling, |ruling, finding| ruling.and(finding.error.slug())));
    }
    if !checked.missing.is_empty() {
        return Err(CannotJudge::lacking(checked.missing));
    }
    let ruling = Ruling::by("order.accepted", true);
    Ok(checked.excused.iter().fold(ruling, |ruling, (variant, _, _)| ruling.and(variant.slug())))
}

fn run<'r>(job: &Job, plan: &Plan, sheet: &Sheet, rules: impl Iterator<Item = &'r Rule>) -> Checked {
    let views: Vec<View<'_>> =
        job.parts.iter().enumerate().map(|(place, part)| View::new(job, place, part, plan, sheet)).collect();
    let mut checked = Checked::default();
    for (error, shape) in rules {
        for view in &views {
            if let Err(cannot) = judge(*error, *shape, view, plan, &mut checked) {
                checked.missing.extend(cannot.missing);
            }
        }
    }
    checked.findings = sorted(checked.findings, |a, b| (a.step, a.error).cmp(&(b.step, b.error)));
    checked.missing = sorted(checked.missing, Ord::cmp);
    checked.missing.dedup();
    checked
}

/// Hears the variants of an error at every step where it has its shape, and reports what none excuses.
fn judge(
    error: OrderError,
    shape: fn(&View<'_>) -> Shape,
    view: &View<'_>,
    plan: &Plan,
    checked: &mut Checked,
) -> Result<(), CannotJudge> {
    let variants = error.known().variants;
    for at in shape(view)? {
        let mut unsure = None;
        let mut excuse = None;
        for variant in variants {
            match variant_holds::holds(*variant, view, at) {
                Ok(true) => excuse = excuse.or(Some(*variant)),
                Ok(false) => {}
                Err(cannot) => unsure = Some(cannot),
            }
        }
        if let Some(variant) = excuse {
            let entry = (variant, error, at);
            if !checked.excused.contains(&entry) {
                checked.excused.push(entry);
            }
        } else if let Some(cannot) = unsure {
            return Err(cannot);
        } else if !checked.findings.iter().any(|known| known.error == error && known.step == at) {
            checked.findings.push(finding(error, at, plan));
        }
    }
    Ok(())
}

fn finding(error: OrderError, at: usize, plan: &Plan) -> Finding {
    let known = error.known();
    let stage = |step: Option<&Step>| step.map(|step| step.operation.stage());
    let own = stage(plan.steps.get(at)).unwrap_or(Stage::Room);
    let next = plan.steps.iter().skip(at + 1).find(|step| COATS.contains(&step.operation));
    let shows = match known.shows {
        Shows::At(stage) => Some(stage),
        Shows::AtOnce => Some(own),
        Shows::NextCoat => Some(stage(next).unwrap_or(own)),
        Shows::Later => None,
    };
    Finding { error, step: at, made: known.made.unwrap_or(own), shows, tested: known.variants.to_vec() }
}
