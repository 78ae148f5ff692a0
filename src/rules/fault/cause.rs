//! Why a fault came: its causes, the likeliest first.

use super::Fault;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// Each next cause of a fault's ranking counts so many times less. The ranking is our reading of the sources, not a
/// measured frequency: common practice, no source.
pub const CAUSE_FALLS_BY: f64 = 2.0;

/// The causes of a fault with their probabilities, the likeliest first; they sum to 1.
#[must_use]
pub fn ranked_causes(fault: &Fault) -> Vec<(&str, f64)> {
    let mut weight = 1.0;
    let mut weights = Vec::with_capacity(fault.causes.len());
    for cause in &fault.causes {
        weights.push((cause.as_str(), weight));
        weight /= CAUSE_FALLS_BY;
    }
    let sum: f64 = weights.iter().map(|(_, weight)| weight).sum();
    weights.into_iter().map(|(cause, weight)| (cause, weight / sum)).collect()
}

/// The cause to look at first, once some are ruled out.
///
/// # Errors
/// [`CannotJudge`] when every cause that is known is ruled out.
pub fn first_cause<'a>(fault: &'a Fault, ruled_out: &[&str]) -> Judged<&'a str> {
    let left = fault.causes.iter().find(|cause| !ruled_out.contains(&cause.as_str()));
    let cause = left.ok_or_else(|| CannotJudge::without("cause"))?;
    Ok(Ruling::by("fault.likeliest-cause-first", cause.as_str()))
}

/// Whether something can be a cause of a fault.
#[must_use]
pub fn can_cause(fault: &Fault, cause: &str) -> Ruling<bool> {
    Ruling::by("fault.has-its-own-causes", fault.causes.iter().any(|one| one == cause))
}

/// Whether what prevents one fault can prevent another: a change acts on a cause, so they need one in common.
#[must_use]
pub fn prevented_by(fault: &Fault, other: &Fault) -> Ruling<bool> {
    Ruling::by("fault.prevented-at-its-cause", other.causes.iter().any(|cause| fault.causes.contains(cause)))
}
