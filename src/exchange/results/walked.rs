//! What may stand in an event of a walk: a decision that a walk can keep, and families that broke no rule but its own.

use super::fit::name;
use crate::exchange::Refused;
use crate::record::{Decided, Walked};
use crate::walk::Decision;

/// Checks the event at a place.
pub(super) fn fit_walked(place: &str, walked: &Walked) -> Result<(), Refused> {
    name(&format!("{place}.walk"), &walked.walk)?;
    name(&format!("{place}.job"), &walked.job)?;
    walked.decided().map_or(Ok(()), |decided| fit_decided(&format!("{place}.step.decided"), decided))
}

fn fit_decided(place: &str, decided: &Decided) -> Result<(), Refused> {
    if decided.nth == 0 {
        return Err(Refused::value(format!("{place}.nth"), decided.nth, "1 and more is allowed"));
    }
    if serde_json::from_value::<Decision>(decided.decision.clone()).is_err() {
        let allowed = "a decision as a kept walk has it is allowed";
        return Err(Refused::value(format!("{place}.decision"), &decided.decision, allowed));
    }
    for (nth, one) in (1..).zip(&decided.exercised) {
        if let Some(rule) = one.broke.iter().find(|rule| !decided.broke.contains(rule)) {
            let allowed = "a rule that the decision broke is allowed";
            return Err(Refused::value(format!("{place}.exercised.{nth}.broke"), rule, allowed));
        }
    }
    Ok(())
}
