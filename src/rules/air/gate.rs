//! The spray gate: spray, only with retarder, or stop. The strictest of three limits decides.

use super::dew_point;
use crate::quantity::{Celsius, DUST, Measure, RelativeHumidity, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Whether lacquer may be sprayed, from mild to strict.
    SprayVerdict {
        /// Spray as mixed.
        Spray = "spray",
        /// Spray only with retarder in the mix.
        Retarder = "retarder",
        /// Do not spray.
        Stop = "stop",
    }
    /// What may stop the spraying.
    Limit {
        /// The work surface lies too near the dew point.
        Gap = "gap",
        /// The air is too humid.
        Humidity = "humidity",
        /// The air is too cold.
        ColdAir = "cold-air",
        /// The work is too cold.
        ColdWork = "cold-work",
    }
    /// What is in the mix.
    Thinner {
        /// Fast thinner only.
        Fast = "fast-thinner",
        /// Fast thinner with retarder.
        Retarded = "with-retarder",
    }
    /// What to do next at the booth.
    Action {
        /// Spray as mixed.
        SprayAsMixed = "spray-as-mixed",
        /// Put retarder in and spray.
        AddRetarder = "add-retarder",
        /// Let the work come to the room's temperature, then measure again.
        WarmWork = "warm-work",
        /// Leave the gun: dry or warm the room, then measure again.
        ChangeAir = "change-air",
    }
}

/// Least gap between work surface and dew point that any painter of solvent-borne coatings is allowed, in K: 5 °F
/// (published rule for paint on surfaces). No sheet may undercut it.
pub const SURFACE_NEAR_DEW_K: f64 = 2.8;

/// The gate's verdict with every margin in kelvin or per cent; a negative margin is short of the limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gate {
    /// The strictest of the three.
    pub verdict: SprayVerdict,
    /// Dew point of the air.
    pub dew_point: Celsius,
    /// Work surface less dew point, K.
    pub gap: f64,
    /// Gap less the gap for spraying as mixed, K.
    pub gap_margin: f64,
    /// Gap less the gap for spraying with retarder, K.
    pub retarder_margin: f64,
    /// Humidity limit less the humidity, per cent RH.
    pub humidity_margin: f64,
    /// The air less the cold limit, K.
    pub air_cold_margin: f64,
    /// The work less the cold limit, K.
    pub work_cold_margin: f64,
    /// Estimated wet film of fast thinner less the dew point, K. Shown; does not decide.
    pub film_margin_fast: f64,
    /// Estimated wet film with retarder less the dew point, K. Shown; does not decide.
    pub film_margin_retarded: f64,
}

impl Gate {
    /// The smaller margin of air and work to the cold limit, K.
    #[must_use]
    pub const fn cold_margin(&self) -> f64 {
        self.air_cold_margin.min(self.work_cold_margin)
    }

    /// Whether a limit is broken so far that spraying stops.
    #[must_use]
    pub fn stops(&self, limit: Limit) -> bool {
        match limit {
            Limit::Gap => self.retarder_margin < -DUST || self.gap < SURFACE_NEAR_DEW_K - DUST,
            Limit::Humidity => self.humidity_margin < -DUST,
            Limit::ColdAir => self.air_cold_margin < -DUST,
            Limit::ColdWork => self.work_cold_margin < -DUST,
        }
    }
}

/// How far the work surface lies above the dew point of the air, in K; negative where it is wet already.
#[must_use]
pub fn surface_gap(air: Celsius, humidity: RelativeHumidity, work: Celsius) -> Ruling<f64> {
    let dew = dew_point(air, humidity);
    let gap = work.get() - dew.answer.get();
    Ruling::by("air.surface-gap", gap)
        .step("gap", "", Measure::new(gap, Unit::Kelvin, 2))
        .given(&[
            ("work surface", Measure::new(work.get(), Unit::Celsius, 1)),
            ("dew-point", Measure::new(dew.answer.get(), Unit::Celsius, 2)),
        ])
        .resting_on(&dew)
}

fn measure(air: Celsius, humidity: RelativeHumidity, work: Celsius, sheet: &Sheet) -> Ruling<Gate> {
    let surface = surface_gap(air, humidity, work);
    let gap = surface.answer;
    let cold = sheet.get(Setting::ColdStop);
    let mut gate = Gate {
        verdict: SprayVerdict::Spray,
        dew_point: dew_point(air, humidity).answer,
        gap,
        gap_margin: gap - sheet.get(Setting::GapSpray),
        retarder_margin: gap - sheet.get(Setting::GapRetarder),
        humidity_margin: sheet.get(Setting::HumidityLimit) - humidity.get(),
        air_cold_margin: air.get() - cold,
        work_cold_margin: work.get() - cold,
        film_margin_fast: gap - sheet.get(Setting::CoolingFast),
        film_margin_retarded: gap - sheet.get(Setting::CoolingRetarded),
    };
    gate.verdict = if LIMITS.into_iter().any(|limit| gate.stops(limit)) {
        SprayVerdict::Stop
    } else if gate.gap_margin < -DUST {
        SprayVerdict::Retarder
    } else {
        SprayVerdict::Spray
    };
    surface.map(|_| gate)
}

const LIMITS: [Limit; 4] = [Limit::Gap, Limit::Humidity, Limit::ColdAir, Limit::ColdWork];

/// Whether the work may be sprayed: the strictest of the gap between work surface and dew point, the humidity limit and
/// the cold limit, all from the sheet. A value exactly on a limit counts as the better band.
///
/// Where humidity lets the air pass and the gap of work at room temperature does not, the ruling says why the two limits
/// disagree. The margin of the cooled wet film is worked out beside it and decides nothing: the cooling is an upper figure.
#[must_use]
pub fn spray_gate(air: Celsius, humidity: RelativeHumidity, work: Celsius, sheet: &Sheet) -> Ruling<Gate> {
    let measured = measure(air, humidity, work, sheet);
    let gate = measured.answer;
    let kelvin = |value| Measure::new(value, Unit::Kelvin, 2);
    let mut ruling = Ruling { answer: gate, rules: Vec::new(), working: Vec::new() };
    for rule in deciding(&gate) {
        ruling = ruling.and(rule);
    }
    let room_gap = air.get() - gate.dew_point.get();
    if room_gap < sheet.get(Setting::GapSpray) - DUST && !gate.stops(Limit::Humidity) {
        ruling = ruling.and("air.limits-disagree");
    }
    ruling
        .step("gap-margin", "", kelvin(gate.gap_margin))
        .step("retarder-margin", "", kelvin(gate.retarder_margin))
        .step("humidity-margin", "", Measure::new(gate.humidity_margin, Unit::Percent, 1))
        .step("cold-margin", "", kelvin(gate.cold_margin()))
        .step("film-margin-fast", "", kelvin(gate.film_margin_fast))
        .step("film-margin-retarded", "", kelvin(gate.film_margin_retarded))
        .resting_on(&measured)
}

/// The rules behind a verdict, the deciding ones first.
fn deciding(gate: &Gate) -> Vec<&'static str> {
    let mut rules = Vec::new();
    if gate.gap < SURFACE_NEAR_DEW_K - DUST {
        rules.push("air.surface-near-dew");
    }
    for limit in LIMITS {
        if gate.stops(limit) {
            rules.push(match limit {
                Limit::Gap => "air.gap-stop",
                Limit::Humidity => "air.humidity-limit",
                Limit::ColdAir | Limit::ColdWork => "air.cold-stop",
            });
        }
    }
    match gate.verdict {
        SprayVerdict::Spray => rules.push("air.gap-spray"),
        SprayVerdict::Retarder => rules.push("air.gap-retarder"),
        SprayVerdict::Stop => {}
    }
    rules
}

/// The limits that stop the spraying; empty when none does.
#[must_use]
pub fn stopping_limits(gate: &Ruling<Gate>) -> Ruling<Vec<Limit>> {
    let found = LIMITS.into_iter().filter(|limit| gate.answer.stops(*limit)).collect();
    gate.clone().map(|_| found)
}

/// Whether a mix may be sprayed now.
#[must_use]
pub fn may_spray(gate: &Ruling<Gate>, thinner: Thinner) -> Ruling<bool> {
    let may = match gate.answer.verdict {
        SprayVerdict::Spray => true,
        SprayVerdict::Retarder => thinner == Thinner::Retarded,
        SprayVerdict::Stop => false,
    };
    gate.clone().map(|_| may)
}

/// What to do next. Work that is stopped only because it is colder than the room is brought to the room's temperature
/// and measured again; where the room itself stops it, the air is changed first.
#[must_use]
pub fn next_action(air: Celsius, humidity: RelativeHumidity, work: Celsius, sheet: &Sheet) -> Ruling<Action> {
    let gate = spray_gate(air, humidity, work, sheet);
    match gate.answer.verdict {
        SprayVerdict::Spray => gate.map(|_| Action::SprayAsMixed),
        SprayVerdict::Retarder => gate.map(|_| Action::AddRetarder),
        SprayVerdict::Stop => {
            let at_room = measure(air, humidity, air, sheet).answer;
            if work < air && at_room.verdict != SprayVerdict::Stop {
                let gap = Measure::new(at_room.gap, Unit::Kelvin, 2);
                Ruling::by("air.work-follows-room", Action::WarmWork)
                    .step("gap-at-room", "", gap)
                    .resting_on(&gate)
            } else {
                gate.map(|_| Action::ChangeAir)
            }
        }
    }
}

/// What one reading settles alone, when the others are not told: air over the humidity limit or under the cold limit is
/// changed first, whatever the work. `None` where neither reading stops the spraying by itself.
#[must_use]
pub fn settled_by_one_reading(
    air: Option<Celsius>,
    humidity: Option<RelativeHumidity>,
    sheet: &Sheet,
) -> Option<Ruling<Action>> {
    let humid = sheet.get(Setting::HumidityLimit);
    let cold = sheet.get(Setting::ColdStop);
    if let Some(over) = humidity.map(|rh| rh.get() - humid).filter(|over| *over > DUST) {
        let margin = Measure::new(-over, Unit::Percent, 1);
        let ruling = Ruling::by("air.humidity-limit", Action::ChangeAir);
        return Some(ruling.step("humidity-margin", "", margin));
    }
    let under = air.map(|air| air.get() - cold).filter(|margin| *margin < -DUST)?;
    let ruling = Ruling::by("air.cold-stop", Action::ChangeAir);
    Some(ruling.step("cold-margin", "", Measure::new(under, Unit::Kelvin, 2)))
}

/// The least temperature of the work surface at which a mix may be sprayed in this air: dew point and gap, and never
/// under the cold limit.
#[must_use]
pub fn warm_enough(
    air: Celsius,
    humidity: RelativeHumidity,
    thinner: Thinner,
    sheet: &Sheet,
) -> Ruling<Celsius> {
    let dew = dew_point(air, humidity);
    let (setting, rule) = match thinner {
        Thinner::Fast => (Setting::GapSpray, "air.gap-spray"),
        Thinner::Retarded => (Setting::GapRetarder, "air.gap-retarder"),
    };
    let (by_gap, cold) = (dew.answer.get() + sheet.get(setting), sheet.get(Setting::ColdStop));
    let least = Celsius::saturating(by_gap.max(cold));
    let ruling = if by_gap < cold { Ruling::by("air.cold-stop", least) } else { Ruling::by(rule, least) };
    ruling
        .step("gap-wanted", "", Measure::new(sheet.get(setting), Unit::Kelvin, 1))
        .step("cold-limit", "", Measure::new(cold, Unit::Celsius, 1))
        .step("warm-enough", "", Measure::new(least.get(), Unit::Celsius, 1))
        .given(&[
            ("dew-point", Measure::new(dew.answer.get(), Unit::Celsius, 2)),
            ("gap-wanted", Measure::new(sheet.get(setting), Unit::Kelvin, 1)),
            ("cold-limit", Measure::new(cold, Unit::Celsius, 1)),
        ])
        .resting_on(&dew)
}
