//! What is seen on a panel: which fault, where, whether two panels have the same one, what is done about it, which stage.
//!
//! Faults, woods and colours are drawn from `content/panels.toml`: a fault that is listed there is asked about at once.

use super::fault::{MISDIRECTED, TOO_LARGE, TOO_SMALL};
use crate::bench::Facts;
use crate::card::deal::TEMPTS_MOST;
use crate::card::question::{After, Ask, Question, Tempt};
use crate::card::scene::{LEFT, PanelStage, RIGHT, WIPED, piece};
use crate::card::{Answer, Dice};
use crate::content::{Panel, World};
use crate::picture::Severity;
use crate::rules::fault::{Fault, Rework, remedy};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

pub(super) const ALL: &[&Question] = &[&PANEL_FAULT, &PANEL_POINT, &PANEL_PAIR, &PANEL_CALL, &PANEL_STAGE];

/// Which fault is on the panel? Misconceptions: its look-alike; another that shows at that stage.
const PANEL_FAULT: Question = Question {
    id: "panel-fault",
    settle: a_panel_to_name,
    ask: Ask::One { answer: fault_seen, tempt: fault_tempts },
    after: After::is(MISDIRECTED),
};

/// Where is it? Graded by the mask.
const PANEL_POINT: Question = Question {
    id: "panel-point",
    settle: a_panel_to_point_at,
    ask: Ask::Point { there: points },
    after: After::is("fault-missed"),
};

/// Do two panels have the same fault?
const PANEL_PAIR: Question = Question {
    id: "panel-pair",
    settle: two_panels,
    ask: Ask::One { answer: pair_seen, tempt: pair_tempts },
    after: After::is(MISDIRECTED),
};

/// What is done about it? Misconceptions: more than cures it, less than cures it.
const PANEL_CALL: Question = Question {
    id: "panel-call",
    settle: a_panel_to_judge,
    ask: Ask::One { answer: call, tempt: call_tempts },
    after: After::is(MISDIRECTED),
};

/// Which stage of the work is it? Misconceptions: the one before, the one after.
const PANEL_STAGE: Question = Question {
    id: "panel-stage",
    settle: a_stage,
    ask: Ask::One { answer: stage_seen, tempt: stage_tempts },
    after: After::is("stage-misread"),
};

// Panels

/// Wood, colour, amount and chance of a panel that shows a fault.
pub(super) fn show(facts: &mut Facts, panel: &Panel, dice: &mut Dice) {
    let Some(look) = dice.pick(&panel.looks) else { return };
    let wanted = dice.pick(&Severity::ALL).copied().unwrap_or(Severity::Plain);
    facts.set_term("panel_look", look);
    facts.set_term("panel_amount", panel.seen(look, wanted).slug());
    if let Some(finish) = dice.pick(&panel.finishes) {
        facts.set_term("panel_stage", PanelStage::of(*finish).slug());
    }
    if let Some(dress) = dice.pick(&panel.dresses) {
        facts.set_term("panel_dress", dress);
    }
}

/// One panel in so many has a fault that looks like another until something is done to tell them apart.
const TWINS_ONE_IN: u32 = 5;

/// A fault of some panels, shown on one.
pub(super) fn a_spoiled_panel<'a>(
    panels: impl Iterator<Item = &'a Panel>,
    facts: &mut Facts,
    dice: &mut Dice,
) -> Option<&'a Panel> {
    let (twins, others): (Vec<&Panel>, Vec<&Panel>) = panels.partition(|panel| !panel.twins.is_empty());
    let from = if dice.one_in(TWINS_ONE_IN) { &twins } else { &others };
    let panel = dice.pick(from).copied()?;
    facts.set_term("fault", &panel.fault);
    show(facts, panel, dice);
    Some(panel)
}

fn a_panel_to_name(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let Some(panel) = a_spoiled_panel(world.content.panels.iter(), facts, dice) else { return };
    // Only what looks the same until it is wiped has to be wiped.
    if panel.twins.is_empty() {
        facts.0.remove(WIPED);
    } else {
        facts.set_term(WIPED, "yes");
    }
}

fn a_panel_to_point_at(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let local: Vec<&Panel> = world.content.panels.iter().filter(|panel| panel.points).collect();
    let Some(panel) = dice.pick(&local) else { return };
    facts.set_term("fault", &panel.fault);
    show(facts, panel, dice);
    // A severe one may cover the face, and then there is nothing to point at.
    if facts.term("panel_amount").is_ok_and(|amount: Severity| amount == Severity::Severe) {
        facts.set_term("panel_amount", Severity::Plain.slug());
    }
}

/// One panel in so many is clean.
const CLEAN_ONE_IN: u32 = 5;

fn a_panel_to_judge(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let plain: Vec<&Panel> = world.content.panels.iter().filter(|panel| panel.twins.is_empty()).collect();
    let Some(panel) = dice.pick(&plain) else { return };
    show(facts, panel, dice);
    if dice.one_in(CLEAN_ONE_IN) {
        facts.0.remove("fault");
    } else {
        facts.set_term("fault", &panel.fault);
    }
}

/// Two panels of one wood and colour: a fault and its look-alike, the same fault twice, or one of them clean.
fn two_panels(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let content = world.content;
    let drawn = |id: &str| content.panel(id);
    let pairs: Vec<(&Panel, &Panel)> = content
        .pairs
        .iter()
        .filter_map(|pair| Some((drawn(&pair.a)?, drawn(&pair.b)?)))
        .filter(|(a, b)| !a.twins.contains(&b.fault) && share_a_panel(a, b))
        .collect();
    let Some((a, b)) = dice.pick(&pairs).copied() else { return };
    let (left, right) = if dice.one_in(2) { (a, b) } else { (b, a) };
    let both = Panel {
        looks: left.looks.iter().filter(|look| right.looks.contains(look)).cloned().collect(),
        dresses: left.dresses.iter().filter(|dress| right.dresses.contains(dress)).cloned().collect(),
        finishes: left.finishes.iter().filter(|one| right.finishes.contains(one)).copied().collect(),
        slight: left.slight.iter().filter(|look| right.slight.contains(look)).cloned().collect(),
        ..left.clone()
    };
    show(facts, &both, dice);
    let (one, other) = match dice.below(4) {
        0 => (Some(left), Some(left)),
        1 => (Some(left), None),
        2 => (None, Some(right)),
        _ => (Some(left), Some(right)),
    };
    for (key, panel) in [(LEFT, one), (RIGHT, other)] {
        match panel {
            Some(panel) => facts.set_term(key, &panel.fault),
            None => drop(facts.0.remove(key)),
        }
    }
}

/// Whether two faults can be shown on one and the same panel, so that nothing but the fault differs.
fn share_a_panel(a: &Panel, b: &Panel) -> bool {
    a.finishes.iter().any(|finish| b.finishes.contains(finish))
        && a.looks.iter().any(|look| b.looks.contains(look))
        && a.dresses.iter().any(|dress| b.dresses.contains(dress))
}

fn a_stage(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let open: Vec<&str> = world
        .content
        .looks
        .iter()
        .filter(|look| look.species.telegraphs)
        .map(|look| look.slug.as_str())
        .collect();
    if let Some(look) = dice.pick(&open) {
        facts.set_term("panel_look", look);
    }
    facts.set_term("panel_dress", STAGED);
    if let Some(stage) = dice.pick(PanelStage::ALL) {
        facts.set_term("panel_stage", stage.slug());
    }
}

/// Stained, filled, coloured: the colours in which each stage differs from the one before.
const STAGED: &str = "staged";

// Which fault

fn fault<'a>(facts: &Facts, world: &World<'a>) -> Result<&'a Fault, CannotJudge> {
    world.fault(facts.slug("fault")?)
}

fn fault_seen(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let fault = fault(facts, world)?;
    let twins = world.content.panel(&fault.id).is_some_and(|panel| !panel.twins.is_empty());
    if twins && !facts.yes(WIPED)? {
        return Err(CannotJudge::without(WIPED));
    }
    Ok(Ruling::by("fault.named-by-what-is-seen", Answer::term(&fault.id)))
}

/// Named for its look-alike, against what is seen.
pub(super) const LOOKS_ALIKE: &str = "look-alike-on-the-panel";
/// Named for something that looks otherwise.
pub(super) const UNLIKE: &str = "does-not-fit-the-panel";

/// Look-alikes first, then others that can be drawn; twins only where they have been wiped.
pub(super) fn fault_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(right) = fault(facts, world) else { return Vec::new() };
    let alike = super::fault::partners(right, world);
    let others = world.content.panels.iter().filter(|panel| panel.fault != right.id);
    let mut others: Vec<&str> = others.map(|panel| panel.fault.as_str()).collect();
    // Which of the rest are offered goes by the piece, so that none of them is always there.
    let first = piece(facts) % others.len().max(1);
    others.rotate_left(first);
    let (alike, others): (Vec<&str>, Vec<&str>) = others.into_iter().partition(|id| alike.contains(id));
    let tempt = |slip: &'static str| move |id: &str| Tempt::term(id, slip, "");
    let alike = alike.into_iter().map(tempt(LOOKS_ALIKE));
    alike.chain(others.into_iter().map(tempt(UNLIKE))).take(TEMPTS_MOST).collect()
}

// Where

fn points(facts: &Facts, world: &World<'_>) -> Judged<()> {
    fault(facts, world).map(|_| Ruling::by("fault.named-by-what-is-seen", ()))
}

// Two panels

const SAME: &str = "same-fault";
const DIFFERENT: &str = "different-faults";
const LEFT_ONLY: &str = "left-only";
const RIGHT_ONLY: &str = "right-only";

fn pair_seen(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let answer = match (facts.maybe_slug(LEFT), facts.maybe_slug(RIGHT)) {
        (Some(left), Some(right)) if left == right => SAME,
        (Some(_), Some(_)) => DIFFERENT,
        (Some(_), None) => LEFT_ONLY,
        (None, Some(_)) => RIGHT_ONLY,
        (None, None) => return Err(CannotJudge::without("fault")),
    };
    Ok(Ruling::by("fault.named-by-what-is-seen", Answer::term(answer)))
}

/// What goes wrong depends on what is there: two faults, one fault twice, or one panel without any.
fn pair_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let right = pair_seen(facts, world).map(|ruling| ruling.answer).ok();
    let both = [SAME, DIFFERENT].into_iter().any(|slug| right == Some(Answer::term(slug)));
    let (same, different, one) = if both {
        let overlooked = ("fault-overlooked", "fault-missed");
        (("look-alikes-taken-for-one", ""), ("seed-taken-for-fault", ""), overlooked)
    } else {
        let reworked = ("sound-panel-called-spoiled", TOO_LARGE);
        (reworked, reworked, ("fault-on-the-other-panel", "fault-missed"))
    };
    let answers = [(SAME, same), (DIFFERENT, different), (LEFT_ONLY, one), (RIGHT_ONLY, one)];
    answers.into_iter().map(|(slug, (slip, after))| Tempt::term(slug, slip, after)).collect()
}

// What is done

const ACCEPT: &str = "accept-as-is";

fn answer_of(rework: Rework) -> &'static str {
    match rework {
        Rework::Rub => "rub-or-polish",
        Rework::Local => "level-and-recoat",
        Rework::Face => "recoat-the-face",
        Rework::Strip => "strip-it",
    }
}

fn call(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let Some(id) = facts.maybe_slug("fault") else {
        return Ok(Ruling::by("fault.clean-is-accepted", Answer::term(ACCEPT)));
    };
    Ok(remedy(world.fault(id)?).map(|remedy| Answer::term(answer_of(remedy.rework))))
}

fn call_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let wanted = facts.maybe_slug("fault").and_then(|id| world.fault(id).ok()).map(|fault| fault.severity);
    let tempt = |rework: Rework| {
        let (slip, after) = match wanted {
            Some(wanted) if rework < wanted => ("too-little-to-cure", TOO_SMALL),
            Some(_) => ("more-than-it-needs", TOO_LARGE),
            None => ("clean-panel-reworked", TOO_LARGE),
        };
        Tempt::term(answer_of(rework), slip, after)
    };
    let reworks = [Rework::Rub, Rework::Local, Rework::Face, Rework::Strip].into_iter().map(tempt);
    std::iter::once(Tempt::term(ACCEPT, "fault-overlooked", "fault-missed")).chain(reworks).collect()
}

// Which stage

fn stage_seen(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let stage: PanelStage = facts.term("panel_stage")?;
    Ok(Ruling::by("order.stage-by-its-surface", Answer::term(stage.slug())))
}

fn stage_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let Ok(right) = facts.term::<PanelStage>("panel_stage") else { return Vec::new() };
    let slip = |stage: PanelStage| if stage < right { "stage-before" } else { "stage-after" };
    PanelStage::ALL.iter().map(|stage| Tempt::term(stage.slug(), slip(*stage), "")).collect()
}
