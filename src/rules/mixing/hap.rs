//! Hazardous air pollutants (VHAP) for each kilogram of solids: the average over all finishing materials used.
//!
//! The rule reaches major sources only, 10 tons a year of one pollutant or 25 of all (40 CFR 63.800(a)); state rules may
//! reach further.

use crate::quantity::{Fraction, Kilograms, Measure, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Whether an average keeps within the limit.
    HapVerdict {
        /// At or under it.
        Within = "hap-within",
        /// Over it.
        Over = "hap-over",
    }
}

/// A finishing material used: its solids, and kilograms of VHAP for each kilogram of them as supplied.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Finishing {
    /// Kilograms of solids used.
    pub solids: Kilograms,
    /// Kilograms of VHAP for each kilogram of solids.
    pub vhap: f64,
}

/// A solvent or thinner added: its mass, and the share of it that is VHAP.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AddedThinner {
    /// Kilograms added.
    pub mass: Kilograms,
    /// Share of VHAP in it, by mass.
    pub vhap: Fraction,
}

/// A VHAP figure as shown.
#[must_use]
pub const fn for_solids(vhap: f64) -> Measure {
    Measure::new(vhap, Unit::Ratio, 3)
}

/// The average: E = (Σ Mc·Cc + Σ S·W) / Σ Mc (40 CFR 63.804(a)(1), equation 1; the meaning of its symbols is from memory).
///
/// # Errors
/// [`CannotJudge`] when no solids were used.
pub fn average(materials: &[Finishing], thinners: &[AddedThinner]) -> Judged<f64> {
    let solids: f64 = materials.iter().map(|one| one.solids.get()).sum();
    if solids <= 0.0 {
        return Err(CannotJudge::without("topcoat_solids_kg"));
    }
    let supplied: f64 = materials.iter().map(|one| one.solids.get() * one.vhap).sum();
    let added: f64 = thinners.iter().map(|one| one.mass.get() * one.vhap.get()).sum();
    let found = (supplied + added) / solids;
    let mass = |mass: Kilograms| Measure::new(mass.get(), Unit::Kilogram, 1);
    let in_solids: Vec<_> =
        materials.iter().flat_map(|one| [("Mc", mass(one.solids)), ("Cc", for_solids(one.vhap))]).collect();
    let in_thinners: Vec<_> =
        thinners.iter().flat_map(|one| [("S", mass(one.mass)), ("W", for_solids(one.vhap.get()))]).collect();
    let masses: Vec<_> = materials.iter().map(|one| ("Mc", mass(one.solids))).collect();
    Ok(Ruling::by("mixing.hap-average", found)
        .step("hap-supplied", "Σ Mc·Cc", Measure::new(supplied, Unit::Kilogram, 1))
        .given(&in_solids)
        .step("hap-added", "Σ S·W", Measure::new(added, Unit::Kilogram, 1))
        .given(&in_thinners)
        .step("hap-solids", "Σ Mc", Measure::new(solids, Unit::Kilogram, 1))
        .given(&masses)
        .step("hap-average", "(Σ Mc·Cc + Σ S·W) / Σ Mc", for_solids(found))
        .given(&[
            ("Σ Mc·Cc", Measure::new(supplied, Unit::Kilogram, 1)),
            ("Σ S·W", Measure::new(added, Unit::Kilogram, 1)),
            ("Σ Mc", Measure::new(solids, Unit::Kilogram, 1)),
        ]))
}

/// Whether an average keeps within the sheet's limit.
#[must_use]
pub fn within_limit(average: f64, sheet: &Sheet) -> Ruling<HapVerdict> {
    let most = sheet.get(Setting::HapMost);
    let answer = if average <= most { HapVerdict::Within } else { HapVerdict::Over };
    Ruling::by("mixing.hap-limit", answer).step("hap-most", "", for_solids(most))
}
