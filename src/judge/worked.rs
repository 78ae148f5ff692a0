//! The job worked by [`crate::process`]: when each step began, what showed that only the air or the gun makes.

use super::told::Account;
use crate::process::act::Act;
use crate::process::air::AirLog;
use crate::process::defect::{Cause, Defect};
use crate::process::run::Run;
use crate::rules::sequence::operation::COATS;
use crate::rules::sequence::plan::{Detail, Plan, Told};

/// The job as far as it could be worked.
#[derive(Debug, Clone)]
pub(super) struct Worked {
    /// The run.
    pub(super) run: Run,
    /// Whether every step could be worked; what is not told stops it.
    pub(super) whole: bool,
    /// When each step that was worked began, in hours since the job began.
    begun: Vec<f64>,
}

/// Works a job.
pub(super) fn work(account: &Account) -> Worked {
    let run = Run::start(account.job.clone(), account.sheet.clone(), AirLog::new(account.air.clone()));
    let mut worked = Worked { run, whole: true, begun: Vec::new() };
    for (step, pass) in account.plan.steps.iter().zip(&account.passes) {
        let act = Act { step: step.clone(), pass: *pass };
        let begun = worked.run.begins(&act);
        if worked.run.act(act).is_err() {
            worked.whole = false;
            break;
        }
        worked.begun.push(begun.get());
    }
    if worked.whole && account.handed_over {
        worked.run.hand_over();
    }
    worked
}

impl Worked {
    /// What showed in the run, and what the gun did in the steps that could not be worked: that needs no clock.
    pub(super) fn defects(&self, account: &Account) -> Vec<Defect> {
        let mut defects = self.run.defects().to_vec();
        let steps = account.plan.steps.iter().zip(&account.passes).enumerate();
        for (made, (step, pass)) in steps.skip(self.begun.len()) {
            let defect = |fumble| Defect {
                cause: Cause::Technique(fumble),
                made,
                part: 0,
                met: Some(made),
                at: self.run.now(),
            };
            defects.extend(pass.fumbles(step.operation, &account.sheet).into_iter().map(defect));
        }
        defects
    }

    /// Whether a wait may have been kept in air in which the sheet gives no estimate: no wait helps there, the room is to be
    /// changed. Where the run stopped before its end, such air over the job is enough. Where small steps are not listed,
    /// waits are judged without the air.
    pub(super) fn waits_outside_model(&self, account: &Account) -> bool {
        let stopped = !self.whole && self.run.saved().air.leaves_model(&account.sheet);
        account.plan.detail == Detail::Every && (stopped || !self.run.unsure().is_empty())
    }

    /// The plan with the air of the room at each coat that tells none of its own, as far as it is known.
    pub(super) fn in_its_air(&self, account: &Account) -> Plan {
        let mut plan = account.plan.clone();
        let air = &self.run.saved().air;
        let last = self.run.now().get();
        for (at, step) in plan.steps.iter_mut().enumerate() {
            if !COATS.contains(&step.operation) || step.climate != Told::Kept {
                continue;
            }
            // A coat of which nobody knows when it was laid was laid in air that nobody knows, unless the air is one.
            step.climate = match self.begun.get(at) {
                Some(begun) => air.at(*begun).map_or(Told::Kept, Told::Is),
                None if air.changes_after(last) => Told::Untold,
                None => air.at(last).map_or(Told::Kept, Told::Is),
            };
        }
        plan
    }
}
