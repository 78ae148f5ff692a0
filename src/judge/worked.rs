//! The job worked by [`crate::process`]: what showed that only the air, the gun or the clock makes.

use super::guess::{Guessed, filled, guess};
use super::told::Account;
use crate::process::act::Act;
use crate::process::air::AirLog;
use crate::process::defect::Defect;
use crate::process::run::Run;
use crate::rules::sequence::operation::COATS;
use crate::rules::sequence::plan::{Detail, Plan, Told};

/// The job as far as it could be worked.
#[derive(Debug, Clone)]
pub(super) struct Worked {
    /// The run; what is not told stops it.
    pub(super) run: Run,
    /// Whether every step could be worked.
    pub(super) whole: bool,
    /// What showed, whatever is untold.
    pub(super) defects: Vec<Defect>,
    /// Keys of what would have to be told to say what else showed.
    pub(super) missing: Vec<String>,
    /// The plan with the air of the room at each coat that tells none of its own, as far as it is known.
    pub(super) plan: Plan,
}

/// Works a job.
pub(super) fn work(account: &Account) -> Worked {
    let mut run = start(account);
    let mut begun = Vec::new();
    let mut acts = account.plan.steps.iter().zip(&account.passes);
    let whole = acts.all(|(step, pass)| {
        let act = Act { pass: *pass, ..Act::from(step.clone()) };
        begun.push(run.begins(&act).get());
        run.act(act).is_ok()
    });
    if whole && account.handed_over {
        run.hand_over();
    }
    let clock = if whole { Clock { begun, known: f64::INFINITY } } else { Clock::of(account) };
    let plan = in_its_air(account, &clock);
    let Guessed { certain, missing } = if whole {
        Guessed { certain: run.defects().to_vec(), missing: Vec::new() }
    } else {
        guess(account, &plan, clock.known)
    };
    Worked { run, whole, defects: certain, missing, plan }
}

impl Worked {
    /// Whether a wait may have been kept in air in which the sheet gives no estimate: no wait helps there, the room is to be
    /// changed. Where the run stopped before its end, such air over the job is enough. Where small steps are not listed,
    /// waits are judged without the air.
    pub(super) fn waits_outside_model(&self, account: &Account) -> bool {
        let stopped = !self.whole && self.run.saved().air.leaves_model(&account.sheet);
        account.plan.detail == Detail::Every && (stopped || !self.run.unsure().is_empty())
    }
}

/// When the steps began, in hours since the job began.
struct Clock {
    /// Of each step up to the first hours that are untold.
    begun: Vec<f64>,
    /// When these hours began; without end where all are told.
    known: f64,
}

impl Clock {
    fn of(account: &Account) -> Self {
        let mut run = start(account);
        let mut begun = Vec::new();
        for step in &account.plan.steps {
            if step.after == Told::Untold {
                return Self { begun, known: run.now().get() };
            }
            let act = Act::from(filled(step, 0.0, None));
            begun.push(run.begins(&act).get());
            // A filled step leaves nothing untold.
            let _ = run.act(act);
            if step.between == Told::Untold || step.coats == Told::Untold {
                return Self { begun, known: run.now().get() };
            }
        }
        Self { begun, known: f64::INFINITY }
    }
}

fn start(account: &Account) -> Run {
    Run::start(account.job.clone(), account.sheet.clone(), AirLog::new(account.air.clone()))
}

fn in_its_air(account: &Account, clock: &Clock) -> Plan {
    let mut plan = account.plan.clone();
    let air = AirLog::new(account.air.clone());
    for (at, step) in plan.steps.iter_mut().enumerate() {
        if !COATS.contains(&step.operation) || step.climate != Told::Kept {
            continue;
        }
        // A coat of which nobody knows when it was laid was laid in air that nobody knows, unless the air is one.
        step.climate = match clock.begun.get(at) {
            Some(begun) => air.at(*begun).map_or(Told::Kept, Told::Is),
            None if air.changes_after(clock.known) => Told::Untold,
            None => air.at(clock.known).map_or(Told::Kept, Told::Is),
        };
    }
    plan
}
