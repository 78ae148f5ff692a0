//! Hazard: air through a booth, air that dilutes vapour, sum of a mixture. Figures for training: local code, the data
//! sheet and licensed practice overrule them.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{
    AirFlow, Hours, MINUTES_AN_HOUR, ML_A_LITRE, MM_A_METRE, Measure, MetresPerSecond, Millilitres,
    Millimetres, PartsPerMillion, Unit,
};
use crate::rules::hazard::booth_air;
use crate::rules::hazard::dilution::{self, Dilution};
use crate::rules::hazard::exposure::{self, Reading};
use crate::rules::term::{Provenance, Term};
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Calculation] = &[&BOOTH_AIR, &DILUTION_AIR, &EXPOSURE_SUM];

const BOOTH_AIR: Calculation = Calculation {
    name: "booth-air",
    needs: &[Needs::must("width_m"), Needs::must("height_m"), Needs::must("velocity_m_s")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::CubicMetrePerMinute },
        Gives::Number { key: "flow_ft3_min", unit: Unit::CubicFootPerMinute },
        Gives::Number { key: "velocity_ft_min", unit: Unit::FootPerMinute },
    ],
    run: booth_flow,
};

const DILUTION_AIR: Calculation = Calculation {
    name: "dilution-air",
    needs: &[Needs::must("solvent"), Needs::must("litres"), Needs::may("minutes")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::CubicMetre },
        Gives::Number { key: "air_ft3", unit: Unit::CubicFoot },
        Gives::Number { key: "lel", unit: Unit::Percent },
        Gives::Number { key: "by_table", unit: Unit::CubicMetre },
        Gives::Number { key: "flow", unit: Unit::CubicMetrePerMinute },
        Gives::List { key: "unconfirmed" },
    ],
    run: dilution_air,
};

const EXPOSURE_SUM: Calculation = Calculation {
    name: "exposure-sum",
    needs: &[Needs::SOLVENTS],
    gives: &[
        Gives::Number { key: "sum_pel", unit: Unit::Ratio },
        Gives::Number { key: "sum_rel", unit: Unit::Ratio },
        Gives::Term {
            key: "verdict",
            among: &["over-limit", "over-recommended", "within-averages", "within-limits"],
        },
        Gives::Term {
            key: "ceilings",
            among: &["no-ceiling", "ceiling-not-shown", "ceiling-kept", "ceiling-passed"],
        },
        Gives::List { key: "over" },
        Gives::List { key: "over_ceiling" },
        Gives::List { key: "has_ceiling" },
        Gives::List { key: "missing" },
        Gives::List { key: "without_rel" },
        Gives::List { key: "rel_in_mg" },
        Gives::List { key: "unconfirmed" },
    ],
    run: exposure_sum,
};

fn metres(facts: &Facts, key: &str) -> Result<Millimetres, CannotJudge> {
    Millimetres::new(facts.number(key)? * MM_A_METRE).map_err(|_| CannotJudge::without(key))
}

/// The air speed that is told.
pub(crate) fn told_speed(facts: &Facts, key: &str) -> Result<MetresPerSecond, CannotJudge> {
    MetresPerSecond::new(facts.number(key)?).map_err(|_| CannotJudge::without(key))
}

/// The liquid that is told, in litres.
pub(crate) fn told_litres(facts: &Facts, key: &str) -> Result<Millilitres, CannotJudge> {
    Millilitres::new(facts.number(key)? * ML_A_LITRE).map_err(|_| CannotJudge::without(key))
}

/// Least air through the face that is told.
pub(crate) fn told_least_flow(facts: &Facts, world: &World<'_>) -> Judged<AirFlow> {
    Ok(booth_air::least_flow(metres(facts, "width_m")?, metres(facts, "height_m")?, world.sheet))
}

/// Air through the face that is told.
pub(crate) fn told_flow(facts: &Facts) -> Judged<AirFlow> {
    let (width, height) = (metres(facts, "width_m")?, metres(facts, "height_m")?);
    Ok(booth_air::face_flow(width, height, told_speed(facts, "velocity_m_s")?))
}

fn booth_flow(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let speed = booth_air::speed(told_speed(facts, "velocity_m_s")?);
    Ok(told_flow(facts)?.map(|air| {
        Outcome::value(booth_air::flow(air))
            .number("flow_ft3_min", booth_air::flow(air).in_unit(Unit::CubicFootPerMinute))
            .number("velocity_ft_min", speed.in_unit(Unit::FootPerMinute))
    }))
}

fn dilution_air(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let solvent = world.solvent(facts.slug("solvent")?)?;
    let found = dilution::dilution_air(solvent, told_litres(facts, "litres")?, world.sheet)?;
    let Dilution { air, lel, unconfirmed, table } = found.answer;
    let shown = booth_air::volume(air);
    let mut outcome = Outcome::value(shown)
        .number("air_ft3", shown.in_unit(Unit::CubicFoot))
        .number("lel", Measure::new(lel.get(), Unit::Percent, 1));
    let mut labels = Vec::new();
    if unconfirmed {
        labels.push("lel-from-memory".to_owned());
    }
    if let Some(table) = table {
        outcome = outcome.number("by_table", booth_air::volume(table));
        labels.push("table-from-memory".to_owned());
    }
    outcome = outcome.list("unconfirmed", labels);
    if let Some(minutes) = facts.maybe_number("minutes") {
        let time = Hours::new(minutes / MINUTES_AN_HOUR).map_err(|_| CannotJudge::without("minutes"))?;
        outcome = outcome.number("flow", booth_air::flow(dilution::flow_over(air, time)?));
    }
    Ok(found.map(|_| outcome))
}

fn exposure_sum(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let told = |slug: &str| facts.maybe_number(slug).map(PartsPerMillion::saturating);
    let readings: Vec<Reading<'_>> = world
        .content
        .solvents
        .iter()
        .filter_map(|solvent| told(&solvent.slug).map(|average| Reading { solvent, average, peak: None }))
        .collect();
    let named = |holds: fn(&Reading<'_>) -> bool| -> Vec<String> {
        readings.iter().filter(|one| holds(one)).map(|one| one.solvent.slug.clone()).collect()
    };
    let has_ceiling =
        named(|one| one.solvent.lowest_ceiling().is_some() || one.solvent.limits.rel_ceiling_mg.is_some());
    let unconfirmed = named(|one| one.solvent.limits_provenance == Provenance::Memory);
    let found = exposure::exposure_sum(&readings)?;
    Ok(found.map(|summed| {
        let mut missing = summed.without_pel;
        for slug in &summed.in_mg {
            if !missing.contains(slug) {
                missing.push(slug.clone());
            }
        }
        let ratio = |value| Measure::new(value, Unit::Ratio, 3);
        Outcome::default()
            .number("sum_pel", ratio(summed.sum_pel))
            .number("sum_rel", ratio(summed.sum_rel))
            .term("verdict", summed.verdict.map_or("cannot-be-judged", Term::slug))
            .term("ceilings", summed.ceilings.slug())
            .list("over", summed.over_pel)
            .list("over_ceiling", summed.over_ceiling)
            .list("has_ceiling", has_ceiling)
            .list("missing", missing)
            .list("without_rel", summed.without_rel)
            .list("rel_in_mg", summed.in_mg)
            .list("unconfirmed", unconfirmed)
    }))
}
