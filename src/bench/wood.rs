//! Wood: moisture content, filler, movement.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Measure, MoistureContent, Unit};
use crate::rules::term::{Look, Term};
use crate::rules::verdict::{CannotJudge, Judged};
use crate::rules::wood;

pub(super) const ALL: &[&Calculation] =
    &[&FILLER, &MOISTURE_CONTENT, &HUMIDITY_FOR, &FIT_TO_FINISH, &METER_READING, &MOVEMENT];

const FILLER: Calculation = Calculation {
    name: "filler",
    needs: &[Needs::must("wood"), Needs::must("look")],
    gives: &[Gives::Term { key: "verdict", among: &["yes", "no", "optional"] }],
    run: filler,
};

fn filler(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let wood = world.wood(facts.slug("wood")?)?;
    let ruling = wood::filler(wood, facts.term::<Look>("look")?);
    Ok(ruling.map(|need| Outcome::default().term("verdict", need.slug())))
}

const PERCENT: &[Gives] = &[Gives::Number { key: "value", unit: Unit::Percent }];

fn percent(value: f64) -> Outcome {
    Outcome::value(Measure::new(value, Unit::Percent, 1))
}

fn moisture(facts: &Facts, key: &str) -> Result<MoistureContent, CannotJudge> {
    MoistureContent::new(facts.number(key)?).map_err(|_| CannotJudge::without(key))
}

const MOISTURE_CONTENT: Calculation = Calculation {
    name: "moisture-content",
    needs: &[Needs::must("air_c"), Needs::must("rh")],
    gives: PERCENT,
    run: moisture_content,
};

fn moisture_content(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let ruling = wood::moisture_content(facts.celsius("air_c")?, facts.humidity("rh")?)?;
    Ok(ruling.map(|content| percent(content.get())))
}

const HUMIDITY_FOR: Calculation = Calculation {
    name: "humidity-for",
    needs: &[Needs::must("air_c"), Needs::must("mc")],
    gives: PERCENT,
    run: humidity_for,
};

fn humidity_for(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let ruling = wood::humidity_for(facts.celsius("air_c")?, moisture(facts, "mc")?)?;
    Ok(ruling.map(|humidity| percent(humidity.get())))
}

const FIT_TO_FINISH: Calculation = Calculation {
    name: "fit-to-finish",
    needs: &[Needs::must("mc")],
    gives: &[Gives::Term { key: "verdict", among: &["accept", "hold", "reject"] }],
    run: fit_to_finish,
};

fn fit_to_finish(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let ruling = wood::fit_to_finish(moisture(facts, "mc")?, world.sheet);
    Ok(ruling.map(|fit| Outcome::default().term("verdict", fit.slug())))
}

const METER_READING: Calculation = Calculation {
    name: "meter-reading",
    needs: &[Needs::must("meter_mc"), Needs::must("wood_c"), Needs::must("meter_c")],
    gives: PERCENT,
    run: meter_reading,
};

fn meter_reading(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let reading = moisture(facts, "meter_mc")?;
    let ruling = wood::corrected_reading(reading, facts.celsius("wood_c")?, facts.celsius("meter_c")?);
    Ok(ruling.map(|content| percent(content.get())))
}

const MOVEMENT: Calculation = Calculation {
    name: "movement",
    needs: &[
        Needs::must("wood"),
        Needs::must("cut"),
        Needs::must("width_mm"),
        Needs::must("from_mc"),
        Needs::must("to_mc"),
    ],
    gives: &[Gives::Number { key: "value", unit: Unit::Millimetre }],
    run: movement,
};

fn movement(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let wood = world.wood(facts.slug("wood")?)?;
    let (from, to) = (moisture(facts, "from_mc")?, moisture(facts, "to_mc")?);
    let ruling = wood::movement(wood, facts.term("cut")?, facts.millimetres("width_mm")?, from, to)?;
    Ok(ruling.map(Outcome::value))
}
