//! Faults, their probes and their look-alikes: what a fault shows is what a probe can answer, and each pair is told apart
//! by the probe that it names.

use super::Reader;
use super::names::nearest;
use crate::content::{Content, FactInfo};
use crate::rules::fault::{Fault, Pair, Probe, separates};
use std::collections::BTreeSet;

/// Reports faults, probes and pairs that do not fit together.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    let probes = content.probes();
    for (index, fact) in content.facts.iter().enumerate() {
        if let Some((key, message)) = probe_problem(fact) {
            reader.at("fact", index, key, message);
        }
    }
    for (index, fault) in content.faults.iter().enumerate() {
        if fault.made.is_empty() {
            reader.at("fault", index, "made", format!("fault `{}` needs at least one stage", fault.id));
        }
        if fault.rework.is_empty() {
            reader.at("fault", index, "rework", format!("fault `{}` needs at least one step", fault.id));
        }
        causes(index, fault, reader);
        if reader.knows("fact") {
            seen(index, fault, &probes, reader);
        }
    }
    if reader.knows("fault") && reader.knows("fact") {
        for (index, one) in content.pairs.iter().enumerate() {
            pair(index, one, content, &probes, reader);
        }
    }
}

fn probe_problem(fact: &FactInfo) -> Option<(&'static str, String)> {
    let effort = fact.probe?;
    if fact.terms.len() < 2 || fact.terms.iter().any(|term| term.starts_with('@')) {
        return Some(("terms", format!("`{}` is a probe; it needs at least two answers in terms", fact.key)));
    }
    let sound = effort.minutes > 0.0 && effort.mend_minutes >= 0.0 && effort.all_minutes().is_finite();
    let message = format!("`{}`: minutes over 0 and mend_minutes of 0 and over are allowed", fact.key);
    (!sound).then_some(("probe", message))
}

fn causes(index: usize, fault: &Fault, reader: &mut Reader) {
    let mut known = BTreeSet::new();
    if fault.causes.is_empty() {
        reader.at("fault", index, "causes", format!("fault `{}` needs at least one cause", fault.id));
    }
    for (nth, cause) in fault.causes.iter().enumerate() {
        super::check::slug("fault", index, &format!("causes.{nth}"), cause, reader);
        if !known.insert(cause) {
            reader.at("fault", index, &format!("causes.{nth}"), format!("cause `{cause}` stands twice"));
        }
    }
}

fn seen(index: usize, fault: &Fault, probes: &[Probe<'_>], reader: &mut Reader) {
    if fault.seen.is_empty() {
        reader.at("fault", index, "seen", format!("fault `{}` shows nothing", fault.id));
    }
    for (key, answers) in &fault.seen {
        let at = format!("seen.{key}");
        let Some(probe) = probes.iter().find(|probe| probe.key == key) else {
            let names = nearest(key, probes.iter().map(|probe| probe.key));
            reader.at(
                "fault",
                index,
                &at,
                format!("`{key}` is no probe of content/facts/; allowed: {names}"),
            );
            continue;
        };
        let wrong = answers.iter().find(|answer| !probe.answers.contains(answer));
        if let Some(wrong) = wrong {
            let names = nearest(wrong, probe.answers.iter().map(String::as_str));
            reader.at("fault", index, &at, format!("`{wrong}` does not answer `{key}`; allowed: {names}"));
        }
        let once: BTreeSet<&String> = answers.iter().collect();
        if answers.is_empty() || once.len() < answers.len() || once.len() >= probe.answers.len() {
            let message = format!("`{key}` needs one answer or more, each once, and not all of them");
            reader.at("fault", index, &at, message);
        }
    }
    for (nth, key) in fault.read.iter().enumerate().filter(|(_, key)| !fault.seen.contains_key(*key)) {
        let names = nearest(key, fault.seen.keys().map(String::as_str));
        reader.at(
            "fault",
            index,
            &format!("read.{nth}"),
            format!("`{key}` is not in seen; allowed: {names}"),
        );
    }
}

fn pair(index: usize, pair: &Pair, content: &Content, probes: &[Probe<'_>], reader: &mut Reader) {
    let mut fault = |key: &str, id: &str| {
        let found = content.fault(id);
        if found.is_none() {
            let names = nearest(id, content.faults.iter().map(|fault| fault.id.as_str()));
            let message = format!("`{id}` is no fault of content/faults.toml; allowed: {names}");
            reader.at("pair", index, key, message);
        }
        found
    };
    let (Some(a), Some(b)) = (fault("a", &pair.a), fault("b", &pair.b)) else { return };
    let twice = content.pairs.iter().take(index).any(|other| other.other(&pair.a) == Some(&pair.b));
    if pair.a == pair.b || twice {
        let message = format!("`{}` and `{}`: two faults are wanted, and each pair once", pair.a, pair.b);
        reader.at("pair", index, "b", message);
        return;
    }
    if pair.probes.is_empty() {
        reader.at("pair", index, "probes", format!("pair `{}` needs a probe that decides", pair.id));
    }
    for (nth, key) in pair.probes.iter().enumerate().filter(|(_, key)| !separates(a, b, key)) {
        let apart = probes.iter().map(|probe| probe.key).filter(|key| separates(a, b, key));
        let names = nearest(key, apart);
        let message = format!(
            "`{key}` does not tell `{}` from `{}`: both must speak of it and share no answer; allowed: {names}",
            pair.a, pair.b
        );
        reader.at("pair", index, &format!("probes.{nth}"), message);
    }
}
