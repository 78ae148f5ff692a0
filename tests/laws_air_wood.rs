//! Laws of air and wood over seeded sweeps: round trips, monotonic where nature is, no panic on any valid input.

mod support;

use stepboard::card::Dice;
use stepboard::content::Content;
use stepboard::quantity::{Celsius, Millimetres, MoistureContent, Pascals, RelativeHumidity};
use stepboard::rules::air::{self, Gate, Limit, Thinner};
use stepboard::rules::sheet::Sheet;
use stepboard::rules::term::{Look, Term};
use stepboard::rules::wood::{self, Cut, FirstCoat, Fit};
use support::any::USUAL;
use support::{content, inputs};

fn celsius(value: f64) -> Celsius {
    Celsius::new(value).expect("a temperature")
}

fn humidity(value: f64) -> RelativeHumidity {
    RelativeHumidity::new(value).expect("a humidity")
}

fn percent(value: f64) -> MoistureContent {
    MoistureContent::new(value).expect("a moisture content")
}

/// Runs a check on many draws of one name.
fn sweep(name: &str, mut check: impl FnMut(&mut Dice)) {
    let mut dice = Dice::new(name);
    for _ in 0..inputs(USUAL) {
        check(&mut dice);
    }
}

fn draw(dice: &mut Dice, from: f64, to: f64) -> f64 {
    dice.on_grid(from, to, (to - from) / 100_000.0)
}

/// Any valid value of a quantity, the ends more often.
fn any(dice: &mut Dice, least: f64, most: f64) -> f64 {
    match dice.below(20) {
        0 => least,
        1 => most,
        _ => draw(dice, least, most).clamp(least, most),
    }
}

fn any_celsius(dice: &mut Dice) -> Celsius {
    celsius(any(dice, Celsius::MIN, Celsius::MAX))
}

fn any_humidity(dice: &mut Dice) -> RelativeHumidity {
    humidity(any(dice, RelativeHumidity::MIN, RelativeHumidity::MAX))
}

fn any_moisture(dice: &mut Dice) -> MoistureContent {
    percent(any(dice, MoistureContent::MIN, MoistureContent::MAX))
}

fn any_sheet<'a>(content: &'a Content, dice: &mut Dice) -> &'a Sheet {
    dice.pick(&content.sheets).expect("a sheet")
}

#[test]
fn dew_point_and_humidity_are_a_round_trip() {
    sweep("dew-point round trip", |dice| {
        let (t, rh) = (draw(dice, -20.0, 90.0), draw(dice, 1.0, 100.0));
        let dew = air::dew_point(celsius(t), humidity(rh)).answer;
        assert!(dew.get() <= t + 1e-9, "{t} °C {rh} %: the dew point lies above the air");
        let dew = celsius(dew.get().min(t));
        let back = air::humidity_from_dew_point(celsius(t), dew).expect("a dew point").answer.get();
        assert!((back - rh).abs() < 1e-6, "{t} °C {rh} % came back as {back} %");
    });
}

#[test]
fn moisture_and_humidity_are_a_round_trip() {
    sweep("moisture round trip", |dice| {
        let (t, rh) = (draw(dice, -1.0, 93.0), draw(dice, 0.0, 100.0));
        let settled = wood::moisture_content(celsius(t), humidity(rh)).expect("in the table").answer;
        let back = wood::humidity_for(celsius(t), settled).expect("it came from a room").answer.get();
        assert!((back - rh).abs() < 1e-6, "{t} °C {rh} % came back as {back} %");
    });
}

#[test]
fn dew_point_rises_with_humidity_and_with_air() {
    sweep("dew-point rises", |dice| {
        let (t, rh) = (draw(dice, -20.0, 90.0), draw(dice, 1.0, 99.0));
        let dew = |t, rh| air::dew_point(celsius(t), humidity(rh)).answer.get();
        assert!(dew(t, rh + 0.5) > dew(t, rh) && dew(t + 0.5, rh) > dew(t, rh), "{t} °C {rh} %");
    });
}

#[test]
fn wet_bulb_lies_between_dew_point_and_air_and_rises_with_humidity() {
    let pressure = Pascals::new(air::SEA_LEVEL_PA).expect("sea level");
    sweep("wet bulb", |dice| {
        let (t, rh) = (draw(dice, 0.1, 60.0), draw(dice, 1.0, 99.0));
        let wet = |rh| air::wet_bulb(celsius(t), humidity(rh), pressure).expect("such air is").answer.get();
        let dew = air::dew_point(celsius(t), humidity(rh)).answer.get();
        // The two formulas differ by up to 0.03 K; a dew point over water lies under the frost point, never above.
        assert!(wet(rh) <= t && wet(rh) >= dew - 0.05, "{t} °C {rh} %");
        assert!(wet(rh + 0.5) > wet(rh), "{t} °C {rh} %");
    });
}

#[test]
fn moisture_rises_with_humidity() {
    sweep("moisture rises", |dice| {
        let (t, rh) = (draw(dice, -1.0, 93.0), draw(dice, 0.0, 99.0));
        let settled = |rh| wood::moisture_content(celsius(t), humidity(rh)).expect("in the table").answer;
        assert!(settled(rh + 0.5) > settled(rh), "{t} °C {rh} %");
    });
}

#[test]
fn the_gate_never_gets_milder_when_humidity_rises_or_the_work_gets_colder() {
    let content = content();
    sweep("gate", |dice| {
        let sheet = any_sheet(&content, dice);
        let (t, rh, work) = (draw(dice, -20.0, 60.0), draw(dice, 0.0, 98.0), draw(dice, -19.0, 60.0));
        let verdict =
            |rh, work| air::spray_gate(celsius(t), humidity(rh), celsius(work), sheet).answer.verdict;
        let now = verdict(rh, work);
        assert!(verdict(rh + draw(dice, 0.0, 2.0), work) >= now, "{t} °C {rh} % {work} °C: more humid");
        assert!(verdict(rh, work - draw(dice, 0.0, 1.0)) >= now, "{t} °C {rh} % {work} °C: colder work");
    });
}

/// Work at the least temperature passes, and a hundredth of a degree under it does not, where the air itself passes.
#[test]
fn warm_enough_is_the_edge_of_the_gate() {
    let content = content();
    sweep("warm enough", |dice| {
        let sheet = any_sheet(&content, dice);
        let (t, rh) = (celsius(draw(dice, 15.0, 40.0)), humidity(draw(dice, 1.0, 60.0)));
        let thinner = *dice.pick(Thinner::ALL).expect("a thinner");
        let least = air::warm_enough(t, rh, thinner, sheet).answer;
        let may = |work: f64| air::may_spray(&air::spray_gate(t, rh, celsius(work), sheet), thinner).answer;
        assert!(may(least.get()) && !may(least.get() - 0.01), "{t:?} {rh:?} {thinner:?}");
    });
}

#[test]
fn movement_there_and_back_agrees_and_grows_with_moisture() {
    let content = content();
    let known: Vec<_> = content.woods.iter().filter(|wood| wood.movement.is_some()).collect();
    sweep("movement", |dice| {
        let wood = dice.pick(&known).expect("a wood");
        let cut = *dice.pick(Cut::ALL).expect("a cut");
        let width = Millimetres::new(draw(dice, 1.0, 1_000.0)).expect("a width");
        let (a, b) = (draw(dice, 0.0, 30.0), draw(dice, 0.0, 30.0));
        let change = |from, to| {
            wood::movement(wood, cut, width, percent(from), percent(to)).expect("a coefficient").answer.value
        };
        let there = change(a, b);
        assert!((b - a) * there >= 0.0, "{} {a} to {b} %: {there} mm", wood.slug);
        assert!(there.abs() < 0.2 * width.get(), "{} {a} to {b} %: {there} mm", wood.slug);
        let grown = Millimetres::new(width.get() + there).expect("a width");
        let back = wood::movement(wood, cut, grown, percent(b), percent(a)).expect("a coefficient").answer;
        // The linear form takes both changes on their own start width: off by the square of a small change.
        let room = there.abs() * there.abs() / width.get() + 1e-9;
        assert!((there + back.value).abs() <= room + 0.03 * there.abs(), "{} {a} to {b} %", wood.slug);
    });
}

fn finite(gate: &Gate) -> bool {
    let margins = [
        gate.gap,
        gate.gap_margin,
        gate.retarder_margin,
        gate.humidity_margin,
        gate.cold_margin(),
        gate.film_margin_fast,
        gate.film_margin_retarded,
    ];
    margins.iter().all(|margin| margin.is_finite())
}

#[test]
fn no_rule_of_air_panics_on_any_valid_input() {
    let content = content();
    sweep("air panics", |dice| {
        let sheet = any_sheet(&content, dice);
        let (t, rh, work) = (any_celsius(dice), any_humidity(dice), any_celsius(dice));
        let pressure = Pascals::new(any(dice, Pascals::MIN, Pascals::MAX)).expect("a pressure");
        assert!(air::dew_point(t, rh).answer.get().is_finite());
        assert!(air::saturation_pressure(t).is_finite());
        if let Ok(back) = air::humidity_from_dew_point(t, work) {
            assert!(back.answer.get().is_finite());
        }
        if let Ok(ratio) = air::humidity_ratio(t, rh, pressure) {
            assert!(ratio.answer.is_finite() && ratio.answer >= 0.0);
            let wet = air::wet_bulb(t, rh, pressure).expect("such air is").answer;
            assert!(wet <= t, "{t:?} {rh:?} {pressure:?}: wet bulb {wet:?}");
        }
        let gate = air::spray_gate(t, rh, work, sheet);
        assert!(finite(&gate.answer) && !gate.rules.is_empty());
        let stops = !air::stopping_limits(&gate).answer.is_empty();
        assert_eq!(stops, Limit::ALL.iter().any(|limit| gate.answer.stops(*limit)));
        assert_eq!(stops, !air::may_spray(&gate, Thinner::Retarded).answer);
        assert!(!air::next_action(t, rh, work, sheet).rules.is_empty());
        if let Some(alone) = air::settled_by_one_reading(Some(t), Some(rh), sheet) {
            assert_eq!(alone.answer, air::next_action(t, rh, work, sheet).answer);
        }
        assert!(air::warm_enough(t, rh, Thinner::Fast, sheet).answer.get().is_finite());
    });
}

#[test]
fn no_rule_of_wood_panics_on_any_valid_input() {
    let content = content();
    sweep("wood panics", |dice| {
        let sheet = any_sheet(&content, dice);
        let (t, rh, mc, later) =
            (any_celsius(dice), any_humidity(dice), any_moisture(dice), any_moisture(dice));
        if let Ok(settled) = wood::moisture_content(t, rh) {
            assert!(settled.answer.get().is_finite());
        }
        if let Ok(room) = wood::humidity_for(t, mc) {
            assert!(room.answer.get().is_finite());
        }
        let fit = wood::fit_to_finish(mc, sheet);
        assert!(!fit.rules.is_empty() && Fit::ALL.contains(&fit.answer));
        assert!(!wood::moisture_action(mc, sheet).rules.is_empty());
        assert!(wood::corrected_reading(mc, t, celsius(21.0)).answer.get().is_finite());
        let one = dice.pick(&content.woods).expect("a wood");
        let width = Millimetres::new(any(dice, Millimetres::MIN, Millimetres::MAX)).expect("a width");
        let cut = *dice.pick(Cut::ALL).expect("a cut");
        if let Ok(change) = wood::movement(one, cut, width, mc, later) {
            assert!(change.answer.value.is_finite());
        }
        let first = *dice.pick(FirstCoat::ALL).expect("a coat");
        assert!(!wood::demands(one, first).rules.is_empty());
        assert_eq!(wood::pore_class(one).is_err(), one.porosity_alt.is_some());
        let look = *dice.pick(Look::ALL).expect("a look");
        assert!(!wood::filler(one, look).rules.is_empty());
    });
}
