//! Which fault it is: a probability for each, from what was observed.
//!
//! Before anything is seen a fault counts as often as it is met ([`Met`]): often 4, usual 2, rare 1. Each observation
//! multiplies by its [`likelihood`], and the whole is divided by its sum (Bayes' theorem). Observations are taken as
//! independent of each other once the fault is known: two questions that ask nearly the same count double, so the
//! questions of the content each ask for another thing. One fault is looked for, not two at once.

use super::observe::{Observation, agrees, count, likelihood};
use super::{Fault, Met};
use crate::quantity::{Measure, Unit};
use crate::rules::sorted::sorted;
use crate::rules::verdict::Ruling;
use crate::terms;

/// A fault at least so likely is taken for the fault. Our choice: common practice, no source.
pub const SURE_LEAST: f64 = 0.8;
/// A fault that at least this share of the observations fits is no contradiction. Our choice: common practice, no source.
pub const FITS_LEAST: f64 = 0.5;

terms! {
    /// What a belief is good for.
    Certainty {
        /// One fault is likely enough to act on.
        Named = "fault-named",
        /// Several are left: do the next probe first.
        Open = "probe-first",
        /// What was observed fits no fault well: look again.
        Contradicting = "look-again",
        /// Nothing was observed yet.
        Nothing = "nothing-observed",
    }
}

/// Faults with their probabilities.
#[derive(Debug, Clone, PartialEq)]
pub struct Belief<'a> {
    /// Each fault with its probability, the likeliest first, alike ones in the order of the content. They sum to 1.
    pub faults: Vec<(&'a Fault, f64)>,
    /// Share of the observations that the likeliest fault names as its own, 0 to 1; none where nothing was observed.
    pub fit: Option<f64>,
}

impl<'a> Belief<'a> {
    /// The likeliest fault.
    #[must_use]
    pub fn first(&self) -> Option<(&'a Fault, f64)> {
        self.faults.first().copied()
    }

    /// Probability of a fault; 0 where it is not among them.
    #[must_use]
    pub fn of(&self, id: &str) -> f64 {
        self.faults.iter().find(|(fault, _)| fault.id == id).map_or(0.0, |(_, probability)| *probability)
    }

    /// What it is good for.
    #[must_use]
    pub fn certainty(&self) -> Certainty {
        let likeliest = self.first().map_or(0.0, |(_, probability)| probability);
        match self.fit {
            None => Certainty::Nothing,
            Some(fit) if fit < FITS_LEAST => Certainty::Contradicting,
            Some(_) if likeliest >= SURE_LEAST => Certainty::Named,
            Some(_) => Certainty::Open,
        }
    }
}

/// How much a fault counts before anything is seen.
const fn weight(met: Met) -> f64 {
    match met {
        Met::Often => 4.0,
        Met::Usual => 2.0,
        Met::Rare => 1.0,
    }
}

/// The belief over faults after what was observed; without observations the belief beforehand.
#[must_use]
pub fn belief<'a>(faults: impl IntoIterator<Item = &'a Fault>, observed: &[Observation<'_>]) -> Belief<'a> {
    let evidence = |fault: &Fault| {
        observed.iter().map(|seen| likelihood(fault, &seen.probe, seen.answer)).product::<f64>()
    };
    let weights: Vec<(&Fault, f64)> =
        faults.into_iter().map(|fault| (fault, weight(fault.met) * evidence(fault))).collect();
    let sum: f64 = weights.iter().map(|(_, weight)| weight).sum();
    let shares = weights.into_iter().map(|(fault, weight)| (fault, weight / sum)).collect();
    let faults = sorted(shares, |a: &(&Fault, f64), b| b.1.total_cmp(&a.1));
    let fit = faults.first().filter(|_| !observed.is_empty()).map(|(fault, _)| {
        let own = observed.iter().filter(|seen| agrees(fault, seen.probe.key, seen.answer));
        count(own.count()) / count(observed.len())
    });
    Belief { faults, fit }
}

/// The belief with its reasons: how likely the first fault was beforehand, what was seen, how likely it is now.
#[must_use]
pub fn diagnose<'a>(faults: &'a [Fault], observed: &[Observation<'_>]) -> Ruling<Belief<'a>> {
    /// Decimals of a share that anybody would act on.
    const DECIMALS: u8 = 3;
    let share = |value| Measure::new(value, Unit::Ratio, DECIMALS);
    let after = belief(faults, observed);
    let rule = match after.certainty() {
        Certainty::Contradicting => "fault.contradiction-is-looked-at-again",
        Certainty::Nothing => "fault.met-before-seen",
        Certainty::Named | Certainty::Open => "fault.likeliest-by-what-is-seen",
    };
    let (first, now) = after.first().map_or(("", 0.0), |(fault, now)| (fault.id.as_str(), now));
    let beforehand = belief(faults, &[]).of(first);
    let fit = after.fit;
    let ruling = Ruling::by(rule, after)
        .step("fault-beforehand", "weight / sum of weights", share(beforehand))
        .step("fault-observations", "", Measure::count(count(observed.len())));
    let ruling = match fit {
        Some(fit) => ruling.step("fault-fit", "fitting / observed", share(fit)),
        None => ruling,
    };
    ruling.step("fault-now", "beforehand × chance of each observation / sum over faults", share(now))
}
