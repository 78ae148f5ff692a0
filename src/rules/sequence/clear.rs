//! Errors at the gun and with the mix.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::manner::Manner;
use super::operation::COATS;
use super::plan::{Climate, Told};
use super::view::View;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::CannotJudge;

pub(super) const RULES: &[Rule] =
    &[(OrderError::Se19, outside_climate), (OrderError::Se20, warming_work), (OrderError::Se31, old_mix)];

/// Whether the sheet's limits forbid spraying: cold, humidity, or the work too near the dew point. Retarder bridges the
/// gap between the two dew-point limits.
fn forbids(sheet: &Sheet, climate: Climate, retarder: bool) -> bool {
    let cold = sheet.get(Setting::ColdStop);
    let gap = climate.work.get() - climate.dew_point.get();
    let least = if retarder { Setting::GapRetarder } else { Setting::GapSpray };
    climate.air.get() < cold
        || climate.work.get() < cold
        || climate.humidity.get() > sheet.get(Setting::HumidityLimit)
        || gap < sheet.get(least)
}

fn outside_climate(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for coat in view.all(COATS) {
        match coat.step.climate {
            Told::Is(climate) if forbids(view.sheet, climate, coat.is(Manner::Retarder)?) => {
                found.push(coat.at)
            }
            Told::Untold => return Err(CannotJudge::without("climate")),
            _ => {}
        }
    }
    Ok(found)
}

/// Air in the pores expands and moisture gathers when cold work warms under the coat.
fn warming_work(view: &View<'_>) -> Shape {
    let mut found = Vec::new();
    for coat in view.all(COATS) {
        if coat.is(Manner::ColdWork)? || coat.is(Manner::HeatedWet)? {
            found.push(coat.at);
        }
    }
    Ok(found)
}

fn old_mix(view: &View<'_>) -> Shape {
    let life = view.sheet.get(Setting::PotLife);
    let mut found = Vec::new();
    for coat in view.all(COATS) {
        let old = match coat.step.mix_age {
            Told::Is(age) => life > 0.0 && age.get() > life,
            Told::Kept => false,
            Told::Untold => return Err(CannotJudge::without("mix_age")),
        };
        if old || coat.is(Manner::Boosted)? {
            found.push(coat.at);
        }
    }
    Ok(found)
}
