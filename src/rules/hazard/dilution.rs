//! Air that thins the vapour of a solvent until it cannot burn: an answer about fire, never about breathing.

use super::solvent::Solvent;
use crate::quantity::{
    AirFlow, AirVolume, ExplosiveLimit, Fraction, Hours, MINUTES_AN_HOUR, ML_A_LITRE, Measure, Millilitres,
    PERCENT_A_WHOLE, PartsPerMillion, Unit,
};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// Parts per million in one per cent.
const PPM_A_PERCENT: f64 = 10_000.0;
/// Cubic metres in a cubic foot and litres in a US gallon: NIST Handbook 44, appendix C.
const M3_A_FT3: f64 = 0.028_316_846_592;
const LITRES_A_GALLON: f64 = 3.785_411_784;
/// Grams of water in a millilitre at 20 °C, to which specific gravity refers.
const WATER_G_A_ML: f64 = 0.998_2;
/// Litres of a mole of vapour at 70 °F and one atmosphere.
const LITRES_A_MOLE: f64 = 24.15;

/// Air for some liquid that dries off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dilution {
    /// By the lowest lower explosive limit published.
    pub air: AirVolume,
    /// The limit it was taken with.
    pub lel: ExplosiveLimit,
    /// Whether that limit, or the vapour volume, is from memory alone: a volume that only a remembered gravity gives, or
    /// that physics cannot support.
    pub unconfirmed: bool,
    /// By the limit of 29 CFR 1910.94 Table G-11, from memory: shown beside, it decides nothing.
    pub table: Option<AirVolume>,
}

/// Cubic feet of air for a US gallon that dries off: `(100 - LEL) x V / LEL`, over the share of the limit that may be
/// reached (29 CFR 1910.94(c)(6)(ii), where the share is a quarter). `vapour_ft3` is the vapour of one gallon at 70 °F.
#[must_use]
pub fn air_a_gallon(lel: ExplosiveLimit, vapour_ft3: f64, share: Fraction) -> f64 {
    (PERCENT_A_WHOLE - lel.get()) * vapour_ft3 / (lel.get() * share.get())
}

/// Cubic feet of vapour from a US gallon at 70 °F, from molar mass and specific gravity.
///
/// # Errors
/// [`CannotJudge`] for a mixture: it has no molar mass.
pub fn vapour_a_gallon(solvent: &Solvent) -> Result<f64, CannotJudge> {
    let molar_mass = solvent.molar_mass.ok_or_else(|| CannotJudge::without("molar_mass"))?.get();
    let gravity = solvent.gravity.ok_or_else(|| CannotJudge::without("gravity"))?;
    let moles = gravity * WATER_G_A_ML * LITRES_A_GALLON * ML_A_LITRE / molar_mass;
    Ok(moles * LITRES_A_MOLE / (M3_A_FT3 * ML_A_LITRE))
}

/// The share of the lower explosive limit that vapour may reach: the shop sheet's.
#[must_use]
pub fn vapour_share(sheet: &Sheet) -> Fraction {
    Fraction::saturating(sheet.get(Setting::VapourShare) / PERCENT_A_WHOLE)
}

/// Air for a volume of liquid that dries off, by the lowest limit published, with that of Table G-11 beside it. Vapour
/// volume is the table's, which the physics supports within 4 %, else that of the physics.
///
/// # Errors
/// [`CannotJudge`] when no limit is published or the vapour volume cannot be told.
pub fn dilution_air(solvent: &Solvent, liquid: Millilitres, sheet: &Sheet) -> Judged<Dilution> {
    let (lel, unconfirmed) = solvent.lowest_lel().ok_or_else(|| CannotJudge::without("lel"))?;
    let vapour = match solvent.table {
        Some(row) => row.ft3_a_gallon,
        None => vapour_a_gallon(solvent)?,
    };
    let gallons = liquid.get() / (LITRES_A_GALLON * ML_A_LITRE);
    let share = vapour_share(sheet);
    let volume = |lel| AirVolume::saturating(gallons * air_a_gallon(lel, vapour, share) * M3_A_FT3);
    let answer = Dilution {
        air: volume(lel),
        lel,
        unconfirmed: unconfirmed || solvent.table.is_none() || vapour_a_gallon(solvent).is_err(),
        table: solvent.table.map(|row| volume(row.lel)),
    };
    let ruling = Ruling::by("hazard.lowest-explosive-limit", answer)
        .and("hazard.fire-air-is-no-breathing-air")
        .step("explosive-limit", "", Measure::new(lel.get(), Unit::Percent, 1))
        .step("vapour-share", "", Measure::new(share.get() * PERCENT_A_WHOLE, Unit::Percent, 0))
        .step("dilution-air", "(100 - LEL) x vapour / (LEL x share)", super::booth_air::volume(answer.air))
        .given(&[
            ("LEL", Measure::new(lel.get(), Unit::Percent, 1)),
            ("vapour", Measure::new(gallons * vapour * M3_A_FT3, Unit::CubicMetre, 3)),
            ("share", Measure::new(share.get() * PERCENT_A_WHOLE, Unit::Percent, 0)),
        ]);
    Ok(match (solvent.table, answer.table) {
        (Some(row), Some(air)) => ruling
            .step("table-limit", "", Measure::new(row.lel.get(), Unit::Percent, 1))
            .step("table-air", "(100 - LEL) x vapour / (LEL x share)", super::booth_air::volume(air))
            .given(&[
                ("LEL", Measure::new(row.lel.get(), Unit::Percent, 1)),
                ("vapour", Measure::new(gallons * vapour * M3_A_FT3, Unit::CubicMetre, 3)),
                ("share", Measure::new(share.get() * PERCENT_A_WHOLE, Unit::Percent, 0)),
            ]),
        _ => ruling,
    })
}

/// The flow that gives a volume of air within a time.
///
/// # Errors
/// [`CannotJudge`] when the time is nothing.
pub fn flow_over(air: AirVolume, time: Hours) -> Result<AirFlow, CannotJudge> {
    let minutes = time.get() * MINUTES_AN_HOUR;
    if minutes > 0.0 {
        Ok(AirFlow::saturating(air.get() / minutes))
    } else {
        Err(CannotJudge::without("minutes"))
    }
}

/// Vapour at a share of the lower explosive limit, parts per million.
#[must_use]
pub fn vapour_at(lel: ExplosiveLimit, share: Fraction) -> PartsPerMillion {
    PartsPerMillion::saturating(lel.get() * PPM_A_PERCENT * share.get())
}

/// Vapour at the share of the lower explosive limit that the shop sheet allows.
#[must_use]
pub fn vapour_allowed(lel: ExplosiveLimit, sheet: &Sheet) -> Ruling<PartsPerMillion> {
    let share = vapour_share(sheet);
    let answer = vapour_at(lel, share);
    Ruling::by("hazard.fire-air-is-no-breathing-air", answer)
        .step("vapour-share", "", Measure::new(share.get() * PERCENT_A_WHOLE, Unit::Percent, 0))
        .step("vapour-allowed", "LEL x share x 10,000", Measure::new(answer.get(), Unit::PartsPerMillion, 0))
        .given(&[
            ("LEL", Measure::new(lel.get(), Unit::Percent, 1)),
            ("share", Measure::new(share.get() * PERCENT_A_WHOLE, Unit::Percent, 0)),
        ])
}

/// Air for a volume of vapour, so that it stays at the share of the lower explosive limit that the shop sheet allows:
/// [`air_a_gallon`] for any volume.
#[must_use]
pub fn air_for_vapour(lel: ExplosiveLimit, vapour: AirVolume, sheet: &Sheet) -> Ruling<AirVolume> {
    let share = vapour_share(sheet);
    let answer = AirVolume::saturating(air_a_gallon(lel, vapour.get(), share));
    Ruling::by("hazard.lowest-explosive-limit", answer)
        .and("hazard.fire-air-is-no-breathing-air")
        .step("vapour-share", "", Measure::new(share.get() * PERCENT_A_WHOLE, Unit::Percent, 0))
        .step("dilution-air", "(100 - LEL) x vapour / (LEL x share)", super::booth_air::volume(answer))
        .given(&[
            ("LEL", Measure::new(lel.get(), Unit::Percent, 1)),
            ("vapour", Measure::new(vapour.get(), Unit::CubicMetre, 3)),
            ("share", Measure::new(share.get() * PERCENT_A_WHOLE, Unit::Percent, 0)),
        ])
}

/// Vapour of a liquid that dries off, in cubic metres at 70 °F.
///
/// # Errors
/// [`CannotJudge`] for a mixture: it has no molar mass.
pub fn vapour_of(solvent: &Solvent, liquid: Millilitres) -> Result<AirVolume, CannotJudge> {
    let gallons = liquid.get() / (LITRES_A_GALLON * ML_A_LITRE);
    Ok(AirVolume::saturating(vapour_a_gallon(solvent)? * gallons * M3_A_FT3))
}

/// Vapour of a liquid that dries off evenly into a flow of air, parts per million: a mixed average, and the air between
/// gun and work is never that. `vapour_ft3` as for [`air_a_gallon`].
#[must_use]
pub fn mixed_average(vapour_ft3: f64, gallons_a_minute: f64, flow: AirFlow) -> PartsPerMillion {
    PartsPerMillion::saturating(
        vapour_ft3 * gallons_a_minute * M3_A_FT3 / flow.get() * PERCENT_A_WHOLE * PPM_A_PERCENT,
    )
}

/// Lower explosive limit of a mixed vapour: `1 / sum(y / LEL)`, shares by volume (textbook rule).
///
/// # Errors
/// [`CannotJudge`] when the shares are not those of a whole.
pub fn mixed_lel(parts: &[(Fraction, ExplosiveLimit)]) -> Result<ExplosiveLimit, CannotJudge> {
    /// How far shares may miss the whole: rounding of a label.
    const ROUNDING: f64 = 0.01;
    let whole: f64 = parts.iter().map(|(share, _)| share.get()).sum();
    if (whole - 1.0).abs() > ROUNDING {
        return Err(CannotJudge::without("shares"));
    }
    let sum: f64 = parts.iter().map(|(share, lel)| share.get() / lel.get()).sum();
    Ok(ExplosiveLimit::saturating(1.0 / sum))
}
