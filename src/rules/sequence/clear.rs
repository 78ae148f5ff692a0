//! Errors at the gun and with the mix.

use super::check::{Rule, Shape};
use super::error::OrderError;
use super::manner::Manner;
use super::operation::COATS;
use super::plan::{Climate, Told};
use super::view::View;
use crate::rules::air::{Thinner, may_spray, spray_gate};
use crate::rules::mixing::{MixUse, PotKind, mix_use};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::CannotJudge;

pub(super) const RULES: &[Rule] = &[
    (OrderError::AirOutsideWindow, outside_climate),
    (OrderError::ColdWork, warming_work),
    (OrderError::PotLifePast, old_mix),
];

/// Whether the spray gate holds the coat back, with what is in its mix.
fn forbids(sheet: &Sheet, climate: Climate, retarder: bool) -> bool {
    let gate = spray_gate(climate.air, climate.humidity, climate.work, sheet);
    let thinner = if retarder { Thinner::Retarded } else { Thinner::Fast };
    !may_spray(&gate, thinner).answer
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

/// Past the sheet's pot life, or freshened up with new material. A sheet without a pot life sprays what keeps.
fn old_mix(view: &View<'_>) -> Shape {
    let life = view.sheet.hours(Setting::PotLife);
    let kind = if life.get() > 0.0 { PotKind::TwoPart } else { PotKind::OnePart };
    let mut found = Vec::new();
    for coat in view.all(COATS) {
        let old = match coat.step.mix_age {
            Told::Is(age) => mix_use(kind, Some(age), Some(life), view.sheet)?.answer == MixUse::Discard,
            Told::Untold if kind == PotKind::TwoPart => return Err(CannotJudge::without("mix_age")),
            Told::Kept | Told::Untold => false,
        };
        if old || coat.is(Manner::Boosted)? {
            found.push(coat.at);
        }
    }
    Ok(found)
}
