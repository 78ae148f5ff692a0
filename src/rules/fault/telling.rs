//! Which probe tells most: expected information for each minute.
//!
//! The information of a probe is the entropy of the belief over faults less the entropy that is left on average after
//! its answer, in bits (the mutual information of C. E. Shannon, 1948). The minutes are those of the probe and of
//! mending its mark.

use super::Fault;
use super::belief::Belief;
use super::observe::Look;
use super::probe::Probe;
use crate::rules::sorted::sorted;
use crate::rules::verdict::Ruling;

/// What one answer of a probe would mean.
#[derive(Debug, Clone, PartialEq)]
pub struct Branch<'a> {
    /// The answer.
    pub answer: &'a str,
    /// Chance that it comes, 0 to 1; over the answers of the probe it sums to 1.
    pub chance: f64,
    /// The fault that would then be the likeliest, with its probability.
    pub then: (&'a Fault, f64),
}

/// What a probe is worth.
#[derive(Debug, Clone, PartialEq)]
pub struct Telling<'a> {
    /// The probe.
    pub probe: Probe<'a>,
    /// Expected information in bits, 0 up to the entropy of the belief.
    pub bits: f64,
    /// Expected information for each minute.
    pub bits_a_minute: f64,
    /// What each answer would mean, in the order of the answers.
    pub branches: Vec<Branch<'a>>,
}

/// Entropy of probabilities, in bits: 0 where one is certain, log2(n) where all n are alike.
#[must_use]
pub fn entropy(probabilities: impl Iterator<Item = f64>) -> f64 {
    let terms = probabilities.filter(|p| *p > 0.0).map(|p| -p * libm::log2(p));
    terms.sum::<f64>().max(0.0)
}

/// What a probe is worth under a belief.
#[must_use]
pub fn telling<'a>(belief: &Belief<'a>, probe: Probe<'a>) -> Telling<'a> {
    let before = entropy(belief.faults.iter().map(|(_, p)| *p));
    let looks: Vec<Look<'_>> = belief.faults.iter().map(|(fault, _)| Look::of(fault, &probe)).collect();
    let mut left = 0.0;
    let mut branches = Vec::with_capacity(probe.answers.len());
    for answer in probe.answers {
        let faults = || belief.faults.iter().zip(&looks);
        let joint: Vec<f64> = faults().map(|((_, p), look)| p * look.likelihood(answer)).collect();
        let chance: f64 = joint.iter().sum();
        let now = || joint.iter().map(|joint| joint / chance);
        left += chance * entropy(now());
        let likeliest = belief.faults.iter().zip(now()).map(|((fault, _), now)| (*fault, now));
        if let Some(then) = likeliest.reduce(|a, b| if b.1 > a.1 { b } else { a }) {
            branches.push(Branch { answer, chance, then });
        }
    }
    let bits = (before - left).clamp(0.0, before);
    Telling { probe, bits, bits_a_minute: bits / probe.effort.all_minutes(), branches }
}

/// The probes not done yet, the most telling for its minutes first; alike ones in the order of the content.
#[must_use]
pub fn ranked_probes<'a>(
    belief: &Belief<'a>,
    probes: &[Probe<'a>],
    done: impl Fn(&str) -> bool,
) -> Ruling<Vec<Telling<'a>>> {
    let open = probes.iter().filter(|probe| !done(probe.key));
    let worth = open.map(|probe| telling(belief, *probe)).collect();
    let ranked = sorted(worth, |a: &Telling<'_>, b| b.bits_a_minute.total_cmp(&a.bits_a_minute));
    Ruling::by("fault.most-telling-probe-first", ranked)
}
