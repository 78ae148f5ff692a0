//! Which fault it is from what was observed, and which probe to do next.

use super::{Calculation, Facts, Gives, Needs, Outcome, Row};
use crate::content::{Content, World};
use crate::quantity::{Hours, Measure, Unit};
use crate::rules::fault::{
    Branch, Fault, Observation, Probe, Telling, belief, costs, diagnose, ranked_causes, ranked_probes, remedy,
};
use crate::rules::term::{Stage, Term};
use crate::rules::verdict::{Judged, Ruling};

pub(super) const ALL: &[&Calculation] = &[&DIAGNOSE, &PROBE];

const DIAGNOSE: Calculation = Calculation {
    name: "diagnose",
    needs: &[Needs::PROBES],
    gives: &[
        Gives::Term {
            key: "verdict",
            among: &["fault-named", "probe-first", "look-again", "nothing-observed"],
        },
        Gives::Term { key: "fault", among: &["@faults"] },
        Gives::Number { key: "fit", unit: Unit::Ratio },
        Gives::Rows { key: "faults", of: &["fault", "probability"] },
        Gives::Term { key: "next", among: &[] },
        Gives::Number { key: "next_minutes", unit: Unit::Minute },
        Gives::Rows { key: "causes", of: &["cause", "probability"] },
        Gives::Words { key: "do_now" },
        Gives::Words { key: "rework" },
        Gives::Words { key: "prevention" },
        Gives::Number { key: "severity", unit: Unit::Count },
        Gives::Number { key: "rework_time", unit: Unit::Hour },
        Gives::Number { key: "rework_wait", unit: Unit::Hour },
        Gives::Rows { key: "made_at", of: &["stage"] },
        Gives::Term { key: "shows_at", among: &[] },
        Gives::Term { key: "shows_later", among: &["later-always", "later-sometimes", "later-never"] },
    ],
    run: which_fault,
};

const PROBE: Calculation = Calculation {
    name: "probe",
    needs: &[Needs::PROBES],
    gives: &[
        Gives::Rows { key: "probes", of: &["probe", "expected_bits", "minutes", "mend_minutes"] },
        Gives::Rows { key: "answers", of: &["probe", "answer", "chance", "fault", "probability"] },
    ],
    run: which_probe,
};

/// What a probe showed, where that is told: one of its answers.
pub(crate) fn shown<'a>(facts: &'a Facts, probe: &Probe<'_>) -> Option<&'a str> {
    facts.maybe_slug(probe.key).filter(|slug| probe.answers.iter().any(|one| one == slug))
}

/// What was observed: the facts told that are probes.
pub(crate) fn observed<'a>(facts: &'a Facts, content: &'a Content) -> Vec<Observation<'a>> {
    let told = |probe: Probe<'a>| shown(facts, &probe).map(|answer| Observation { probe, answer });
    content.probes().into_iter().filter_map(told).collect()
}

/// Decimals of a probability or a number of bits as shown.
const DECIMALS: u8 = 2;

fn bare(value: f64) -> Measure {
    Measure::new(value, Unit::Ratio, DECIMALS)
}

/// The probes not done yet, ranked.
fn next<'a>(facts: &'a Facts, content: &'a Content) -> Ruling<Vec<Telling<'a>>> {
    let seen = observed(facts, content);
    let now = belief(&content.faults, &seen);
    ranked_probes(&now, &content.probes(), |key| seen.iter().any(|one| one.probe.key == key))
}

fn which_fault(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let content = world.content;
    let found = diagnose(&content.faults, &observed(facts, content));
    let faults = &found.answer.faults;
    let lines = faults.iter().map(|(fault, p)| Row::of("fault", &fault.id).number("probability", bare(*p)));
    let mut outcome =
        Outcome::default().term("verdict", found.answer.certainty().slug()).rows("faults", lines.collect());
    if let Some(fit) = found.answer.fit {
        outcome = outcome.number("fit", bare(fit));
    }
    let told = found.answer.fit.is_some();
    let first = found.answer.first().filter(|_| told).map(|(fault, _)| fault);
    let probes = next(facts, content);
    let mut ruling = found.map(|_| outcome);
    if let Some(fault) = first {
        let costs = costs(fault, world.sheet);
        ruling = ruling
            .map(|outcome| of_fault(outcome, fault, costs.answer))
            .resting_on(&costs)
            .and("fault.likeliest-cause-first");
    }
    let ruling = match probes.answer.first() {
        Some(best) => ruling.map(|outcome| of_next(outcome, best)).resting_on(&probes),
        None => ruling,
    };
    Ok(ruling)
}

/// What is done about a fault, why it came, where it is made and shows.
fn of_fault(outcome: Outcome, fault: &Fault, (work, wait): (Hours, Hours)) -> Outcome {
    let cure = remedy(fault).answer;
    let hours = |hours: Hours| Measure::new(hours.get(), Unit::Hour, 1);
    let causes = ranked_causes(fault).into_iter();
    let causes = causes.map(|(cause, p)| Row::of("cause", cause).number("probability", bare(p)));
    let made = cure.made.iter().map(|stage: &Stage| Row::of("stage", stage.slug()));
    let message = |what: &str| format!("fault.{}.{what}", fault.id);
    outcome
        .term("fault", &fault.id)
        .rows("causes", causes.collect())
        .words("do_now", message("now"))
        .words("rework", message("fix"))
        .words("prevention", message("prevent"))
        .number("severity", Measure::count(f64::from(u8::from(cure.rework))))
        .number("rework_time", hours(work))
        .number("rework_wait", hours(wait))
        .rows("made_at", made.collect())
        .term("shows_at", cure.shows.slug())
        .term("shows_later", cure.later.slug())
}

/// The probe to do next.
fn of_next(outcome: Outcome, best: &Telling<'_>) -> Outcome {
    outcome.term("next", best.probe.key).number("next_minutes", minutes(best.probe.effort.minutes))
}

fn minutes(minutes: f64) -> Measure {
    Measure::new(minutes, Unit::Minute, 0)
}

fn probe_row(telling: &Telling<'_>) -> Row {
    let effort = telling.probe.effort;
    let line = Row::of("probe", telling.probe.key)
        .number("expected_bits", bare(telling.bits))
        .number("minutes", minutes(effort.minutes));
    if effort.marks_the_work() { line.number("mend_minutes", minutes(effort.mend_minutes)) } else { line }
}

fn which_probe(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let ranked = next(facts, world.content);
    /// Probes of which it is told what each answer would mean.
    const FIRST: usize = 3;
    let meant = |telling: &Telling<'_>, branch: &Branch<'_>| {
        Row::of("probe", telling.probe.key)
            .term("answer", branch.answer)
            .term("fault", &branch.then.0.id)
            .number("chance", bare(branch.chance))
            .number("probability", bare(branch.then.1))
    };
    let mut meanings = Vec::new();
    for telling in ranked.answer.iter().take(FIRST) {
        meanings.extend(telling.branches.iter().map(|branch| meant(telling, branch)));
    }
    let probes = ranked.answer.iter().map(probe_row).collect();
    Ok(ranked.map(|_| Outcome::default().rows("probes", probes).rows("answers", meanings)))
}
