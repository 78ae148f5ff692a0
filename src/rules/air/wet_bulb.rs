//! Wet bulb: what a thermometer with a wet wick reads.

use super::vapour::{humidity_ratio, ratio_at, saturation_pressure};
use crate::quantity::{Celsius, Measure, Pascals, RelativeHumidity, Unit};
use crate::rules::verdict::{Judged, Ruling};

/// The heats of the psychrometric balance in kJ/kg and kJ/(kg K): evaporation at 0 °C, its change with the wick's
/// temperature, and the heat of what leaves the wick.
struct Wick {
    heat: f64,
    heat_slope: f64,
    wick_slope: f64,
}

/// A wet wick (ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 33).
const WATER: Wick = Wick { heat: 2_501.0, heat_slope: 2.326, wick_slope: 4.186 };
/// A frozen wick (eq. 35).
const ICE: Wick = Wick { heat: 2_830.0, heat_slope: 0.24, wick_slope: 2.1 };
/// Specific heats of dry air and of water vapour in kJ/(kg K) (eq. 33 and 35).
const DRY_AIR_HEAT: f64 = 1.006;
const VAPOUR_HEAT: f64 = 1.86;
/// Halvings of the bracket: far below a millionth of a degree.
const HALVINGS: u32 = 48;

/// Humidity ratio of air in which a wick of that kind settles at a temperature; rises with it.
fn ratio_for(wick: &Wick, air: f64, at: f64, pressure: f64) -> f64 {
    let Some(saturated) = ratio_at(saturation_pressure(Celsius::saturating(at)), pressure) else {
        return f64::INFINITY;
    };
    ((wick.heat - wick.heat_slope * at) * saturated - DRY_AIR_HEAT * (air - at))
        / (wick.heat + VAPOUR_HEAT * air - wick.wick_slope * at)
}

/// Wet bulb of air at a pressure.
///
/// The wick counts as wet wherever a wet one can settle at 0 °C or above, else as frozen. Within 0.05 °C of the
/// psychrometric tables (-10 to 40 °C, 10 to 90 % RH, 84 000 and 101 325 Pa; eight rows with a frozen wick).
///
/// # Errors
/// [`crate::rules::verdict::CannotJudge`] naming the pressure when there is no such air.
pub fn wet_bulb(air: Celsius, humidity: RelativeHumidity, pressure: Pascals) -> Judged<Celsius> {
    let ratio = humidity_ratio(air, humidity, pressure)?;
    let (dry, outside, freezing) = (air.get(), pressure.get(), Celsius::FREEZING.get());
    let wet = dry >= freezing && ratio.answer >= ratio_for(&WATER, dry, freezing, outside);
    let (wick, mut low, mut high) =
        if wet { (&WATER, freezing, dry) } else { (&ICE, Celsius::MIN, dry.min(freezing)) };
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if ratio_for(wick, dry, middle, outside) > ratio.answer {
            high = middle;
        } else {
            low = middle;
        }
    }
    let answer = Celsius::saturating(f64::midpoint(low, high));
    let shown = Measure::new(answer.get(), Unit::Celsius, 2);
    Ok(Ruling::by("air.wet-bulb", answer).step("wet-bulb", "", shown).resting_on(&ratio))
}
