//! Faults told apart: which it is, which probe decides or tells most, what a probe's answer says, causes and rework.
//!
//! Faults, pairs and probes are drawn from the content: a pair added there is asked about at once.

use crate::bench::Facts;
use crate::bench::fault::observed;
use crate::card::deal::TEMPTS_MOST;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::fault::{
    self, Belief, Certainty, Fault, Observation, Pair, Probe, Reading, Rework, Telling, agrees, belief,
    can_cause, deciding_probe, diagnose, ranked_probes, remedy, separates, speaks_of,
};
use crate::rules::sorted::sorted;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use std::cmp::Ordering;

pub(super) const ALL: &[&Question] =
    &[&FAULT_NAME, &NEXT_PROBE, &LOOK_ALIKE_PROBE, &PROBE_READING, &FAULT_CAUSES, &FAULT_REMEDY];

/// A wrong answer is offered only where the right one is so many times likelier, or tells so many times more.
const PLAINLY: f64 = 4.0;

/// Which fault is it? Misconceptions: its look-alike; the commonest of what the first look allows.
const FAULT_NAME: Question = Question {
    id: "fault-name",
    settle: until_named,
    ask: Ask::One { answer: name, tempt: name_tempts },
    after: After::is(MISDIRECTED),
};

/// Which test is done next? Misconceptions: a test that every fault left answers alike; a long one for little.
const NEXT_PROBE: Question = Question {
    id: "next-probe",
    settle: a_first_look,
    ask: Ask::One { answer: next, tempt: next_tempts },
    after: After::is("time-lost"),
};

/// Which test tells the two apart? Misconceptions: one that both answer alike; one that speaks of neither.
const LOOK_ALIKE_PROBE: Question = Question {
    id: "look-alike-probe",
    settle: a_pair,
    ask: Ask::One { answer: decides, tempt: decides_tempts },
    after: After::is(MISDIRECTED),
};

/// What does the test say? Misconceptions: what both show proves one; what neither shows proves one.
const PROBE_READING: Question = Question {
    id: "probe-reading",
    settle: a_pair_and_a_probe,
    ask: Ask::One { answer: reads, tempt: reads_tempts },
    after: After::is(MISDIRECTED),
};

/// What can have caused it? Misconception: causes of the fault that it is taken for.
const FAULT_CAUSES: Question = Question {
    id: "fault-causes",
    settle: keep,
    ask: Ask::All { items: causes, holds: causes_it },
    after: After::is("fault-repeated"),
};

/// Which rework mends it? Misconception: the rework of the fault that it is taken for.
const FAULT_REMEDY: Question = Question {
    id: "fault-remedy",
    settle: a_fault_with_a_cure,
    ask: Ask::One { answer: mends, tempt: mends_tempts },
    after: After::is(MISDIRECTED),
};

/// What follows where a fault is taken for another one and gets its rework.
pub(super) const MISDIRECTED: &str = "rework-misdirected";
/// What follows from less rework than cures a fault.
pub(super) const TOO_SMALL: &str = "rework-too-small";
/// What follows from more rework than a fault needs.
pub(super) const TOO_LARGE: &str = "rework-too-large";

/// What no fault and no probe stands for: answers to a reading.
const EITHER: &str = "still-either";
const NEITHER: &str = "neither-of-them";

// Which fault

/// Tells what a fault shows, the look of it first, until that is enough to name it.
fn until_named(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let Some(fault) = dice.pick(&world.content.faults) else { return };
    for (told, (key, answer)) in shown_by(fault, world, dice, |_, _| true).into_iter().enumerate() {
        facts.set_term(key, answer);
        if told > 0 && seen(facts, world).answer.certainty() == Certainty::Named {
            return;
        }
    }
}

/// What a fault shows at every probe, in a random order after the look; of its answers only those that can be told.
pub(super) fn shown_by<'a>(
    fault: &'a Fault,
    world: &World<'a>,
    dice: &mut Dice,
    is_told: impl Fn(&str, &str) -> bool,
) -> Vec<(&'a str, &'a str)> {
    let mut probes = world.content.probes();
    if let Some(look) = probes.iter().position(|probe| probe.key == FIRST_LOOK) {
        let look = probes.remove(look);
        dice.shuffle(&mut probes);
        probes.insert(0, look);
    }
    let shown = |probe: Probe<'a>| {
        let all = fault.seen.get(probe.key).filter(|answers| answers.len() < probe.answers.len())?;
        let answers: Vec<&String> = all.iter().filter(|answer| is_told(probe.key, answer)).collect();
        Some((probe.key, dice.pick(&answers)?.as_str()))
    };
    probes.into_iter().filter_map(shown).collect()
}

/// The probe that everybody does first: what it looks like.
pub(super) const FIRST_LOOK: &str = "mark";

fn seen<'a>(facts: &'a Facts, world: &World<'a>) -> Ruling<Belief<'a>> {
    diagnose(&world.content.faults, &observed(facts, world.content))
}

fn name(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let found = seen(facts, world);
    match (found.answer.certainty(), found.answer.first()) {
        (Certainty::Named, Some((fault, _))) => Ok(found.map(|_| Answer::term(&fault.id))),
        _ => Err(CannotJudge::without(
            next_one(facts, world).answer.first().map_or(FIRST_LOOK, |best| best.probe.key),
        )),
    }
}

fn name_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let belief = seen(facts, world).answer;
    let Some((right, sure)) = belief.first() else { return Vec::new() };
    let alike = partners(right, world);
    let others =
        belief.faults.iter().skip(1).filter(|(fault, p)| *p * PLAINLY <= sure && fault.id != right.id);
    let ranked: Vec<&str> = others.map(|(fault, _)| fault.id.as_str()).collect();
    let ranked = sorted(ranked, |a, b| alike.contains(b).cmp(&alike.contains(a)));
    let slip = |id: &&str| {
        if alike.contains(id) { "look-alike-not-told-apart" } else { "does-not-fit-what-is-seen" }
    };
    ranked.into_iter().take(TEMPTS_MOST).map(|id| Tempt::term(id, slip(&id), "")).collect()
}

/// The faults that a fault is taken for.
pub(super) fn partners<'a>(fault: &Fault, world: &World<'a>) -> Vec<&'a str> {
    world.content.pairs.iter().filter_map(|pair| pair.other(&fault.id)).collect()
}

// Which probe next

/// The look of a fault, and one thing more.
fn a_first_look(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// What has been found out.
    const FOUND: usize = 2;
    let Some(fault) = dice.pick(&world.content.faults) else { return };
    for (key, answer) in shown_by(fault, world, dice, |_, _| true).into_iter().take(FOUND) {
        facts.set_term(key, answer);
    }
}

/// The probes not done, the most telling for its minutes first.
fn next_one<'a>(facts: &'a Facts, world: &World<'a>) -> Ruling<Vec<Telling<'a>>> {
    let done = observed(facts, world.content);
    let now = belief(&world.content.faults, &done);
    ranked_probes(&now, &world.content.probes(), |key| done.iter().any(|one| one.probe.key == key))
}

fn next(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    if observed(facts, world.content).is_empty() {
        return Err(CannotJudge::without(FIRST_LOOK));
    }
    let ranked = next_one(facts, world);
    let best = ranked.answer.first().ok_or_else(|| CannotJudge::without("probe"))?.probe.key;
    Ok(ranked.map(|_| Answer::term(best)))
}

fn next_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let ranked = next_one(facts, world).answer;
    let Some(best) = ranked.first() else { return Vec::new() };
    let slip = |one: &Telling<'_>| {
        if one.bits * PLAINLY <= best.bits { "all-left-answer-alike" } else { "long-for-what-it-tells" }
    };
    let poor = ranked.iter().filter(|one| one.bits_a_minute * PLAINLY <= best.bits_a_minute);
    poor.map(|one| Tempt::term(one.probe.key, slip(one), "")).collect()
}

// Which probe decides

fn a_pair(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    if let Some(pair) = dice.pick(&world.content.pairs) {
        tell_pair(facts, pair, dice);
    }
}

fn tell_pair(facts: &mut Facts, pair: &Pair, dice: &mut Dice) {
    let (one, other) = if dice.one_in(2) { (&pair.a, &pair.b) } else { (&pair.b, &pair.a) };
    facts.set_term("one_fault", one);
    facts.set_term("other_fault", other);
}

fn pair<'a>(facts: &Facts, world: &World<'a>) -> Result<(&'a Fault, &'a Fault), CannotJudge> {
    Ok((world.fault(facts.slug("one_fault")?)?, world.fault(facts.slug("other_fault")?)?))
}

fn decides(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (a, b) = pair(facts, world)?;
    Ok(deciding_probe(&world.content.pairs, &a.id, &b.id)?.map(|probe| Answer::term(&probe)))
}

fn decides_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok((a, b)) = pair(facts, world) else { return Vec::new() };
    let both = |key: &str| speaks_of(a, key) && speaks_of(b, key);
    let none = |key: &str| !speaks_of(a, key) && !speaks_of(b, key);
    let mut tempts = Vec::new();
    for probe in world.content.probes() {
        if both(probe.key) && a.seen.get(probe.key) == b.seen.get(probe.key) {
            tempts.push(Tempt::term(probe.key, "both-answer-alike", ""));
        } else if none(probe.key) {
            tempts.push(Tempt::term(probe.key, "tells-of-neither", ""));
        }
    }
    tempts
}

// What a probe says

/// A pair, and a probe with an answer: mostly the one that decides, sometimes one that both or neither would give.
fn a_pair_and_a_probe(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    a_pair(facts, world, dice);
    let Ok((a, b)) = pair(facts, world) else { return };
    let mut apart = Vec::new();
    let mut open = Vec::new();
    for probe in
        world.content.probes().into_iter().filter(|probe| speaks_of(a, probe.key) && speaks_of(b, probe.key))
    {
        for answer in probe.answers {
            match fault::read(a, b, &Observation { probe, answer }).answer {
                Reading::Is(_) if separates(a, b, probe.key) => apart.push((probe.key, answer)),
                Reading::Is(_) => {}
                Reading::Either | Reading::Neither => open.push((probe.key, answer)),
            }
        }
    }
    /// One card in so many has an answer that decides nothing.
    const OPEN_ONE_IN: u32 = 3;
    let from = if dice.one_in(OPEN_ONE_IN) && !open.is_empty() { open } else { apart };
    if let Some((key, answer)) = dice.pick(&from) {
        facts.set_term(key, answer);
    }
}

fn reads(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (a, b) = pair(facts, world)?;
    let told = observed(facts, world.content);
    let first = told.first().ok_or_else(|| {
        let probe = deciding_probe(&world.content.pairs, &a.id, &b.id);
        probe.map_or_else(|cannot| cannot, |probe| CannotJudge::without(&probe.answer))
    })?;
    Ok(fault::read(a, b, first).map(|reading| match reading {
        Reading::Is(fault) => Answer::term(&fault.id),
        Reading::Either => Answer::term(EITHER),
        Reading::Neither => Answer::term(NEITHER),
    }))
}

fn reads_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok((a, b)) = pair(facts, world) else { return Vec::new() };
    let told = observed(facts, world.content);
    let shows = |fault: &Fault| told.iter().all(|one| agrees(fault, one.probe.key, one.answer));
    let slip = |fault: &Fault| if shows(fault) { "both-show-this" } else { "this-one-does-not-show-it" };
    vec![
        Tempt::term(&a.id, slip(a), ""),
        Tempt::term(&b.id, slip(b), ""),
        Tempt::term(EITHER, "probe-has-decided", "time-lost"),
        Tempt::term(NEITHER, "one-of-them-shows-it", "time-lost"),
    ]
}

// Causes

/// Causes of the fault, and of those that it is taken for or of others.
fn causes(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    /// Of each kind.
    const EACH: usize = 3;
    let Ok(fault) = facts.slug("fault").and_then(|id| world.fault(id)) else { return Vec::new() };
    let alike: Vec<&Fault> =
        partners(fault, world).into_iter().filter_map(|id| world.content.fault(id)).collect();
    let mut own: Vec<&str> = fault.causes.iter().map(String::as_str).collect();
    let foreign = |faults: &[&'_ Fault]| -> Vec<String> {
        let all = faults.iter().flat_map(|one| &one.causes);
        all.filter(|cause| !can_cause(fault, cause).answer).cloned().collect()
    };
    let mut taken = foreign(&alike);
    dice.shuffle(&mut own);
    dice.shuffle(&mut taken);
    taken.truncate(EACH);
    let mut others = foreign(&world.content.faults.iter().collect::<Vec<_>>());
    dice.shuffle(&mut others);
    others.truncate(EACH - taken.len());
    let own = own.into_iter().take(EACH).map(|cause| Item::new(cause, "cause-overlooked"));
    let taken = taken.iter().map(|cause| Item::new(cause, "cause-of-its-look-alike"));
    let others = others.iter().map(|cause| Item::new(cause, "cause-of-another-fault"));
    own.chain(taken).chain(others).collect()
}

fn causes_it(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    Ok(can_cause(world.fault(facts.slug("fault")?)?, slug))
}

// Rework

fn a_fault_with_a_cure(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let cured: Vec<&Fault> = world.content.faults.iter().filter(|fault| fault.cure.is_some()).collect();
    if let Some(fault) = dice.pick(&cured) {
        facts.set_term("fault", &fault.id);
    }
}

/// The answer that stands for the rework of a fault: its words are those of the fault.
pub(super) fn rework_of(fault: &Fault) -> Answer {
    Answer::Term(format!("{}.fix", fault.id))
}

/// The slug of an answer that is one term.
pub(super) fn slug(answer: Answer) -> Option<String> {
    if let Answer::Term(slug) = answer { Some(slug) } else { None }
}

fn mends(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let fault = world.fault(facts.slug("fault")?)?;
    Ok(remedy(fault).map(|_| rework_of(fault)))
}

/// The rework of faults with another cure, of its look-alikes before others.
pub(super) fn mends_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(fault) = facts.slug("fault").and_then(|id| world.fault(id)) else { return Vec::new() };
    let other = |one: &&Fault| one.cure.is_some() && one.cure != fault.cure && one.severity != fault.severity;
    let tempt = |one: &Fault| Tempt {
        answer: rework_of(one),
        slip: rework_slip(fault, one, world),
        after: after_rework(one.severity, fault.severity),
    };
    world.content.faults.iter().filter(other).map(tempt).collect()
}

/// The rework of a fault that this one is taken for.
pub(super) const OF_LOOK_ALIKE: &str = "rework-of-its-look-alike";

/// The misconception behind doing the rework of another fault.
pub(super) fn rework_slip(fault: &Fault, done: &Fault, world: &World<'_>) -> &'static str {
    if partners(fault, world).contains(&done.id.as_str()) { OF_LOOK_ALIKE } else { "rework-of-another-fault" }
}

/// What follows from a rework that is not the one a fault needs.
pub(super) fn after_rework(done: Rework, needed: Rework) -> &'static str {
    match done.cmp(&needed) {
        Ordering::Less => TOO_SMALL,
        Ordering::Greater => TOO_LARGE,
        Ordering::Equal => MISDIRECTED,
    }
}
