//! Two-part materials: hardener by measure and by weight, a wrong dose, pot life in a warm room, and what stands ready.

use super::mix::tempt_volume;
use crate::bench::Facts;
use crate::bench::mixing::{told_density, told_volume};
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{MINUTES_AN_HOUR, Measure, Unit};
use crate::rules::drying::factors::uncapped;
use crate::rules::hazard::isocyanate::{Hardener, HardenerGuard, guards};
use crate::rules::mixing::{HardenerDose, grams, hardener_dose, hardener_for, pot_life_in, volume, weight};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] =
    &[&HARDENER_MEASURE, &HARDENER_WEIGHT, &HARDENER_DOSE, &POT_LIFE_WARM, &HARDENER_GUARDS];

/// How much hardener? Misconceptions: a part is a share of the whole mix; a part is ten percent; parts upside down.
const HARDENER_MEASURE: Question = Question {
    id: "hardener-measure",
    settle: whole_parts,
    ask: Ask::Number { answer: measured, tempt: measured_tempts, unit: Unit::Millilitre },
    after: After::is("hardener-off"),
};

/// How many grams of hardener? Misconceptions: a millilitre weighs a gram; parts by volume weighed as they are.
const HARDENER_WEIGHT: Question = Question {
    id: "hardener-weight",
    settle: whole_parts,
    ask: Ask::Number { answer: weighed, tempt: weighed_tempts, unit: Unit::Gram },
    after: After::is("hardener-off"),
};

/// Is the dose right, and what mends it? Misconceptions: a little more cures faster; thinner makes it up; time does.
const HARDENER_DOSE: Question = Question {
    id: "hardener-dose",
    settle: some_dose,
    ask: Ask::One { answer: dose, tempt: dose_tempts },
    after: After::is("hardener-off"),
};

/// How long does the mix last in this room? Misconceptions: the lid tells it for every room; cold stretches it.
const POT_LIFE_WARM: Question = Question {
    id: "pot-life-warm",
    settle: keep,
    ask: Ask::Number { answer: lasts, tempt: lasts_tempts, unit: Unit::Minute },
    after: After::is("time-lost").above("mix-set"),
};

/// What stands ready before the hardener is opened? Misconceptions: a cartridge, good draw, no smell or a short job
/// stand in for supplied air.
const HARDENER_GUARDS: Question = Question {
    id: "hardener-guards",
    settle: keep,
    ask: Ask::All { items: guard_items, holds: guard_holds },
    after: After::is("breathed-in"),
};

/// The base comes to whole tens for each of its parts, so that a dose can be read off the cup.
fn whole_parts(facts: &mut Facts, _: &World<'_>, _: &mut Dice) {
    /// Millilitres.
    const MARK: f64 = 10.0;
    if let (Ok(base), Ok(parts)) = (facts.number("base_ml"), facts.number("parts_base")) {
        let each = libm::round(base / parts / MARK).max(1.0) * MARK;
        facts.set("base_ml", each * parts);
    }
}

/// Parts of base and of hardener.
fn parts(facts: &Facts) -> Result<(f64, f64), CannotJudge> {
    Ok((facts.number("parts_base")?, facts.number("parts_hardener")?))
}

fn measured(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let (base, hardener) = parts(facts)?;
    Ok(hardener_for(told_volume(facts, "base_ml")?, base, hardener)?.map(volume))
}

fn measured_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    /// Parts of a ten-part dipstick.
    const PARTS_IN_TEN: f64 = 10.0;
    let (Ok(base), Ok((of_base, of_hardener))) = (facts.number("base_ml"), parts(facts)) else {
        return Vec::new();
    };
    vec![
        tempt_volume(base * of_hardener / (of_base + of_hardener), "part-of-the-whole"),
        tempt_volume(base * of_hardener / PARTS_IN_TEN, "a-part-is-ten-percent"),
        tempt_volume(base * of_base / of_hardener, "hardener-upside-down"),
    ]
}

fn weighed(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let (base, hardener) = parts(facts)?;
    let wanted = hardener_for(told_volume(facts, "base_ml")?, base, hardener)?;
    let weighed = weight(wanted.answer, told_density(facts, "hardener_kg_l")?);
    Ok(weighed.map(grams).resting_on(&wanted))
}

fn weighed_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(right), Ok(density)) = (measured(facts, world), facts.number("hardener_kg_l")) else {
        return Vec::new();
    };
    let ml = right.answer.value;
    let heavy = |value: f64, slip| Tempt::number(Measure::new(value, Unit::Gram, 1), slip);
    let mut tempts = vec![heavy(ml, "a-millilitre-is-a-gram"), heavy(ml / density, "density-upside-down")];
    if let Ok((of_base, of_hardener)) = parts(facts) {
        tempts.push(heavy(ml * density * of_base / (of_base + of_hardener), "part-of-the-whole"));
    }
    tempts
}

/// The hardener as somebody measured it: right, a little off, or off by one of the usual slips.
fn some_dose(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Shares of the right dose that are met in a shop: common practice, no source.
    const DOSES: [f64; 8] = [0.5, 0.8, 0.9, 1.0, 1.0, 1.1, 1.2, 2.0];
    whole_parts(facts, world, dice);
    if let (Ok(right), Some(share)) = (measured(facts, world), dice.pick(&DOSES)) {
        facts.set("hardener_ml", right.answer.value * share);
    }
}

fn dose(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (base, hardener) = (told_volume(facts, "base_ml")?, told_volume(facts, "hardener_ml")?);
    Ok(hardener_dose(base, hardener, parts(facts)?, world.sheet)?.map(|dose| Answer::term(dose.slug())))
}

fn dose_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(HardenerDose::Right.slug(), "dose-near-enough", ""),
        Tempt::term(HardenerDose::Over.slug(), "dose-taken-for-over", ""),
        Tempt::term(HardenerDose::Under.slug(), "dose-taken-for-under", ""),
        Tempt::term("dose-thin-more", "thinner-for-hardener", ""),
        Tempt::term("dose-wait-longer", "time-for-hardener", ""),
    ]
}

fn lasts(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    Ok(pot_life_in(facts.hours("pot_life_h")?, facts.celsius("air_c")?, world.sheet)
        .map(|life| minutes(life.get())))
}

/// A number of hours in whole minutes.
fn minutes(hours: f64) -> Measure {
    Measure::new(hours * MINUTES_AN_HOUR, Unit::Minute, 0)
}

fn lasts_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(stated), Ok(air)) = (facts.number("pot_life_h"), facts.celsius("air_c")) else {
        return Vec::new();
    };
    let hours = |value: f64, slip| Tempt::number(minutes(value), slip);
    let (factor, ten_degrees) = (uncapped(air, world.sheet), world.sheet.get(Setting::ColdFactor));
    vec![
        hours(stated, "pot-life-in-every-room"),
        hours(stated * factor.max(1.0), "cold-stretches-pot-life"),
        hours(stated / factor.min(1.0), "warmth-stretches-pot-life"),
        hours(stated / ten_degrees, "ten-degrees-for-any"),
    ]
}

/// Things that somebody wants to have ready: some that are needed, some that stand in for nothing.
fn guard_items(facts: &Facts, _: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    /// Of each kind.
    const EACH: usize = 3;
    let free = facts.term("hardener") == Ok(Hardener::NoIsocyanate);
    let slip = |guard| match guard {
        HardenerGuard::SuppliedAir | HardenerGuard::BystandersOut | HardenerGuard::Medical if free => {
            "asked-of-isocyanate"
        }
        HardenerGuard::SheetsRead => "sheet-read-later",
        HardenerGuard::SuppliedAir | HardenerGuard::FreshCartridge => "cartridge-for-supplied-air",
        HardenerGuard::Medical | HardenerGuard::SkinCovered => "hardener-only-breathed",
        HardenerGuard::BystandersOut | HardenerGuard::ShortJob => "short-job-is-safe",
        HardenerGuard::StrongDraw => "draw-for-respirator",
        HardenerGuard::NoSmell => "smell-warns",
    };
    let stands_in = |guard: &HardenerGuard| {
        matches!(
            guard,
            HardenerGuard::FreshCartridge
                | HardenerGuard::StrongDraw
                | HardenerGuard::NoSmell
                | HardenerGuard::ShortJob
        )
    };
    let (mut idle, mut needed): (Vec<HardenerGuard>, Vec<HardenerGuard>) =
        HardenerGuard::ALL.iter().partition(|guard| stands_in(guard));
    dice.shuffle(&mut idle);
    dice.shuffle(&mut needed);
    let drawn = needed.into_iter().take(EACH).chain(idle.into_iter().take(EACH));
    drawn.map(|guard| Item::new(guard.slug(), slip(guard))).collect()
}

fn guard_holds(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let guard = HardenerGuard::from_slug(slug).ok_or_else(|| CannotJudge::without("guard"))?;
    guards(facts.term("hardener").ok(), guard)
}
