//! Laws of fault reasoning over many random observations: probabilities stay proper, the order of what was seen does not
//! matter, information is never negative nor more than there is to know, and nothing panics.

mod support;

use stepboard::bench::{self, Facts};
use stepboard::card::Dice;
use stepboard::content::{Content, World};
use stepboard::rules::fault::{
    Belief, Observation, Pair, Probe, belief, can_cause, deciding_probe, entropy, likelihood, prevented_by,
    ranked_causes, ranked_probes, separates, telling,
};
use support::{content, inputs};

/// Random inputs a law in the short run.
const INPUTS: u32 = 2_000;
/// Rounding of sums over all faults.
const DUST: f64 = 1e-9;

/// Observations at random, each question at most once, in random order; a third of the draws has none or one.
fn observed<'a>(probes: &[Probe<'a>], dice: &mut Dice) -> Vec<Observation<'a>> {
    let most = [1, 3, u32::try_from(probes.len()).expect("few probes")];
    let most = *dice.pick(&most).expect("three");
    let count = dice.below(1 + most);
    let mut open = probes.to_vec();
    dice.shuffle(&mut open);
    let one = |probe: Probe<'a>| Some(Observation { probe, answer: dice.pick(probe.answers)? });
    open.into_iter().take(count.try_into().expect("few")).filter_map(one).collect()
}

fn each(law: &str, mut check: impl FnMut(&Content, &[Probe<'_>], &[Observation<'_>], &mut Dice)) {
    let content = content();
    let probes = content.probes();
    for input in 0..inputs(INPUTS) {
        let mut dice = Dice::new(&format!("{law}/{input}"));
        let seen = observed(&probes, &mut dice);
        check(&content, &probes, &seen, &mut dice);
    }
}

fn sum(belief: &Belief<'_>) -> f64 {
    belief.faults.iter().map(|(_, p)| p).sum()
}

#[test]
fn probabilities_are_proper_and_the_likeliest_stands_first() {
    each("proper", |content, _, seen, _| {
        let now = belief(&content.faults, seen);
        assert_eq!(now.faults.len(), content.faults.len());
        assert!((sum(&now) - 1.0).abs() < DUST, "{}", sum(&now));
        assert!(now.faults.iter().all(|(_, p)| *p > 0.0 && *p <= 1.0));
        assert!(now.faults.windows(2).all(|pair| pair[0].1 >= pair[1].1));
        assert_eq!(now.fit.is_some(), !seen.is_empty());
        assert!(now.fit.is_none_or(|fit| (0.0..=1.0).contains(&fit)));
    });
}

#[test]
fn the_order_of_what_was_seen_does_not_matter() {
    each("order", |content, _, seen, dice| {
        let mut other = seen.to_vec();
        dice.shuffle(&mut other);
        let (one, two) = (belief(&content.faults, seen), belief(&content.faults, &other));
        for (fault, p) in &one.faults {
            assert!((two.of(&fault.id) - p).abs() < DUST, "{}", fault.id);
        }
        assert_eq!(one.certainty(), two.certainty());
    });
}

#[test]
fn seeing_what_a_fault_names_never_makes_it_less_likely() {
    each("agrees", |content, probes, seen, dice| {
        let fault = dice.pick(&content.faults).expect("a fault");
        let open = probes.iter().filter(|probe| seen.iter().all(|one| one.probe.key != probe.key));
        for probe in open {
            let Some(answer) = fault.seen.get(probe.key).and_then(|answers| answers.first()) else {
                continue;
            };
            let chance = |other| likelihood(other, probe, answer);
            // A fault that names fewer answers speaks louder: only against those that name as many or none.
            if content.faults.iter().any(|other| chance(other) > chance(fault)) {
                continue;
            }
            let before = belief(&content.faults, seen).of(&fault.id);
            let mut more = seen.to_vec();
            more.push(Observation { probe: *probe, answer });
            let after = belief(&content.faults, &more).of(&fault.id);
            assert!(after >= before - DUST, "{} by {answer}: {before} to {after}", fault.id);
        }
    });
}

#[test]
fn information_is_never_negative_and_never_more_than_there_is_to_know() {
    each("bits", |content, probes, seen, dice| {
        let now = belief(&content.faults, seen);
        let all = entropy(now.faults.iter().map(|(_, p)| *p));
        let worth = telling(&now, *dice.pick(probes).expect("a probe"));
        assert!(worth.bits >= 0.0 && worth.bits <= all + DUST, "{} of {all}", worth.bits);
        let chances: f64 = worth.branches.iter().map(|branch| branch.chance).sum();
        assert!((chances - 1.0).abs() < DUST, "{chances}");
        // What is believed on average after the answer is what is believed before it.
        for (fault, before) in now.faults.iter().take(3) {
            let after: f64 = worth
                .branches
                .iter()
                .map(|branch| {
                    let mut more = seen.to_vec();
                    more.push(Observation { probe: worth.probe, answer: branch.answer });
                    branch.chance * belief(&content.faults, &more).of(&fault.id)
                })
                .sum();
            let done = seen.iter().any(|one| one.probe.key == worth.probe.key);
            assert!(done || (after - before).abs() < 1e-6, "{}: {before} and {after}", fault.id);
        }
    });
}

#[test]
fn the_first_probe_tells_no_less_a_minute_than_any_other() {
    let most = inputs(INPUTS).div_ceil(20);
    let content = content();
    let probes = content.probes();
    for input in 0..most {
        let mut dice = Dice::new(&format!("first/{input}"));
        let seen = observed(&probes, &mut dice);
        let now = belief(&content.faults, &seen);
        let done = |key: &str| seen.iter().any(|one| one.probe.key == key);
        let ranked = ranked_probes(&now, &probes, done).answer;
        assert_eq!(ranked.len(), probes.len() - seen.len());
        for one in &ranked {
            let first = &ranked[0];
            assert!(first.bits_a_minute >= one.bits_a_minute);
            let minutes = one.probe.effort.all_minutes();
            assert!((one.bits - one.bits_a_minute * minutes).abs() < DUST);
        }
    }
}

#[test]
fn a_probe_separates_two_faults_both_ways_or_neither() {
    let content = content();
    for a in &content.faults {
        assert!((ranked_causes(a).iter().map(|(_, p)| p).sum::<f64>() - 1.0).abs() < DUST);
        for b in &content.faults {
            for probe in content.probes() {
                assert_eq!(separates(a, b, probe.key), separates(b, a, probe.key), "{} {}", a.id, b.id);
                assert!(a.id != b.id || !separates(a, b, probe.key));
            }
            let pair = |pair: &&Pair| pair.other(&a.id) == Some(&b.id);
            let known = content.pairs.iter().any(|one| pair(&one));
            assert_eq!(deciding_probe(&content.pairs, &a.id, &b.id).is_ok(), known, "{} {}", a.id, b.id);
        }
    }
}

/// The calculations take any observations, also ones that contradict each other, and always answer.
#[test]
fn diagnose_and_probe_answer_whatever_was_seen() {
    let most = inputs(INPUTS).div_ceil(20);
    let content = content();
    let probes = content.probes();
    let world = World { content: &content, sheet: &content.sheets[0] };
    for calculation in
        bench::calculations().into_iter().filter(|one| ["diagnose", "probe"].contains(&one.name))
    {
        for input in 0..most {
            let mut facts = Facts::default();
            for one in observed(&probes, &mut Dice::new(&format!("whatever/{input}"))) {
                facts.set_term(one.probe.key, one.answer);
            }
            let answer = (calculation.run)(&facts, &world).expect("always an answer").answer;
            assert!(answer.rows.iter().any(|(_, rows)| !rows.is_empty()) || facts.0.len() == probes.len());
        }
    }
}

/// Common practice, no source: what prevents a fault acts on its causes, so only a fault with one of them is prevented too.
#[test]
fn a_change_prevents_faults_that_share_a_cause_and_no_others() {
    let content = content();
    for one in &content.faults {
        assert!(prevented_by(one, one).answer, "{}", one.id);
        for other in &content.faults {
            let shared = other.causes.iter().any(|cause| can_cause(one, cause).answer);
            assert_eq!(prevented_by(one, other).answer, shared, "{} and {}", one.id, other.id);
            assert_eq!(prevented_by(other, one).answer, shared, "{} and {}", one.id, other.id);
        }
    }
}
