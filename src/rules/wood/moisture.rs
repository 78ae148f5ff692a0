//! Moisture of wood: what the air of a room brings it to, what a meter shows, and whether it is fit to finish.

use crate::quantity::{Celsius, Measure, MoistureContent, PERCENT_A_WHOLE, RelativeHumidity, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Whether wood may go to the finish room.
    Fit {
        /// Finish it.
        Accept = "accept",
        /// Hold it until it has settled.
        Hold = "hold",
        /// Refuse it.
        Reject = "reject",
    }
    /// What is done with wood of that moisture.
    MoistureAction {
        /// Take it into the finish room.
        FinishIt = "finish-it",
        /// Hold it in the conditioned room until it has dried.
        HoldToDry = "hold-to-dry",
        /// Hold it in the conditioned room until it has taken moisture up.
        HoldToGain = "hold-to-gain",
        /// Send it back.
        SendBack = "send-back",
    }
}

/// Temperatures over which the published table runs, 30 to 200 °F, in °C to the next tenth.
const TABLE_FROM_C: f64 = -1.2;
const TABLE_TO_C: f64 = 93.4;
/// Coefficients of the two-hydrate sorption equation in °C: value, slope and curvature (FPL-RN-0268; equation 4-5 of
/// FPL-GTR-190). Molar mass term, vapour constant, and the constants of the two hydrates.
const MOLAR: [f64; 3] = [349.0, 1.29, 0.0135];
const VAPOUR: [f64; 3] = [0.805, 0.000_736, -0.000_002_73];
const HYDRATE_ONE: [f64; 3] = [6.27, -0.009_38, -0.000_303];
const HYDRATE_TWO: [f64; 3] = [1.91, 0.040_7, -0.000_293];
/// Mass term of equation 4-5, giving per cent of oven-dry mass.
const SCALE: f64 = 1_800.0;
/// Halvings of the bracket when the equation is inverted: far below a millionth of a per cent.
const HALVINGS: u32 = 48;

fn at([value, slope, curvature]: [f64; 3], temperature: f64) -> f64 {
    value + temperature * (slope + temperature * curvature)
}

/// Equation 4-5; rises with humidity.
fn equation(temperature: f64, humidity: f64) -> f64 {
    let (one, two) = (at(HYDRATE_ONE, temperature), at(HYDRATE_TWO, temperature));
    let a = at(VAPOUR, temperature) * humidity / PERCENT_A_WHOLE;
    let dissolved = a / (1.0 - a);
    let hydrates = (one * a + 2.0 * one * two * a * a) / (1.0 + one * a + one * two * a * a);
    SCALE / at(MOLAR, temperature) * (dissolved + hydrates)
}

fn in_table(air: Celsius) -> Result<f64, CannotJudge> {
    let known = (TABLE_FROM_C..=TABLE_TO_C).contains(&air.get());
    known.then_some(air.get()).ok_or_else(|| CannotJudge::without("air_c"))
}

/// Moisture content at which wood settles in air of that temperature and humidity.
///
/// Within 0.07 % of table 4-2 of FPL-GTR-190 from -1 to 93 °C and 5 to 95 % RH.
///
/// # Errors
/// [`CannotJudge`] naming the air temperature outside the table.
pub fn moisture_content(air: Celsius, humidity: RelativeHumidity) -> Judged<MoistureContent> {
    let settled = MoistureContent::saturating(equation(in_table(air)?, humidity.get()));
    Ok(Ruling::by("wood.equilibrium-moisture", settled)
        .step(
            "moisture-content",
            "1800/W (a/(1-a) + (K1 a + 2 K1 K2 a²)/(1 + K1 a + K1 K2 a²)), a = K RH/100",
            Measure::new(settled.get(), Unit::Percent, 1),
        )
        .given(&[
            ("T", Measure::new(air.get(), Unit::Celsius, 1)),
            ("RH", Measure::new(humidity.get(), Unit::Percent, 1)),
        ]))
}

/// Humidity of the room that holds wood at a moisture content: the inverse of [`moisture_content`].
///
/// # Errors
/// [`CannotJudge`] naming the air temperature outside the table, or the moisture content where no humidity holds it.
pub fn humidity_for(air: Celsius, content: MoistureContent) -> Judged<RelativeHumidity> {
    let temperature = in_table(air)?;
    if content.get() > equation(temperature, PERCENT_A_WHOLE) {
        return Err(CannotJudge::without("mc"));
    }
    let (mut low, mut high) = (0.0, PERCENT_A_WHOLE);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if equation(temperature, middle) > content.get() {
            high = middle;
        } else {
            low = middle;
        }
    }
    let humidity = RelativeHumidity::saturating(f64::midpoint(low, high));
    Ok(Ruling::by("wood.equilibrium-moisture", humidity)
        .step(
            "room-humidity",
            "RH at which the wood settles at that moisture",
            Measure::new(humidity.get(), Unit::Percent, 1),
        )
        .given(&[
            ("T", Measure::new(air.get(), Unit::Celsius, 1)),
            ("moisture-content", Measure::new(content.get(), Unit::Percent, 1)),
        ]))
}

/// Whether wood of that moisture may be finished, by the band of the sheet: inside it accept, at the refusal limit or
/// over it reject, else hold.
#[must_use]
pub fn fit_to_finish(content: MoistureContent, sheet: &Sheet) -> Ruling<Fit> {
    let (from, to) = (sheet.get(Setting::MoistureFrom), sheet.get(Setting::MoistureTo));
    let refused = sheet.get(Setting::MoistureReject);
    let (fit, rule) = if content.get() >= refused {
        (Fit::Reject, "wood.moisture-refused")
    } else if (from..=to).contains(&content.get()) {
        (Fit::Accept, "wood.moisture-band")
    } else {
        (Fit::Hold, "wood.moisture-hold")
    };
    let percent = |value| Measure::new(value, Unit::Percent, 1);
    Ruling::by(rule, fit)
        .step("moisture-from", "from the sheet", percent(from))
        .step("moisture-to", "from the sheet", percent(to))
        .step("moisture-reject", "from the sheet", percent(refused))
}

/// What is done with wood of that moisture: [`fit_to_finish`], and on which side of the band it is held.
#[must_use]
pub fn moisture_action(content: MoistureContent, sheet: &Sheet) -> Ruling<MoistureAction> {
    let dry = content.get() < sheet.get(Setting::MoistureFrom);
    fit_to_finish(content, sheet).map(|fit| match fit {
        Fit::Accept => MoistureAction::FinishIt,
        Fit::Hold if dry => MoistureAction::HoldToGain,
        Fit::Hold => MoistureAction::HoldToDry,
        Fit::Reject => MoistureAction::SendBack,
    })
}

/// Moisture content behind the reading of a resistance meter on wood that is colder or warmer than the temperature the
/// meter was set for: about 0.5 % for each 5.6 °C, added for colder wood (FPL-GTR-190 ch. 13, meter practice).
#[must_use]
pub fn corrected_reading(
    reading: MoistureContent,
    wood: Celsius,
    meter_set_for: Celsius,
) -> Ruling<MoistureContent> {
    /// Correction in per cent, and the difference in K that it stands for (10 °F).
    const CORRECTION: f64 = 0.5;
    const PER_K: f64 = 5.6;
    let colder = meter_set_for.get() - wood.get();
    let correction = CORRECTION * colder / PER_K;
    let content = MoistureContent::saturating(reading.get() + correction);
    Ruling::by("wood.meter-temperature", content)
        .step("meter-colder", "meter set for - wood", Measure::new(colder, Unit::Kelvin, 1))
        .given(&[
            ("meter set for", Measure::new(meter_set_for.get(), Unit::Celsius, 1)),
            ("wood", Measure::new(wood.get(), Unit::Celsius, 1)),
        ])
        .step("meter-correction", "0.5 % × colder / 5.6", Measure::new(correction, Unit::Percent, 2))
        .given(&[("colder", Measure::new(colder, Unit::Kelvin, 1))])
        .step("moisture-content", "reading + correction", Measure::new(content.get(), Unit::Percent, 1))
        .given(&[
            ("reading", Measure::new(reading.get(), Unit::Percent, 1)),
            ("correction", Measure::new(correction, Unit::Percent, 2)),
        ])
}
