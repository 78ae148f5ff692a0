//! Errors made on bare wood and with cloths.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::job::Condition;
use super::manner::Manner;
use super::operation::{COATS, LAID, Operation};
use super::plan::Told;
use super::view::View;
use crate::rules::sheet::Setting;
use crate::rules::term::Coating;
use crate::rules::verdict::CannotJudge;
use crate::rules::wood::{Fit, WoodTrouble, fit_to_finish};

pub(super) const RULES: &[Rule] = &[
    (OrderError::ScratchesUnderStain, scratches),
    (OrderError::GlueUnchecked, glue_unchecked),
    (OrderError::GrainNotRaised, grain_not_raised),
    (OrderError::WaxyTackCloth, waxy_cloth),
    (OrderError::PolishUnderCoat, polish_under_coat),
    (OrderError::SandedTooFine, too_fine),
    (OrderError::OilyWoodUnsealed, oily_wood),
    (OrderError::MoistureOutsideBand, moisture),
    (OrderError::ColourCarriedOver, carried_colour),
    (OrderError::SiliconeUnderCoat, silicone),
    (OrderError::OldOilUnderCoat, old_oil),
    (OrderError::BleedsThroughColour, bleeds_through),
];

/// The last sanding before colour or coat left scratches.
fn scratches(view: &View<'_>) -> Shape {
    let end = view.first(LAID).map_or(usize::MAX, |laid| laid.at);
    let Some(last) = view.before(end, &[Operation::Sand]) else { return Ok(Vec::new()) };
    let bad = last.is(Manner::GritSkipped)? || last.is(Manner::AcrossGrain)?;
    Ok(bad.then_some(last.at).into_iter().collect())
}

fn glue_unchecked(view: &View<'_>) -> Shape {
    let stain = view.first(&[Operation::Stain]);
    Ok(stain
        .filter(|stain| view.lacks_before(stain.at, Operation::GlueCheck))
        .map(|stain| stain.at)
        .into_iter()
        .collect())
}

/// Only water raises the grain: alcohol and fast solvent dyes may go on dry-sanded wood.
fn grain_not_raised(view: &View<'_>) -> Shape {
    let Some(stain) = view.first(&[Operation::Stain]) else { return Ok(Vec::new()) };
    let raised = stain.is(Manner::WaterDye)? && view.lacks_before(stain.at, Operation::Damp);
    Ok(raised.then_some(stain.at).into_iter().collect())
}

/// Heavy wiping with a waxy cloth; before water-borne coats any tack cloth.
fn waxy_cloth(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for clean in view.all(&[Operation::CleanOff]) {
        let any = view.job.coating == Coating::WaterBorne && clean.is(Manner::TackCloth)?;
        if (any || clean.is(Manner::HeavyTack)?) && view.after(clean.at, COATS).is_some() {
            found.push(clean.at);
        }
    }
    Ok(found)
}

/// A repair coat over polish wants a solvent wash first.
fn polish_under_coat(view: &View<'_>) -> Shape {
    let spoils = |polish: &super::view::Placed<'_>| {
        view.after(polish.at, COATS)
            .is_some_and(|coat| view.lacks_between(polish.at, coat.at, Operation::SolventWipe))
    };
    Ok(view.all(&[Operation::Polish]).filter(spoils).map(|polish| polish.at).collect())
}

/// Finer than the sheet's last grit.
fn too_fine(view: &View<'_>) -> Shape {
    let finest = view.sheet.get(Setting::LastGrit);
    let mut found = Vec::new();
    for sand in view.all(&[Operation::Sand]) {
        match sand.step.grit {
            Told::Is(grit) if f64::from(grit) > finest => found.push(sand.at),
            Told::Untold => return Err(CannotJudge::without("last_grit")),
            _ => {}
        }
    }
    Ok(found)
}

/// No solvent wipe before the first coat, or an oil-cured coat with no barrier under it.
fn oily_wood(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    if !view.part.is_oily() {
        return Ok(found);
    }
    if let Some(coat) = view.first(COATS)
        && view.lacks_before(coat.at, Operation::SolventWipe)
    {
        found.push(coat.at);
    }
    let mut barrier = false;
    for coat in view.all(COATS) {
        if coat.is(Manner::OilCured)? && !barrier && !found.contains(&coat.at) {
            found.push(coat.at);
        }
        barrier = barrier || coat.is(Manner::Barrier)?;
    }
    Ok(found)
}

fn moisture(view: &View<'_>) -> Shape {
    let Some(first) = view.first(LAID) else { return Ok(Vec::new()) };
    match view.part.moisture {
        Told::Is(moisture) if fit_to_finish(moisture, view.sheet).answer != Fit::Accept => Ok(vec![first.at]),
        Told::Untold => Err(CannotJudge::without("moisture")),
        _ => Ok(Vec::new()),
    }
}

/// Dust wiped across, or a wet first coat on a bleeding wood beside another.
fn carried_colour(view: &View<'_>) -> Shape {
    let bleeds = |part: &super::job::Part| part.has(WoodTrouble::Bleeding) || part.has(WoodTrouble::Oily);
    let beside = view.job.parts.len() > 1 || view.job.is_bound();
    let pale = view.job.is_bound() || view.job.parts.iter().any(|part| !bleeds(part));
    let mut found = Vec::new();
    if !(bleeds(view.part) && beside && pale) {
        return Ok(found);
    }
    for sand in view.all(&[Operation::Sand]) {
        if sand.is(Manner::DustAcross)? {
            found.push(sand.at);
        }
    }
    if let Some(coat) = view.first(COATS)
        && coat.is(Manner::Heavy)?
    {
        found.push(coat.at);
    }
    Ok(found)
}

/// What lies on a part is washed off before its first coat.
fn unwashed(view: &View<'_>, lies: Condition) -> Vec<usize> {
    let coat = view.first(COATS).filter(|_| view.part.lies(lies));
    coat.filter(|coat| view.lacks_before(coat.at, Operation::SolventWipe))
        .map(|coat| coat.at)
        .into_iter()
        .collect()
}

fn silicone(view: &View<'_>) -> Shape {
    Ok(unwashed(view, Condition::Silicone))
}

fn old_oil(view: &View<'_>) -> Shape {
    Ok(unwashed(view, Condition::OldOil))
}

/// The first coat on a bleeding wood, where light colour comes over it and no barrier lies between.
fn bleeds_through(view: &View<'_>) -> Shape {
    let Some(colour) = view.first(&[Operation::Colour]).filter(|_| view.part.wants_barrier()) else {
        return Ok(Vec::new());
    };
    for coat in view.all(COATS).filter(|coat| coat.at < colour.at) {
        if coat.is(Manner::Barrier)? {
            return Ok(Vec::new());
        }
    }
    Ok(view.first(COATS).map(|first| first.at).into_iter().collect())
}
