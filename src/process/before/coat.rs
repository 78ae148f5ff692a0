//! A coat at the gun: air, work, mix, sealer, and its place in the order.

use super::{Made, Now};
use crate::process::hidden::What;
use crate::process::part::PartState;
use crate::rules::air::{Thinner, may_spray, spray_gate};
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{CLEARS, COATS, Operation};
use crate::rules::sequence::plan::Told;
use crate::rules::sheet::Setting;

/// What is done on a film: no seal coat belongs over it.
const ON_FILM: &[Operation] = &[Operation::Scrape, Operation::Inspect, Operation::Level, Operation::Buff];

pub(super) fn check(part: &PartState, now: &Now<'_>, made: &mut Vec<Made>) {
    let op = now.operation();
    if !COATS.contains(&op) {
        return;
    }
    if outside_climate(now) {
        made.push(now.error(OrderError::AirOutsideWindow));
    }
    if now.is(Manner::ColdWork) || now.is(Manner::HeatedWet) {
        made.push(now.error(OrderError::ColdWork));
    }
    if is_old_mix(now) {
        made.push(now.error(OrderError::PotLifePast));
    }
    match op {
        Operation::Seal => {
            if thick_sealer(part, now) {
                made.push(now.error(OrderError::SealerTooThick));
            }
            if part.did(CLEARS) || part.did(ON_FILM) {
                made.push(now.error(OrderError::Clear));
            }
        }
        Operation::Protect => {
            if part.did(&[Operation::Clear]) {
                made.push(now.error(OrderError::Clear));
            } else {
                made.push(now.hidden(What::Protected));
            }
        }
        _ => {}
    }
}

fn outside_climate(now: &Now<'_>) -> bool {
    let thinner = if now.is(Manner::Retarder) { Thinner::Retarded } else { Thinner::Fast };
    now.climate.is_some_and(|climate| {
        let gate = spray_gate(climate.air, climate.humidity, climate.work, now.sheet);
        !may_spray(&gate, thinner).answer
    })
}

/// Past the sheet's pot life, where it has one, or freshened up with new material.
fn is_old_mix(now: &Now<'_>) -> bool {
    let life = now.sheet.get(Setting::PotLife);
    let old = matches!(now.act.step.mix_age, Told::Is(age) if life > 0.0 && age.get() > life);
    old || now.is(Manner::Boosted)
}

/// Sealer with stearate goes on thin and no oftener than the sheet allows.
fn thick_sealer(part: &PartState, now: &Now<'_>) -> bool {
    let seals = part.layers(&[Operation::Seal]).filter(|seal| seal.is(Manner::Stearated));
    let coats = seals.map(|seal| seal.coats).fold(now.coats, u32::saturating_add);
    let too_many = f64::from(coats) > now.sheet.get(Setting::SealerCoats);
    now.is(Manner::Stearated) && (too_many || now.is(Manner::Heavy))
}
