//! What is published of a solvent: where its vapour burns, what may be breathed, how it flashes.
//!
//! The figures stand in `content/solvents.toml`; a rule takes a [`Solvent`] and never looks one up.

use crate::quantity::{Celsius, ExplosiveLimit, MilligramsPerCubicMetre, MolarMass, PartsPerMillion};
use crate::rules::term::Provenance;
use serde::{Deserialize, Serialize};

/// A lower explosive limit as one source gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PublishedLimit {
    /// Per cent of vapour in air by volume.
    pub percent: ExplosiveLimit,
    /// Who published it.
    pub source: String,
    /// How it was read; a limit from memory is unconfirmed.
    pub provenance: Provenance,
}

/// The row of 29 CFR 1910.94 Table G-11. From memory, unconfirmed: shown beside, labelled.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TableRow {
    /// Cubic feet of vapour that one US gallon gives at 70 °F.
    pub ft3_a_gallon: f64,
    /// The table's lower explosive limit.
    pub lel: ExplosiveLimit,
}

/// Limits of what may be breathed, parts per million. Absent: none published in parts per million, which is no permission.
/// A recommended limit that is published in milligrams alone, for a mixture without a molar mass, cannot be turned into
/// parts per million: it stands in its own field, and with it a reading in parts per million cannot be judged.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Limits {
    /// OSHA permissible limit, average of 8 hours (29 CFR 1910.1000).
    pub pel: Option<PartsPerMillion>,
    /// OSHA ceiling.
    pub pel_ceiling: Option<PartsPerMillion>,
    /// NIOSH recommended limit, average of the shift.
    pub rel: Option<PartsPerMillion>,
    /// NIOSH recommended limit for 15 minutes.
    pub rel_short: Option<PartsPerMillion>,
    /// NIOSH recommended ceiling.
    pub rel_ceiling: Option<PartsPerMillion>,
    /// NIOSH recommended limit, average of the shift, that stands only in mg/m³.
    pub rel_mg: Option<MilligramsPerCubicMetre>,
    /// NIOSH recommended ceiling that stands only in mg/m³.
    pub rel_ceiling_mg: Option<MilligramsPerCubicMetre>,
    /// Immediately dangerous to life or health (NIOSH, 1994).
    pub idlh: Option<PartsPerMillion>,
}

impl Limits {
    /// Whether a recommended limit or ceiling stands only in mg/m³, so that parts per million cannot be held against it.
    #[must_use]
    pub const fn in_mg(&self) -> bool {
        self.rel_mg.is_some() || self.rel_ceiling_mg.is_some()
    }
}

/// A solvent. Text: `solvent.<slug>`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Solvent {
    /// Slug; scripts use it as the key of a reading: `toluene=60`.
    pub slug: String,
    /// CAS registry number.
    pub cas: String,
    /// Grams a mole; absent for a mixture such as naphtha.
    #[serde(default)]
    pub molar_mass: Option<MolarMass>,
    /// Mass over that of the same volume of water, at 20 °C.
    #[serde(default)]
    pub gravity: Option<f64>,
    /// Flash point.
    #[serde(default)]
    pub flash_c: Option<Celsius>,
    /// Whether it goes through the skin (a skin notation by OSHA or NIOSH).
    #[serde(default)]
    pub skin: bool,
    /// Lower explosive limits as published; empty where none was read, and then no dilution air can be told.
    pub lel: Vec<PublishedLimit>,
    /// Its row of Table G-11.
    #[serde(default)]
    pub table: Option<TableRow>,
    /// What may be breathed.
    #[serde(default)]
    pub limits: Limits,
    /// Whether the limits were read in a source; from memory they decide nothing.
    pub limits_provenance: Provenance,
    /// Where its figures were read.
    pub source: String,
}

impl Solvent {
    /// The lowest lower explosive limit of any source: the cautious one. With it whether every source that low is
    /// unconfirmed.
    #[must_use]
    pub fn lowest_lel(&self) -> Option<(ExplosiveLimit, bool)> {
        let lowest = self.lel.iter().map(|one| one.percent.get()).reduce(f64::min)?;
        let sure = |one: &PublishedLimit| one.percent.get() <= lowest && one.provenance != Provenance::Memory;
        Some((ExplosiveLimit::saturating(lowest), !self.lel.iter().any(sure)))
    }

    /// The lowest limit that was read in a source.
    #[must_use]
    pub fn lowest_confirmed_lel(&self) -> Option<ExplosiveLimit> {
        let read = self.lel.iter().filter(|one| one.provenance != Provenance::Memory);
        read.map(|one| one.percent.get()).reduce(f64::min).map(ExplosiveLimit::saturating)
    }

    /// The lowest limit on a short time: ceilings and 15-minute limits, by OSHA and NIOSH.
    #[must_use]
    pub fn lowest_ceiling(&self) -> Option<PartsPerMillion> {
        let limits = [self.limits.pel_ceiling, self.limits.rel_short, self.limits.rel_ceiling];
        limits
            .into_iter()
            .flatten()
            .map(PartsPerMillion::get)
            .reduce(f64::min)
            .map(PartsPerMillion::saturating)
    }
}
