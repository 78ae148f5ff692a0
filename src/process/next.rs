//! What may be done next, and not before when.

use super::act::Act;
use super::defect::Defect;
use super::run::Run;
use crate::quantity::Hours;
use crate::rules::sequence::operation::Operation;
use crate::rules::sequence::route;
use crate::rules::sheet::Setting;

/// An operation that could come next.
#[derive(Debug, Clone, PartialEq)]
pub struct Next {
    /// The operation.
    pub operation: Operation,
    /// The part, where it is done to one part only.
    pub part: Option<usize>,
    /// Hours from now until the waits that bear on it are over; `None`: the room is too cold or too warm to tell.
    pub not_before: Option<Hours>,
    /// The value of the sheet that states the longest of them.
    pub waits_for: Option<Setting>,
    /// What would go wrong even then.
    pub spoils: Vec<Defect>,
}

impl Next {
    /// Whether it may be done, once its waits are over.
    #[must_use]
    pub fn may(&self) -> bool {
        self.not_before.is_some() && self.spoils.is_empty()
    }
}

/// The operations that the job asks for and that were not done on all of its parts, each with what stands in its way.
#[must_use]
pub fn next(run: &Run) -> Vec<Next> {
    let saved = run.saved();
    let plan = route::plan(&saved.job, &saved.sheet);
    let done = |operation: Operation, part: Option<usize>| {
        saved.acts.iter().any(|act| {
            act.step.operation == operation && part.map_or(act.step.part.is_none(), |part| act.touches(part))
        })
    };
    let open = plan.steps.into_iter().filter(|step| !done(step.operation, step.part));
    open.map(|step| look_at(run, step.into())).collect()
}

/// An operation as it would go if it were done next, as soon as its waits are over.
fn look_at(run: &Run, act: Act) -> Next {
    let (operation, part) = (act.step.operation, act.step.part);
    let waiting = run.waiting(&act);
    let over = waiting.map_or(run.now().get(), |waiting| waiting.over);
    let not_before = over.is_finite().then(|| Hours::saturating((over - run.now().get()).max(0.0)));
    let mut tried = run.clone();
    let spoils = tried.act(act).map(<[Defect]>::to_vec).unwrap_or_default();
    Next {
        operation,
        part,
        not_before,
        waits_for: waiting.filter(|waiting| waiting.over > run.now().get()).map(|waiting| waiting.setting),
        spoils,
    }
}
