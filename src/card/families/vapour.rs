//! Vapour by number: sums and averages, ceilings, explosive limits, air that dilutes, air through a booth, what a data
//! sheet's figures mean.

use crate::bench::Facts;
use crate::bench::hazard::{told_flow, told_least_flow, told_litres};
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{
    AirFlow, AirVolume, DUST, ExplosiveLimit, Fraction, Measure, PERCENT_A_WHOLE, PartsPerMillion,
    SECONDS_A_MINUTE, Unit,
};
use crate::rules::hazard::booth_air::{flow, governing_flow, volume};
use crate::rules::hazard::data_sheet::{SheetHazard, sheet_hazard};
use crate::rules::hazard::dilution::{air_for_vapour, vapour_allowed, vapour_of};
use crate::rules::hazard::exposure::{
    Breathed, SHIFT_H, average_over, ceiling_over, fire_meter, mixture, mixture_over, share_of, shift_average,
};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[
    &SUM_OF_SOLVENTS,
    &LIMITS_PASSED,
    &EIGHT_HOURS,
    &EXPLOSIVE_SHARE,
    &EXPLOSIVE_METER,
    &DILUTION,
    &BOOTH_FLOW,
    &LARGER_AIR,
    &DATA_SHEET,
];

/// What is the sum? Misconceptions: only the largest share counts; contents and limits are added before dividing.
const SUM_OF_SOLVENTS: Question = Question {
    id: "sum-of-solvents",
    settle: settle_pair,
    ask: Ask::Number { answer: sum, tempt: sum_tempts, unit: Unit::Ratio },
    after: After::is("breathed-in"),
};

/// Which limits are passed? Misconceptions: each under its own is under; a good average keeps the ceiling.
const LIMITS_PASSED: Question = Question {
    id: "limits-passed",
    settle: settle_pair,
    ask: Ask::All { items: limits, holds: passed },
    after: After::is("breathed-in"),
};

/// What is the average of 8 hours? Misconceptions: divided by the hours at work; the mean of the readings.
const EIGHT_HOURS: Question = Question {
    id: "eight-hours",
    settle: keep,
    ask: Ask::Number { answer: shift, tempt: shift_tempts, unit: Unit::PartsPerMillion },
    after: After::is("breathed-in"),
};

/// How much vapour is that share of the explosive limit? Misconceptions: the whole limit; per cent read as ppm.
const EXPLOSIVE_SHARE: Question = Question {
    id: "explosive-share",
    settle: settle_solvent,
    ask: Ask::Number { answer: allowed, tempt: allowed_tempts, unit: Unit::PartsPerMillion },
    after: After::is("breathed-in"),
};

/// What does the meter tell of breathing? Misconception: under a quarter of the explosive limit is fit to breathe.
const EXPLOSIVE_METER: Question = Question {
    id: "explosive-meter",
    settle: settle_solvent,
    ask: Ask::One { answer: metered, tempt: meter_tempts },
    after: After::is("breathed-in"),
};

/// How much air? Misconceptions: thinned to the limit itself; the share forgotten.
const DILUTION: Question = Question {
    id: "dilution-air",
    settle: settle_solvent,
    ask: Ask::Number { answer: diluting, tempt: diluting_tempts, unit: Unit::CubicMetre },
    after: After::is("booth-fire"),
};

/// How much air goes through the booth? Misconceptions: a second for a minute; the edge for the area.
const BOOTH_FLOW: Question = Question {
    id: "booth-flow",
    settle: keep,
    ask: Ask::Number { answer: through, tempt: through_tempts, unit: Unit::CubicMetrePerMinute },
    after: After::is("booth-fire"),
};

/// Which flow is needed? Misconceptions: the smaller will do; both are added.
const LARGER_AIR: Question = Question {
    id: "larger-air",
    settle: keep,
    ask: Ask::Number { answer: larger, tempt: larger_tempts, unit: Unit::CubicMetrePerMinute },
    after: After::is("booth-fire"),
};

/// Which hazards do its figures show? Misconceptions: one figure stands for all.
const DATA_SHEET: Question = Question {
    id: "data-sheet",
    settle: settle_solvent,
    ask: Ask::All { items: hazards, holds: shown },
    after: After::is("breathed-in"),
};

fn content(facts: &Facts, key: &str) -> Result<PartsPerMillion, CannotJudge> {
    PartsPerMillion::new(facts.number(key)?).map_err(|_| CannotJudge::without(key))
}

fn limit(facts: &Facts) -> Result<ExplosiveLimit, CannotJudge> {
    ExplosiveLimit::new(facts.number("lel_pct")?).map_err(|_| CannotJudge::without("lel_pct"))
}

fn ppm(value: f64) -> Measure {
    Measure::new(value, Unit::PartsPerMillion, 0)
}

fn ratio(value: f64) -> Measure {
    Measure::new(value, Unit::Ratio, 2)
}

/// Puts the limits of two solvents beside their readings.
fn settle_pair(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    for (solvent, pel, ceiling) in [("solvent_a", "pel_a", "ceiling_a"), ("solvent_b", "pel_b", "ceiling_b")]
    {
        let found = facts.slug(solvent).and_then(|slug| world.solvent(slug));
        let Ok(found) = found else { continue };
        for (key, value) in [(pel, found.limits.pel), (ceiling, found.lowest_ceiling())] {
            if facts.maybe_number(key).is_some() {
                match value {
                    Some(value) => facts.set(key, value.get()),
                    None => drop(facts.0.remove(key)),
                }
            }
        }
    }
    // A short-term reading is not under the average of the shift.
    if let (Some(peak), Some(average)) = (facts.maybe_number("peak_a"), facts.maybe_number("ppm_a")) {
        facts.set("peak_a", peak.max(average));
    }
}

/// Puts what is published of the solvent on its sheet.
fn settle_solvent(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    let Ok(solvent) = facts.slug("solvent").and_then(|slug| world.solvent(slug)) else { return };
    let vapour = told_litres(facts, "litres").and_then(|liquid| vapour_of(solvent, liquid));
    let figures = [
        ("lel_pct", solvent.lowest_confirmed_lel().map(ExplosiveLimit::get)),
        ("pel_ppm", solvent.limits.pel.map(PartsPerMillion::get)),
        ("rel_ppm", solvent.limits.rel.map(PartsPerMillion::get)),
        ("idlh_ppm", solvent.limits.idlh.map(PartsPerMillion::get)),
        ("flash_c", solvent.flash_c.map(|flash| flash.get())),
        ("vapour_m3", vapour.ok().map(AirVolume::get)),
    ];
    for (key, value) in figures {
        if facts.maybe_number(key).is_some() {
            match value {
                Some(value) => facts.set(key, value),
                None => drop(facts.0.remove(key)),
            }
        }
    }
    if facts.maybe_slug("skin").is_some() {
        facts.set_term("skin", if solvent.skin { "skin-noted" } else { "skin-not-noted" });
    }
}

/// The two readings with their limits.
fn pair(facts: &Facts) -> Result<[(PartsPerMillion, PartsPerMillion); 2], CannotJudge> {
    Ok([
        (content(facts, "ppm_a")?, content(facts, "pel_a")?),
        (content(facts, "ppm_b")?, content(facts, "pel_b")?),
    ])
}

fn sum(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    Ok(mixture(&pair(facts)?).map(ratio))
}

fn sum_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let Ok([(a, limit_a), (b, limit_b)]) = pair(facts) else { return Vec::new() };
    let (first, second) = (share_of(a, limit_a), share_of(b, limit_b));
    vec![
        Tempt::number(ratio(first.max(second)), "largest-share-alone"),
        Tempt::number(ratio((a.get() + b.get()) / (limit_a.get() + limit_b.get())), "added-before-divided"),
        Tempt::number(ratio(first * second), "shares-multiplied"),
    ]
}

fn limits(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    vec![
        Item::new("own-a", "own-limit-overlooked"),
        Item::new("own-b", "own-limit-overlooked"),
        Item::new("sum-of-both", "each-under-is-under"),
        Item::new("ceiling-of-a", "average-keeps-ceiling"),
    ]
}

fn passed(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    match slug {
        "own-a" => Ok(average_over(content(facts, "ppm_a")?, content(facts, "pel_a")?)),
        "own-b" => Ok(average_over(content(facts, "ppm_b")?, content(facts, "pel_b")?)),
        "ceiling-of-a" => Ok(ceiling_over(content(facts, "peak_a")?, content(facts, "ceiling_a")?)),
        _ => Ok(mixture_over(&pair(facts)?)),
    }
}

fn shift(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let spells = [
        (content(facts, "ppm_a")?, facts.hours("hours_a")?),
        (content(facts, "ppm_b")?, facts.hours("hours_b")?),
    ];
    Ok(shift_average(&spells)?.map(|average| ppm(average.get())))
}

fn shift_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let told = |key| facts.maybe_number(key).unwrap_or_default();
    let (a, b, hours_a, hours_b) = (told("ppm_a"), told("ppm_b"), told("hours_a"), told("hours_b"));
    vec![
        Tempt::number(ppm((a * hours_a + b * hours_b) / (hours_a + hours_b).max(DUST)), "hours-at-work"),
        Tempt::number(ppm(f64::midpoint(a, b)), "mean-of-readings"),
        Tempt::number(ppm((a * hours_a).max(b * hours_b) / SHIFT_H), "spell-left-out"),
    ]
}

fn allowed(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    Ok(vapour_allowed(limit(facts)?, world.sheet).map(|found| ppm(found.get())))
}

fn allowed_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    /// Parts per million in one per cent.
    const PPM_A_PERCENT: f64 = 10_000.0;
    let Ok(lel) = limit(facts) else { return Vec::new() };
    let whole = lel.get() * PPM_A_PERCENT;
    vec![
        Tempt::number(ppm(whole), "whole-explosive-limit"),
        Tempt::number(ppm(whole / PERCENT_A_WHOLE), "per-cent-for-ppm"),
    ]
}

fn metered(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let share = Fraction::new(facts.number("meter_pct")? / PERCENT_A_WHOLE)
        .map_err(|_| CannotJudge::without("meter_pct"))?;
    let told = fire_meter(limit(facts)?, share, content(facts, "pel_ppm")?, content(facts, "idlh_ppm")?);
    Ok(told.map(|breathed| Answer::term(breathed.slug())))
}

fn meter_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Breathed::DangerousAtOnce.slug(), "meter-misread", "time-lost"),
        Tempt::term(Breathed::OverLimit.slug(), "meter-misread", ""),
        Tempt::term(Breathed::NotShown.slug(), "meter-misread", ""),
        Tempt::term("fit-to-breathe", "fire-safe-is-breath-safe", ""),
        Tempt::term("dust-mask-for-it", "dust-filter-for-all", ""),
    ]
}

fn diluting(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let vapour = AirVolume::new(facts.number("vapour_m3")?).map_err(|_| CannotJudge::without("vapour_m3"))?;
    Ok(air_for_vapour(limit(facts)?, vapour, world.sheet).map(volume))
}

fn diluting_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let (Ok(lel), Some(vapour)) = (limit(facts), facts.maybe_number("vapour_m3")) else { return Vec::new() };
    let to_limit = AirVolume::saturating((PERCENT_A_WHOLE - lel.get()) * vapour / lel.get());
    vec![
        Tempt::number(volume(to_limit), "thinned-to-the-limit"),
        Tempt::number(volume(AirVolume::saturating(vapour * PERCENT_A_WHOLE)), "per-cent-for-ppm"),
    ]
}

fn through(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    Ok(told_flow(facts)?.map(flow))
}

fn through_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let told = |key| facts.maybe_number(key).unwrap_or_default();
    let (width, height, air) = (told("width_m"), told("height_m"), told("velocity_m_s"));
    vec![
        Tempt::number(flow(AirFlow::saturating(width * height * air)), "second-for-minute"),
        Tempt::number(flow(AirFlow::saturating((width + height) * air * SECONDS_A_MINUTE)), "edge-for-area"),
    ]
}

fn told_dilution(facts: &Facts) -> Result<AirFlow, CannotJudge> {
    AirFlow::new(facts.number("dilution_m3_min")?).map_err(|_| CannotJudge::without("dilution_m3_min"))
}

fn larger(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let face = told_least_flow(facts, world)?;
    Ok(governing_flow(face.answer, told_dilution(facts)?).resting_on(&face).map(flow))
}

fn larger_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(face), Ok(dilution)) = (told_least_flow(facts, world), told_dilution(facts)) else {
        return Vec::new();
    };
    let (face, dilution) = (face.answer.get(), dilution.get());
    vec![
        Tempt::number(flow(AirFlow::saturating(face.min(dilution))), "smaller-will-do"),
        Tempt::number(flow(AirFlow::saturating(face + dilution)), "flows-added"),
    ]
}

fn hazards(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let asked = [
        SheetHazard::LightsInRoom,
        SheetHazard::ThroughSkin,
        SheetHazard::RecommendedLower,
        SheetHazard::FireAirDangerous,
    ];
    let slip = |hazard| match hazard {
        SheetHazard::LightsInRoom => "flash-point-misread",
        SheetHazard::ThroughSkin => "skin-overlooked",
        SheetHazard::HasCeiling | SheetHazard::RecommendedLower => "law-limit-is-lowest",
        SheetHazard::FireAirDangerous => "fire-safe-is-breath-safe",
    };
    asked.iter().map(|hazard| Item::new(hazard.slug(), slip(*hazard))).collect()
}

/// The sheet tells what content holds; a figure that is not told is not looked up.
fn shown(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let hazard = SheetHazard::from_slug(slug).ok_or_else(|| CannotJudge::without("hazard"))?;
    let needs: &[&str] = match hazard {
        SheetHazard::LightsInRoom => &["flash_c", "air_c"],
        SheetHazard::RecommendedLower => &["pel_ppm", "rel_ppm"],
        SheetHazard::FireAirDangerous => &["lel_pct", "idlh_ppm"],
        SheetHazard::ThroughSkin | SheetHazard::HasCeiling => &[],
    };
    for key in needs {
        facts.number(key)?;
    }
    if hazard == SheetHazard::ThroughSkin {
        facts.slug("skin")?;
    }
    sheet_hazard(hazard, world.solvent(facts.slug("solvent")?)?, facts.celsius("air_c").ok())
}
