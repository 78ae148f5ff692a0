//! How a wait scales with the room and with the film.

use super::Modelled;
use crate::quantity::{Celsius, Measure, Micrometres, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;

/// The cold factor of the sheet stands for a step of this many degrees: so the rule of thumb is stated.
const STEP_C: f64 = 10.0;

/// Factor by which the room lengthens a wait: `F^((reference - air)/10)`, with `F` from the sheet.
///
/// Warmth gives no credit unless the sheet switches it on: then the factor may be under 1. Outside the temperatures of
/// the sheet there is no factor: change the room. Rule of thumb (a published cure-time calculator page; it is the usual
/// reading of the Arrhenius equation at 51.6 kJ/mol), so the figure is the shop's.
#[must_use]
pub fn cold_factor(air: Celsius, sheet: &Sheet) -> Ruling<Modelled<f64>> {
    let window = sheet.get(Setting::WaitModelFrom)..=sheet.get(Setting::WaitModelTo);
    if !window.contains(&air.get()) {
        let air = Measure::new(air.get(), Unit::Celsius, 1);
        return Ruling::by("drying.outside-model", Modelled::OutsideModel)
            .step("model-from", "", Measure::new(*window.start(), Unit::Celsius, 0))
            .step("model-to", "", Measure::new(*window.end(), Unit::Celsius, 0))
            .step("room", "", air);
    }
    let scaled = uncapped(air, sheet);
    let (rule, factor, formula) = if sheet.is_on(Setting::WarmCredit) && scaled <= 1.0 {
        ("drying.warm-credit", scaled, "F^((T0 - T) / 10)")
    } else if scaled > 1.0 {
        ("drying.cold-lengthens", scaled, "F^((T0 - T) / 10)")
    } else {
        ("drying.warm-no-credit", 1.0, "max(1, F^((T0 - T) / 10))")
    };
    Ruling::by(rule, Modelled::Estimate(factor))
        .step("cold-factor", formula, Measure::new(factor, Unit::Ratio, 3))
        .given(&[
            ("F", Measure::new(sheet.get(Setting::ColdFactor), Unit::Ratio, 2)),
            ("T0", Measure::new(sheet.get(Setting::WaitReference), Unit::Celsius, 1)),
            ("T", Measure::new(air.get(), Unit::Celsius, 1)),
        ])
}

/// The same factor with the credit for warmth taken, whatever the sheet says: what a finisher assumes who lets a warm
/// room shorten a wait.
#[must_use]
pub fn uncapped(air: Celsius, sheet: &Sheet) -> f64 {
    libm::pow(sheet.get(Setting::ColdFactor), (sheet.get(Setting::WaitReference) - air.get()) / STEP_C)
}

/// Factor by which film over the reference lengthens a wait: the square of the ratio, never under 1.
///
/// The square is exact for diffusion (Crank 1975, p. 48: time goes with thickness squared at equal release); that a
/// thinner film gives no credit is caution, since the stated wait is a minimum.
#[must_use]
pub fn thickness_factor(film: Micrometres, reference: Micrometres) -> Ruling<f64> {
    let factor = if film > reference {
        let ratio = film.get() / reference.get();
        ratio * ratio
    } else {
        1.0
    };
    Ruling::by("drying.thickness-square", factor)
        .step("thickness-factor", "max(1, (h / h0)^2)", Measure::new(factor, Unit::Ratio, 3))
        .given(&[
            ("h", Measure::new(film.get(), Unit::Micrometre, 1)),
            ("h0", Measure::new(reference.get(), Unit::Micrometre, 1)),
        ])
}
