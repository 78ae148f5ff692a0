//! Air against published tables and worked values; each check names its source.

mod support;

use stepboard::content::Content;
use stepboard::quantity::{Celsius, Pascals, RelativeHumidity};
use stepboard::rules::air::{self, Action, Limit, SprayVerdict, Thinner};
use stepboard::rules::sheet::{Setting, Sheet};
use support::covered::same;
use support::table::table;
use support::{content, covered, near};

/// Stated for the Magnus form against the ASHRAE formulas: 0.027 °C at worst where the dew point is 0 °C or above.
const DEW_POINT_TOLERANCE: f64 = 0.05;
/// Three decimals are printed; the wick equations are the same.
const WET_BULB_TOLERANCE: f64 = 0.05;
/// Six decimals are printed.
const RATIO_TOLERANCE: f64 = 0.000_02;

fn celsius(value: f64) -> Celsius {
    Celsius::new(value).expect("a temperature")
}

fn humidity(value: f64) -> RelativeHumidity {
    RelativeHumidity::new(value).expect("a humidity")
}

fn fahrenheit(value: f64) -> Celsius {
    celsius((value - 32.0) / 1.8)
}

fn sea_level() -> Pascals {
    Pascals::new(air::SEA_LEVEL_PA).expect("sea level")
}

/// psychrometrics.csv (PsychroLib 2.5.0, ASHRAE formulas), all 70 rows.
#[test]
fn the_psychrometric_rows_are_met() {
    let rows = table("psychrometrics.csv");
    assert_eq!(rows.len(), 70, "the whole table");
    let (mut dew_points, mut frozen, mut high) = (0, 0, 0);
    for row in &rows {
        let (dry, rh, pressure) = (row.number("dry_bulb_c"), row.number("rh_pct"), row.number("pressure_pa"));
        let at = format!("{dry} °C {rh} % RH {pressure} Pa");
        let (air_c, rh) = (celsius(dry), humidity(rh));
        let pressure = Pascals::new(pressure).expect("a pressure");
        let dew = row.number("dew_point_c");
        if dew >= 0.0 {
            near(
                air::dew_point(air_c, rh).answer.get(),
                dew,
                DEW_POINT_TOLERANCE,
                &format!("dew point {at}"),
            );
            dew_points += 1;
        }
        let wet = air::wet_bulb(air_c, rh, pressure).expect("such air is").answer.get();
        near(wet, row.number("wet_bulb_c"), WET_BULB_TOLERANCE, &format!("wet bulb {at}"));
        frozen += u32::from(wet < 0.0);
        high += u32::from(pressure.get() < 90_000.0);
        let ratio = air::humidity_ratio(air_c, rh, pressure).expect("such air is").answer;
        near(ratio, row.number("humidity_ratio_kg_per_kg"), RATIO_TOLERANCE, &format!("ratio {at}"));
        row.checked("air");
    }
    assert_eq!(
        (dew_points, frozen, high),
        (53, 8, 4),
        "dew points of 0 °C and above, frozen wicks, high shops"
    );
}

/// Worked values 7 to 11 and 14, computed with PsychroLib.
#[test]
fn the_worked_values_of_air_are_met() {
    let dew = |t, rh| air::dew_point(celsius(t), humidity(rh)).answer.get();
    near(dew(20.0, 50.0), 9.27, 0.05, "7: dew point");
    near(dew(25.0, 50.0), 13.86, 0.05, "8: dew point");
    near(24.0 - dew(24.0, 65.0), 6.98, 0.05, "9: gap to the dew point");
    let (t, rh) = (celsius(20.0), humidity(50.0));
    let wet = air::wet_bulb(t, rh, sea_level()).expect("such air is").answer.get();
    near(wet, 13.78, 0.05, "10: wet bulb");
    let ratio = air::humidity_ratio(t, rh, sea_level()).expect("such air is").answer;
    near(ratio, 0.007_26, 0.000_02, "11: humidity ratio");
    let rh = air::humidity_from_dew_point(fahrenheit(80.0), fahrenheit(65.0)).expect("a dew point").answer;
    near(rh.get(), 60.3, 0.3, "14: humidity of air at 80 °F with a dew point of 65 °F");
    covered::values("air", "PsychroLib 2.5.0, worked values");
}

/// Water boils at 100 °C and 101 325 Pa to within 0.03 °C (ITS-90: 99.974 °C), and the triple point is at 611.657 Pa
/// (IAPWS): the saturation formulas must meet both, over water and over ice.
#[test]
fn saturation_meets_the_fixed_points_of_water() {
    near(air::saturation_pressure(celsius(100.0)), 101_418.0, 30.0, "over boiling water, IAPWS-95");
    near(air::saturation_pressure(celsius(0.02)), 611.657, 1.0, "just above the triple point");
    near(air::saturation_pressure(celsius(0.0)), 611.15, 0.5, "over ice, IAPWS 2011");
    covered::values("air", "ITS-90 and IAPWS, fixed points of water");
}

fn verdict(sheet: &Sheet, air_c: f64, rh: f64, work: f64) -> SprayVerdict {
    air::spray_gate(celsius(air_c), humidity(rh), celsius(work), sheet).answer.verdict
}

fn base(content: &Content) -> &Sheet {
    &content.sheets[0]
}

/// The published cases of spraying in humid air, with dew points and gaps computed with PsychroLib; the bands are those
/// of the base sheet.
#[test]
fn the_published_cases_of_spraying_are_judged() {
    let content = content();
    let sheet = base(&content);
    for (air_c, rh, work, gap, wanted) in [
        (22.0, 40.0, 22.0, 14.2, SprayVerdict::Spray),
        (22.0, 45.0, 22.0, 12.5, SprayVerdict::Spray),
        (20.0, 50.0, 20.0, 10.73, SprayVerdict::Retarder),
        (24.0, 65.0, 24.0, 6.98, SprayVerdict::Stop),
        (24.0, 80.0, 24.0, 3.66, SprayVerdict::Stop),
        (22.0, 55.0, 12.0, -0.55, SprayVerdict::Stop),
    ] {
        let gate = air::spray_gate(celsius(air_c), humidity(rh), celsius(work), sheet).answer;
        near(gate.gap, gap, 0.06, &format!("gap at {air_c} °C {rh} % RH, work {work} °C"));
        same!(gate.verdict, wanted, "{air_c} °C {rh} % RH, work {work} °C");
    }
    covered::values("air", "published cases of spraying, PsychroLib");
}

/// The estimated wet film of the same cases: 22 °C and 40 % RH safe by 3.1 K, 20 °C and 50 % RH short by 0.4 K with fast
/// thinner, 24 °C and 65 % RH 2.0 K in hand with retarder and still stopped: the film does not decide.
#[test]
fn the_wet_film_is_shown_and_does_not_decide() {
    let content = content();
    let gate = |t, rh| air::spray_gate(celsius(t), humidity(rh), celsius(t), base(&content)).answer;
    near(gate(22.0, 40.0).film_margin_fast, 3.1, 0.06, "fast thinner");
    near(gate(20.0, 50.0).film_margin_fast, -0.4, 0.06, "fast thinner");
    let humid = gate(24.0, 65.0);
    near(humid.film_margin_retarded, 2.0, 0.06, "with retarder");
    same!(humid.verdict, SprayVerdict::Stop);
    covered::values("air", "published cases of spraying, PsychroLib");
}

/// A value exactly on a limit counts as the better band; a hair past it as the worse one.
#[test]
fn a_value_on_a_limit_counts_as_the_better_band() {
    let content = content();
    let sheet = base(&content);
    let dew = air::dew_point(celsius(25.0), humidity(40.0)).answer.get();
    assert_eq!(verdict(sheet, 25.0, 40.0, dew + 11.1), SprayVerdict::Spray);
    assert_eq!(verdict(sheet, 25.0, 40.0, dew + 11.1 - 1e-6), SprayVerdict::Retarder);
    assert_eq!(verdict(sheet, 25.0, 40.0, dew + 7.0), SprayVerdict::Retarder);
    assert_eq!(verdict(sheet, 25.0, 40.0, dew + 7.0 - 1e-6), SprayVerdict::Stop);
    assert_eq!(verdict(sheet, 30.0, 65.0, 45.0), SprayVerdict::Spray, "65 % is on the limit");
    assert_eq!(verdict(sheet, 30.0, 65.01, 45.0), SprayVerdict::Stop);
    assert_eq!(verdict(sheet, 10.0, 30.0, 10.0), SprayVerdict::Spray, "10 °C is on the cold limit");
    assert_eq!(verdict(sheet, 9.99, 30.0, 20.0), SprayVerdict::Stop);
    assert_eq!(verdict(sheet, 20.0, 30.0, 9.99), SprayVerdict::Stop);
}

/// The humidity limit and the gap disagree (settings where sources disagree): the gap of 11.1 K is 48.7 to 50.1 % RH
/// from 20 to 25 °C, computed with PsychroLib, and the ruling says so where humidity alone would let it pass.
#[test]
fn the_disagreement_of_the_limits_is_told_where_it_shows() {
    let content = content();
    for (t, rh) in [(20.0, 48.7), (25.0, 50.1)] {
        let gate = air::spray_gate(celsius(t), humidity(rh), celsius(t), base(&content)).answer;
        near(gate.gap, 11.1, 0.06, &format!("gap at {t} °C {rh} % RH"));
    }
    let told = |rh| {
        let ruling = air::spray_gate(celsius(22.0), humidity(rh), celsius(22.0), base(&content));
        ruling.rules.iter().any(|rule| rule.0 == "air.limits-disagree")
    };
    assert!(!told(45.0) && told(55.0) && told(65.0) && !told(70.0));
    covered::values("air", "published cases of spraying, PsychroLib");
}

/// The two limits disagree about the room, whatever the work: warm work in air that holds 9.45 K in hand at room
/// temperature is sprayed and told; cold work in air that holds 12.5 K is stopped or retarded and not told. Gaps from
/// the dew points 12.55 and 9.52 °C at 22 °C and 55 and 45 % RH (PsychroLib).
#[test]
fn the_limits_disagree_by_the_room_and_not_by_the_work() {
    let content = content();
    let judged = |rh, work| {
        let ruling = air::spray_gate(celsius(22.0), humidity(rh), celsius(work), base(&content));
        (ruling.answer.verdict, ruling.rules.iter().any(|rule| rule.0 == "air.limits-disagree"))
    };
    same!(judged(55.0, 30.0), (SprayVerdict::Spray, true));
    same!(judged(45.0, 18.0), (SprayVerdict::Retarder, false));
    same!(judged(45.0, 15.0), (SprayVerdict::Stop, false));
    covered::values("air", "published cases of spraying, PsychroLib");
}

/// Each verdict is told by the rule of its own limit on the base sheet; cases of the table above.
#[test]
fn each_verdict_names_the_rule_that_gave_it() {
    let content = content();
    let rule = |air_c, rh, work| {
        air::spray_gate(celsius(air_c), humidity(rh), celsius(work), base(&content)).rules[0].0
    };
    assert_eq!(rule(22.0, 40.0, 22.0), "air.gap-spray");
    assert_eq!(rule(20.0, 50.0, 20.0), "air.gap-retarder");
    assert_eq!(rule(24.0, 65.0, 24.0), "air.gap-stop");
    assert_eq!(rule(24.0, 70.0, 40.0), "air.humidity-limit");
    assert_eq!(rule(9.0, 30.0, 20.0), "air.cold-stop");
    assert_eq!(rule(20.0, 20.0, 9.0), "air.cold-stop");
}

/// Retarder in the mix answers the retarder band and nothing stricter; the gap of 9 K lies in it, 6 K under it.
#[test]
fn retarder_answers_its_own_band_only() {
    let content = content();
    let may = |gap: f64, thinner| {
        let dew = air::dew_point(celsius(22.0), humidity(40.0)).answer.get();
        let gate = air::spray_gate(celsius(22.0), humidity(40.0), celsius(dew + gap), base(&content));
        air::may_spray(&gate, thinner).answer
    };
    assert!(may(12.0, Thinner::Fast) && may(12.0, Thinner::Retarded));
    assert!(!may(9.0, Thinner::Fast) && may(9.0, Thinner::Retarded));
    assert!(!may(6.0, Thinner::Fast) && !may(6.0, Thinner::Retarded));
}

/// What to do follows from the gate: retarder in its band only; work from a cold store is warmed where the room passes
/// (published advice: work and room at one temperature), else the air is changed. Base sheet.
#[test]
fn the_next_action_follows_from_gate_and_room() {
    let content = content();
    let sheet = base(&content);
    for (air_c, rh, work, wanted) in [
        (22.0, 40.0, 22.0, Action::SprayAsMixed),
        (20.0, 50.0, 20.0, Action::AddRetarder),
        (22.0, 55.0, 12.0, Action::WarmWork),
        (22.0, 40.0, 9.0, Action::WarmWork),
        (24.0, 80.0, 12.0, Action::ChangeAir),
        (24.0, 80.0, 24.0, Action::ChangeAir),
        (8.0, 40.0, 8.0, Action::ChangeAir),
        (8.0, 40.0, 5.0, Action::ChangeAir),
    ] {
        let action = air::next_action(celsius(air_c), humidity(rh), celsius(work), sheet).answer;
        assert_eq!(action, wanted, "{air_c} °C {rh} % RH, work {work} °C");
    }
}

/// One reading can settle it: air over the humidity limit (65 %) or under the cold limit (10 °C) stops any work.
#[test]
fn one_reading_past_its_limit_settles_it_alone() {
    let content = content();
    let alone = |t: Option<f64>, rh: Option<f64>| {
        let (t, rh) = (t.map(celsius), rh.map(humidity));
        air::settled_by_one_reading(t, rh, base(&content)).map(|ruling| (ruling.answer, ruling.rules[0].0))
    };
    assert_eq!(alone(None, Some(65.0)), None);
    assert_eq!(alone(None, Some(66.0)), Some((Action::ChangeAir, "air.humidity-limit")));
    assert_eq!(alone(Some(10.0), None), None);
    assert_eq!(alone(Some(9.0), None), Some((Action::ChangeAir, "air.cold-stop")));
    assert_eq!(alone(None, None), None);
}

/// Every margin of one case, by hand from the dew point 9.27 °C at 20 °C and 50 % RH (PsychroLib) and the base sheet.
#[test]
fn every_margin_is_shown_with_its_sign() {
    let content = content();
    let ruling = air::spray_gate(celsius(20.0), humidity(50.0), celsius(18.0), base(&content));
    let gate = ruling.answer;
    near(gate.gap, 18.0 - 9.27, 0.02, "gap");
    near(gate.gap_margin, 18.0 - 9.27 - 11.1, 0.02, "gap margin");
    near(gate.retarder_margin, 18.0 - 9.27 - 7.0, 0.02, "retarder margin");
    near(gate.humidity_margin, 15.0, 1e-9, "humidity margin");
    near(gate.air_cold_margin, 10.0, 1e-9, "cold margin of the air");
    near(gate.work_cold_margin, 8.0, 1e-9, "cold margin of the work");
    near(gate.cold_margin(), 8.0, 1e-9, "cold margin");
    let labels: Vec<&str> = ruling.working.iter().map(|step| step.label).collect();
    for label in ["dew-point", "gap", "gap-margin", "humidity-margin", "cold-margin", "film-margin-fast"] {
        assert!(labels.contains(&label), "{label} is shown in {labels:?}");
    }
    assert!(gate.stops(Limit::Gap) == (gate.verdict == SprayVerdict::Stop));
    covered::values("air", "published cases of spraying, PsychroLib");
}

/// A surface within 2.8 K (5 °F) of the dew point is named as such: the published floor for solvent-borne paint.
#[test]
fn a_surface_near_the_dew_point_is_named() {
    let content = content();
    let named = |gap: f64| {
        let dew = air::dew_point(celsius(22.0), humidity(40.0)).answer.get();
        let ruling = air::spray_gate(celsius(22.0), humidity(40.0), celsius(dew + gap), base(&content));
        ruling.rules.iter().any(|rule| rule.0 == "air.surface-near-dew")
    };
    assert!(named(2.7) && !named(2.9));
    near(air::SURFACE_NEAR_DEW_K, 5.0 / 1.8, 0.03, "5 °F in kelvin");
    // A sheet read from elsewhere may hold less than its setting allows: the published floor stops the gun all the same.
    let mut loose = base(&content).clone();
    for setting in [Setting::GapSpray, Setting::GapRetarder] {
        loose = loose.tried(setting, 1.0);
    }
    let dew = air::dew_point(celsius(22.0), humidity(40.0)).answer.get();
    assert_eq!(verdict(&loose, 22.0, 40.0, dew + 2.7), SprayVerdict::Stop);
    assert_eq!(verdict(&loose, 22.0, 40.0, dew + 2.9), SprayVerdict::Spray);
}

/// The least temperature of the work: dew point 13.86 °C at 25 °C and 50 % RH (PsychroLib) and the gaps of the sheet.
#[test]
fn work_is_warm_enough_at_dew_point_and_gap() {
    let content = content();
    let least =
        |t, rh, thinner| air::warm_enough(celsius(t), humidity(rh), thinner, base(&content)).answer.get();
    near(least(25.0, 50.0, Thinner::Fast), 13.86 + 11.1, 0.05, "fast thinner");
    near(least(25.0, 50.0, Thinner::Retarded), 13.86 + 7.0, 0.05, "with retarder");
    near(least(18.0, 20.0, Thinner::Retarded), 10.0, 1e-9, "never under the cold limit");
    let by = |t, rh| air::warm_enough(celsius(t), humidity(rh), Thinner::Retarded, base(&content)).rules;
    assert_eq!(by(25.0, 50.0)[0].0, "air.gap-retarder");
    assert_eq!(by(18.0, 20.0)[0].0, "air.cold-stop");
    covered::values("air", "published cases of spraying, PsychroLib");
}

/// A dew point above the air temperature is a wrong reading, and vapour cannot reach the pressure of the air.
#[test]
fn impossible_air_cannot_be_judged() {
    let refused = air::humidity_from_dew_point(celsius(20.0), celsius(21.0)).expect_err("no such air");
    assert_eq!(refused.missing, ["dew_c"]);
    let thin = Pascals::new(50_000.0).expect("a pressure");
    let refused = air::humidity_ratio(celsius(93.0), humidity(100.0), thin).expect_err("no such air");
    assert_eq!(refused.missing, ["pressure_pa"]);
}
