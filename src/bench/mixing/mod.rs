//! Mixing: thinning, parts and weights, cups and viscosity, VOC and HAP as applied, pot life.

mod cups;
mod emissions;
mod thinning;

pub(crate) use cups::told_cup;
pub(crate) use thinning::{told_parts, told_percent, told_thinning};

use super::{Calculation, Facts};
use crate::quantity::{Density, Fraction, Millilitres, OutOfRange, Seconds};
use crate::rules::verdict::CannotJudge;

pub(super) const ALL: &[&Calculation] = &[
    &thinning::THIN,
    &thinning::MIX_PARTS,
    &thinning::WEIGH,
    &thinning::WASHCOAT_SOLIDS,
    &cups::VISCOSITY,
    &cups::CUP_TIME,
    &cups::WARMED,
    &cups::POT_LIFE,
    &emissions::VOC,
    &emissions::HAP,
];

/// A quantity that is told.
fn told<T>(facts: &Facts, key: &str, make: fn(f64) -> Result<T, OutOfRange>) -> Result<T, CannotJudge> {
    make(facts.number(key)?).map_err(|_| CannotJudge::without(key))
}

/// A volume that is told.
pub(crate) fn told_volume(facts: &Facts, key: &str) -> Result<Millilitres, CannotJudge> {
    told(facts, key, Millilitres::new)
}

/// A time by the stop watch that is told.
pub(crate) fn told_seconds(facts: &Facts, key: &str) -> Result<Seconds, CannotJudge> {
    told(facts, key, Seconds::new)
}

/// A density that is told.
pub(crate) fn told_density(facts: &Facts, key: &str) -> Result<Density, CannotJudge> {
    told(facts, key, Density::new)
}

/// A share of the mass that is told; nothing where it is not.
pub(crate) fn share_or_none(facts: &Facts, key: &str) -> Fraction {
    facts.share(key).unwrap_or_else(|_| Fraction::saturating(0.0))
}
