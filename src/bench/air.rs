//! Air: dew point, wet bulb, humidity ratio, the spray gate.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Measure, Pascals, Unit};
use crate::rules::air;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Calculation] =
    &[&DEW_POINT, &HUMIDITY_FROM_DEW, &WET_BULB, &HUMIDITY_RATIO, &SPRAY_GATE, &WARM_ENOUGH];

const fn value(unit: Unit) -> Gives {
    Gives::Number { key: "value", unit }
}

const fn kelvin(key: &'static str) -> Gives {
    Gives::Number { key, unit: Unit::Kelvin }
}

const DEW_POINT: Calculation = Calculation {
    name: "dew-point",
    needs: &[Needs::must("air_c"), Needs::must("rh")],
    gives: &[value(Unit::Celsius)],
    run: dew_point,
};

fn dew_point(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let ruling = air::dew_point(facts.celsius("air_c")?, facts.humidity("rh")?);
    Ok(ruling.map(|dew| Outcome::value(Measure::new(dew.get(), Unit::Celsius, 2))))
}

const HUMIDITY_FROM_DEW: Calculation = Calculation {
    name: "humidity-from-dew-point",
    needs: &[Needs::must("air_c"), Needs::must("dew_c")],
    gives: &[value(Unit::Percent)],
    run: humidity_from_dew,
};

fn humidity_from_dew(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let ruling = air::humidity_from_dew_point(facts.celsius("air_c")?, facts.celsius("dew_c")?)?;
    Ok(ruling.map(|humidity| Outcome::value(Measure::new(humidity.get(), Unit::Percent, 1))))
}

const AIR_AT_PRESSURE: &[Needs] = &[Needs::must("air_c"), Needs::must("rh"), Needs::may("pressure_pa")];

/// The pressure told, or that of sea level.
fn pressure(facts: &Facts) -> Result<Pascals, CannotJudge> {
    let told = facts.maybe_number("pressure_pa").unwrap_or(air::SEA_LEVEL_PA);
    Pascals::new(told).map_err(|_| CannotJudge::without("pressure_pa"))
}

const WET_BULB: Calculation =
    Calculation { name: "wet-bulb", needs: AIR_AT_PRESSURE, gives: &[value(Unit::Celsius)], run: wet_bulb };

fn wet_bulb(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let ruling = air::wet_bulb(facts.celsius("air_c")?, facts.humidity("rh")?, pressure(facts)?)?;
    Ok(ruling.map(|wet| Outcome::value(Measure::new(wet.get(), Unit::Celsius, 2))))
}

const HUMIDITY_RATIO: Calculation = Calculation {
    name: "humidity-ratio",
    needs: AIR_AT_PRESSURE,
    gives: &[value(Unit::Ratio)],
    run: humidity_ratio,
};

fn humidity_ratio(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let ruling = air::humidity_ratio(facts.celsius("air_c")?, facts.humidity("rh")?, pressure(facts)?)?;
    Ok(ruling.map(|ratio| Outcome::value(Measure::new(ratio, Unit::Ratio, 5))))
}

const SPRAY_GATE: Calculation = Calculation {
    name: "spray-gate",
    needs: &[Needs::must("air_c"), Needs::must("rh"), Needs::must("work_c")],
    gives: &[
        Gives::Term { key: "verdict", among: &["spray", "retarder", "stop"] },
        Gives::Number { key: "dew_point", unit: Unit::Celsius },
        kelvin("gap"),
        kelvin("gap_margin"),
        kelvin("retarder_margin"),
        Gives::Number { key: "humidity_margin", unit: Unit::Percent },
        kelvin("cold_margin"),
        kelvin("film_margin_fast"),
        kelvin("film_margin_retarded"),
    ],
    run: spray_gate,
};

fn spray_gate(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let (air, humidity) = (facts.celsius("air_c")?, facts.humidity("rh")?);
    let ruling = air::spray_gate(air, humidity, facts.celsius("work_c")?, world.sheet);
    let kelvin = |value| Measure::new(value, Unit::Kelvin, 2);
    Ok(ruling.map(|gate| {
        Outcome::default()
            .term("verdict", gate.verdict.slug())
            .number("dew_point", Measure::new(gate.dew_point.get(), Unit::Celsius, 2))
            .number("gap", kelvin(gate.gap))
            .number("gap_margin", kelvin(gate.gap_margin))
            .number("retarder_margin", kelvin(gate.retarder_margin))
            .number("humidity_margin", Measure::new(gate.humidity_margin, Unit::Percent, 1))
            .number("cold_margin", kelvin(gate.cold_margin()))
            .number("film_margin_fast", kelvin(gate.film_margin_fast))
            .number("film_margin_retarded", kelvin(gate.film_margin_retarded))
    }))
}

const WARM_ENOUGH: Calculation = Calculation {
    name: "warm-enough",
    needs: &[Needs::must("air_c"), Needs::must("rh"), Needs::must("thinner")],
    gives: &[value(Unit::Celsius)],
    run: warm_enough,
};

fn warm_enough(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let (air, humidity) = (facts.celsius("air_c")?, facts.humidity("rh")?);
    let ruling = air::warm_enough(air, humidity, facts.term("thinner")?, world.sheet);
    Ok(ruling.map(|least| Outcome::value(Measure::new(least.get(), Unit::Celsius, 1))))
}
