//! Water vapour in air: saturation, dew point, humidity ratio.

use crate::quantity::{Celsius, Measure, PERCENT_A_WHOLE, Pascals, RelativeHumidity, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// Magnus constants over water, the second in °C (Alduchov and Eskridge 1996, J. Appl. Meteorol. 35, 601-609).
const MAGNUS_B: f64 = 17.625;
const MAGNUS_C: f64 = 243.04;
/// Air drier than this counts as this dry: no shop meter reads lower, and bone-dry air has no dew point.
const DRIEST: f64 = 0.1;
/// Pressure of the standard atmosphere at sea level in Pa (exact by definition).
pub const SEA_LEVEL_PA: f64 = 101_325.0;
/// Ratio of the molar masses of water and dry air (ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20).
const MASS_RATIO: f64 = 0.621_945;
/// Triple point of water in °C: below it the saturation over ice is used.
const TRIPLE_POINT_C: f64 = 0.01;
/// Hyland and Wexler over ice, -100 to 0 °C (ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5): terms in 1/T, 1, T, T²,
/// T³, T⁴ and ln T.
const OVER_ICE: [f64; 7] =
    [-5.674_535_9e3, 6.392_524_7, -9.677_843e-3, 6.221_570_1e-7, 2.074_782_5e-9, -9.484_024e-13, 4.163_501_9];
/// The same over water, 0 to 200 °C (eq. 6).
const OVER_WATER: [f64; 7] =
    [-5.800_220_6e3, 1.391_499_3, -4.864_023_9e-2, 4.176_476_8e-5, -1.445_209_3e-8, 0.0, 6.545_967_3];

fn magnus(temperature: f64) -> f64 {
    MAGNUS_B * temperature / (MAGNUS_C + temperature)
}

/// Dew point of air over liquid water, also below 0 °C (where a frost point lies higher: at 5 °C and 10 % RH by 2.4 K).
///
/// Magnus form; within 0.03 °C of the psychrometric tables from 5 to 40 °C where the dew point is 0 °C or more.
/// Air under 0.1 % RH counts as 0.1 %.
#[must_use]
pub fn dew_point(air: Celsius, humidity: RelativeHumidity) -> Ruling<Celsius> {
    let log = libm::log(humidity.get().max(DRIEST) / PERCENT_A_WHOLE) + magnus(air.get());
    let dew = Celsius::saturating(MAGNUS_C * log / (MAGNUS_B - log));
    Ruling::by("air.dew-point", dew)
        .step(
            "dew-point",
            "243.04 g / (17.625 - g), g = ln(RH/100) + 17.625 T / (243.04 + T)",
            Measure::new(dew.get(), Unit::Celsius, 2),
        )
        .given(&[
            ("T", Measure::new(air.get(), Unit::Celsius, 1)),
            ("RH", Measure::new(humidity.get(), Unit::Percent, 1)),
        ])
}

/// Humidity of air whose dew point was measured: the inverse of [`dew_point`].
///
/// # Errors
/// [`CannotJudge`] when the dew point lies above the air temperature: one of the two readings is wrong.
pub fn humidity_from_dew_point(air: Celsius, dew: Celsius) -> Judged<RelativeHumidity> {
    if dew > air {
        return Err(CannotJudge::without("dew_c"));
    }
    let humidity =
        RelativeHumidity::saturating(PERCENT_A_WHOLE * libm::exp(magnus(dew.get()) - magnus(air.get())));
    Ok(Ruling::by("air.dew-point", humidity)
        .step(
            "air-humidity",
            "100 exp(17.625 D / (243.04 + D) - 17.625 T / (243.04 + T))",
            Measure::new(humidity.get(), Unit::Percent, 1),
        )
        .given(&[
            ("T", Measure::new(air.get(), Unit::Celsius, 1)),
            ("D", Measure::new(dew.get(), Unit::Celsius, 1)),
        ]))
}

/// Saturation pressure of water vapour in Pa: over ice below the triple point, over water above it.
#[must_use]
pub fn saturation_pressure(temperature: Celsius) -> f64 {
    let t = temperature.kelvin();
    let [inverse, constant, first, second, third, fourth, log] =
        if temperature.get() <= TRIPLE_POINT_C { OVER_ICE } else { OVER_WATER };
    let powers = constant + t * (first + t * (second + t * (third + t * fourth)));
    libm::exp(inverse / t + powers + log * libm::log(t))
}

/// Humidity ratio of air whose vapour has a pressure, in kg of water per kg of dry air; none where the vapour alone
/// would reach the air pressure.
pub(super) fn ratio_at(vapour: f64, pressure: f64) -> Option<f64> {
    (vapour < pressure).then(|| MASS_RATIO * vapour / (pressure - vapour))
}

/// Mass of water per mass of dry air (kg/kg), at an air pressure.
///
/// Below the triple point the humidity is counted over ice, as the tables do.
///
/// # Errors
/// [`CannotJudge`] naming the pressure when vapour alone would reach it: there is no such air.
pub fn humidity_ratio(air: Celsius, humidity: RelativeHumidity, pressure: Pascals) -> Judged<f64> {
    let vapour = humidity.get() / PERCENT_A_WHOLE * saturation_pressure(air);
    let ratio = ratio_at(vapour, pressure.get()).ok_or_else(|| CannotJudge::without("pressure_pa"))?;
    Ok(Ruling::by("air.humidity-ratio", ratio)
        .step("vapour-pressure", "", Measure::new(vapour, Unit::Pascal, 0))
        .step("humidity-ratio", "0.621945 e / (p - e)", Measure::new(ratio, Unit::Ratio, 5))
        .given(&[
            ("e", Measure::new(vapour, Unit::Pascal, 0)),
            ("p", Measure::new(pressure.get(), Unit::Pascal, 0)),
        ]))
}
