//! Inspecting: what is decided about a fault, where it can have been made, what is looked for before clear, which light.

use super::fault::{MISDIRECTED, TOO_LARGE, TOO_SMALL};
use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::{ColourPlan, Ticket, World};
use crate::rules::fault::{self, Fault, Light, Need, Surface};
use crate::rules::inspection::{self, Decision};
use crate::rules::sheet::Setting;
use crate::rules::term::{Stage, Term};
use crate::rules::verdict::{CannotJudge, Judged};
use crate::rules::wood::{FillerNeed, PoreSize, WoodTrouble, filler};

pub(super) const ALL: &[&Question] = &[&FAULT_DECISION, &WHERE_MADE, &FOUND_BEFORE_CLEAR, &WHICH_LIGHT];

/// What is decided about this fault? Misconceptions: everything rubs out; every fault means a new face; a thin film is
/// rubbed all the same.
const FAULT_DECISION: Question = Question {
    id: "fault-decision",
    settle: off_the_limits,
    ask: Ask::One { answer: decision, tempt: decision_slips },
    after: After::is(MISDIRECTED),
};

/// At which stages can it have been made? Misconception: where it shows it was made.
const WHERE_MADE: Question = Question {
    id: "where-made",
    settle: keep,
    ask: Ask::All { items: stages, holds: made_there },
    after: After::is("fault-repeated"),
};

/// Which faults does the inspection before clear look for on this ticket? Misconceptions: faults that show later are
/// seen early; faults without their cause on this job.
const FOUND_BEFORE_CLEAR: Question = Question {
    id: "found-before-clear",
    settle: keep,
    ask: Ask::All { items: before_or_after, holds: found },
    after: After::is("sealed-under-clear"),
};

/// Which light shows it? Misconceptions: bright is enough; strip lamps show on matt film what they show on gloss.
const WHICH_LIGHT: Question = Question {
    id: "which-light",
    settle: a_fault_with_a_sign,
    ask: Ask::One { answer: light, tempt: light_slips },
    after: After::is("sealed-under-clear"),
};

// Decision

fn decision(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let fault = world.fault(facts.slug("fault")?)?;
    let decided =
        inspection::decide(fault, facts.term("zone").ok(), facts.micrometres("build_um").ok(), world.sheet)?;
    Ok(decided.map(|answer| Answer::term(answer.slug())))
}

fn decision_slips(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Decision::Accept.slug(), "not-to-be-left", "fault-left-in"),
        Tempt::term(Decision::RubOut.slug(), "rubbing-does-not-cure", "cut-through-thin"),
        Tempt::term(Decision::LevelOut.slug(), "levelling-does-not-reach", "cut-through-thin"),
        Tempt::term(Decision::LevelLocally.slug(), "spot-repair-misplaced", MISDIRECTED),
        Tempt::term(Decision::ClearFirst.slug(), "more-clear-is-no-cure", "sealed-under-clear"),
        Tempt::term(Decision::RecoatFace.slug(), "whole-face-not-called-for", TOO_LARGE),
        Tempt::term(Decision::Wait.slug(), "time-is-no-cure", TOO_SMALL),
        Tempt::term(Decision::MendWood.slug(), "wood-is-sound", TOO_LARGE),
        Tempt::term(Decision::Strip.slug(), "stripping-not-called-for", TOO_LARGE),
    ]
}

/// Deals a fault that a finished clear can have, where it can lie; keeps the film off the limits, on a face and at an edge, so that rounding a
/// figure decides nothing.
fn off_the_limits(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Half of the last figure shown in either system of units, and a little.
    const NEAR_UM: f64 = 4.0;
    let cured: Vec<&Fault> = world.content.faults.iter().filter(|fault| fault.cure.is_some()).collect();
    if let Some(fault) = dice.pick(&cured) {
        facts.set_term("fault", &fault.id);
    }
    if let Some(zone) = facts.slug("fault").and_then(|id| world.fault(id)).ok().and_then(|fault| fault.lies) {
        facts.set_term("zone", zone.slug());
    }
    let (reserve, take_off) = (world.sheet.get(Setting::FilmReserve), world.sheet.get(Setting::LevelTakeOff));
    let share = if facts.maybe_slug("zone") == Some("zone-edge") { inspection::EDGE_SHARE } else { 1.0 };
    let Some(mut build) = facts.maybe_number("build_um") else { return };
    while [reserve, reserve + take_off].iter().any(|limit| (build - limit / share).abs() < NEAR_UM) {
        build += NEAR_UM;
    }
    facts.set("build_um", build);
}

// Where made

fn stages(facts: &Facts, world: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let shows = facts.slug("fault").and_then(|id| world.fault(id)).map(|fault| (fault.shows, &fault.made));
    Stage::ALL
        .iter()
        .filter(|stage| !matches!(stage, Stage::Scrape))
        .map(|stage| {
            let slip = match &shows {
                Ok((_, made)) if made.contains(stage) => "maker-overlooked",
                Ok((shows, _)) if shows == stage => "shows-is-not-made",
                _ => "stage-cannot-make-it",
            };
            Item::new(stage.slug(), slip)
        })
        .collect()
}

fn made_there(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let stage = Stage::from_slug(slug).ok_or_else(|| CannotJudge::without("stage"))?;
    Ok(fault::made_at(world.fault(facts.slug("fault")?)?, stage))
}

// Found before clear

/// What a ticket has that faults need: colour, filled and open-pored parts, woods that bleed, a catalysed mix.
fn causes(ticket: &Ticket, world: &World<'_>) -> Result<Vec<Need>, CannotJudge> {
    let mut has = Vec::new();
    for part in &ticket.parts {
        let wood = world.wood(&part.wood)?;
        if filler(wood, ticket.look).answer == FillerNeed::Yes {
            has.push(Need::Filler);
        }
        if wood.pores == PoreSize::Large {
            has.push(Need::OpenPores);
        }
        if wood.trouble.iter().any(|one| matches!(one, WoodTrouble::Bleeding | WoodTrouble::Resinous)) {
            has.push(Need::BleedingWood);
        }
    }
    match ticket.colour {
        ColourPlan::Natural => {}
        ColourPlan::Stained => has.push(Need::Stain),
        ColourPlan::Solid | ColourPlan::Transparent => has.push(Need::Colour),
    }
    if ticket.shaded {
        has.push(Need::Shade);
    }
    if world.sheet.get(Setting::PotLife) > 0.0 {
        has.push(Need::Catalyst);
    }
    Ok(has)
}

fn before_or_after(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let ticket = facts.slug("ticket").and_then(|slug| world.ticket(slug));
    let has = ticket.and_then(|ticket| causes(ticket, world)).unwrap_or_default();
    let mut plain: Vec<&Fault> =
        world.content.faults.iter().filter(|fault| fault.one_side_of_clear()).collect();
    dice.shuffle(&mut plain);
    let slip = |fault: &Fault| {
        if fault::found_before_clear(fault, &has, world.sheet).answer {
            "lies-under-the-clear"
        } else if !fault::occurs(fault, &has) {
            "no-cause-on-this-job"
        } else {
            "does-not-show-yet"
        }
    };
    plain.into_iter().map(|fault| Item::new(&fault.id, slip(fault))).collect()
}

fn found(facts: &Facts, world: &World<'_>, id: &str) -> Judged<bool> {
    let has = causes(world.ticket(facts.slug("ticket")?)?, world)?;
    Ok(fault::found_before_clear(world.fault(id)?, &has, world.sheet))
}

// Light

fn light(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let fault = world.fault(facts.slug("fault")?)?;
    let sign = fault.sign.ok_or_else(|| CannotJudge::without("fault"))?;
    let light = fault::light(sign, facts.term("surface").ok())?;
    Ok(light.map(|answer| Answer::term(answer.slug())))
}

fn light_slips(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |light: &Light| match light {
        Light::Raking => "relief-is-not-the-sign",
        Light::Strip => "mirror-needs-gloss",
        Light::Point => "point-lamp-for-lines-in-gloss",
        Light::Sample => "sample-lamp-for-colour",
    };
    Light::ALL.iter().map(|light| Tempt::term(light.slug(), slip(light), "")).collect()
}

/// A fault that one light plainly shows, on a surface on which it can be.
fn a_fault_with_a_sign(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let signed: Vec<&Fault> = world.content.faults.iter().filter(|fault| fault.sign.is_some()).collect();
    let Some(fault) = dice.pick(&signed) else { return };
    facts.set_term("fault", &fault.id);
    let first = fault.made.iter().min().copied().unwrap_or(Stage::Room).max(fault.shows);
    let surfaces: &[Surface] = match first {
        Stage::Room | Stage::Sand | Stage::Stain => Surface::ALL,
        Stage::Fill | Stage::Seal | Stage::Colour | Stage::Shade | Stage::Scrape => {
            &[Surface::Matt, Surface::Gloss]
        }
        Stage::Clear | Stage::Cure | Stage::Buff => &[Surface::Gloss],
    };
    if let Some(surface) = dice.pick(surfaces) {
        facts.set_term("surface", surface.slug());
    }
}
