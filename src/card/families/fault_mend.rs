//! After a fault is named: the cause that is looked at first, and the change that keeps it from coming back.

use super::fault::partners;
use crate::bench::Facts;
use crate::card::Answer;
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::content::World;
use crate::rules::fault::{CAUSE_FALLS_BY, Fault, can_cause, first_cause, prevented_by, ranked_causes};
use crate::rules::sorted::sorted;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&FIRST_CAUSE, &FAULT_PREVENTION];

/// Which cause is looked at first? Misconceptions: a cause that is rarer; a cause of the fault that it is taken for.
const FIRST_CAUSE: Question = Question {
    id: "first-cause",
    settle: keep,
    ask: Ask::One { answer: likeliest, tempt: likeliest_tempts },
    after: After::is("time-lost"),
};

/// Which change keeps it from coming back? Misconceptions: what prevents the fault that it is taken for, or another.
const FAULT_PREVENTION: Question = Question {
    id: "fault-prevention",
    settle: keep,
    ask: Ask::One { answer: prevents, tempt: prevents_tempts },
    after: After::is("fault-repeated"),
};

/// The first cause is so many times likelier than a cause that is offered as wrong, or more.
const PLAINLY: f64 = CAUSE_FALLS_BY * CAUSE_FALLS_BY;

fn named<'a>(facts: &Facts, world: &World<'a>) -> Result<&'a Fault, CannotJudge> {
    world.fault(facts.slug("fault")?)
}

/// The faults that a fault is taken for, then all others.
fn look_alikes_first<'a>(fault: &Fault, world: &World<'a>) -> Vec<(&'a Fault, bool)> {
    let alike = partners(fault, world);
    let others = world.content.faults.iter().filter(|one| one.id != fault.id);
    let others = others.map(|one| (one, alike.contains(&one.id.as_str()))).collect();
    sorted(others, |(_, alike), (_, other)| other.cmp(alike))
}

// First cause

fn likeliest(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    Ok(first_cause(named(facts, world)?, &[])?.map(Answer::term))
}

pub(super) fn likeliest_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(fault) = named(facts, world) else { return Vec::new() };
    let ranked = ranked_causes(fault);
    let first = ranked.first().map_or(0.0, |(_, p)| *p);
    let rarer = ranked.iter().filter(|(_, p)| *p * PLAINLY <= first);
    let mut tempts: Vec<Tempt> = rarer.map(|(cause, _)| Tempt::term(cause, "cause-is-rarer", "")).collect();
    for (other, alike) in look_alikes_first(fault, world) {
        let slip = if alike { "cause-of-its-look-alike" } else { "cause-of-another-fault" };
        let foreign = other.causes.iter().filter(|cause| !can_cause(fault, cause).answer);
        tempts.extend(foreign.take(1).map(|cause| Tempt::term(cause, slip, "fault-repeated")));
    }
    tempts
}

// Prevention

/// The answer that stands for what prevents a fault: its words are those of the fault.
fn prevention_of(fault: &Fault) -> Answer {
    Answer::Term(format!("{}.prevent", fault.id))
}

fn prevents(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let fault = named(facts, world)?;
    Ok(prevented_by(fault, fault).map(|_| prevention_of(fault)))
}

/// What prevents faults that have no cause in common with it.
fn prevents_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(fault) = named(facts, world) else { return Vec::new() };
    let others = look_alikes_first(fault, world).into_iter();
    let wrong = others.filter(|(one, _)| !prevented_by(fault, one).answer);
    let slip = |alike| if alike { "prevents-its-look-alike" } else { "prevents-another-fault" };
    wrong.map(|(one, alike)| Tempt { answer: prevention_of(one), slip: slip(alike), after: "" }).collect()
}
