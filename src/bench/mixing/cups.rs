//! Cups: seconds to viscosity and back, warmth, pot life.

use super::{told, told_seconds};
use crate::bench::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Measure, Unit, Viscosity};
use crate::rules::mixing::{self, Cup, Reading, stop_watch};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// The verdict on a reading that stands for nothing.
const WRONG_CUP: &str = "wrong-cup";
/// No finer cup reads so thin a liquid, no coarser one so thick a one.
const NONE_FINER: &str = "none-finer";
const NONE_COARSER: &str = "none-coarser";
/// Which way the liquid is out of range.
const TOO_THIN: &str = "too-thin-for-cup";
const TOO_THICK: &str = "too-thick-for-cup";
/// What is given when the cup is the wrong one.
const VERDICT: Gives = Gives::Term { key: "verdict", among: &[WRONG_CUP] };
const WHY: Gives = Gives::Term { key: "reading", among: &[TOO_THIN, TOO_THICK] };
const USE: Gives = Gives::Term { key: "use", among: &["@cups", NONE_FINER, NONE_COARSER] };
/// What is told of the cup in any case.
const LEAST: Gives = Gives::Number { key: "cup_least", unit: Unit::Second };
const MOST: Gives = Gives::Number { key: "cup_most", unit: Unit::Second };
const AT: Gives = Gives::Number { key: "at", unit: Unit::Celsius };

pub(super) const VISCOSITY: Calculation = Calculation {
    name: "viscosity",
    needs: &[Needs::must("cup"), Needs::must("seconds")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::SquareMillimetreASecond },
        VERDICT,
        WHY,
        USE,
        LEAST,
        MOST,
        AT,
    ],
    run: viscosity,
};

pub(super) const CUP_TIME: Calculation = Calculation {
    name: "cup-time",
    needs: &[Needs::must("cup"), Needs::must("viscosity_mm2_s")],
    gives: &[Gives::Number { key: "value", unit: Unit::Second }, VERDICT, WHY, USE, LEAST, MOST, AT],
    run: cup_time,
};

pub(super) const WARMED: Calculation = Calculation {
    name: "viscosity-warmed",
    needs: &[
        Needs::must("cold_c"),
        Needs::must("viscosity_mm2_s"),
        Needs::must("warm_c"),
        Needs::must("warm_mm2_s"),
        Needs::must("liquid_c"),
    ],
    gives: &[Gives::Number { key: "value", unit: Unit::SquareMillimetreASecond }],
    run: warmed,
};

pub(super) const POT_LIFE: Calculation = Calculation {
    name: "pot-life",
    needs: &[Needs::must("pot_life_h"), Needs::must("air_c")],
    gives: &[Gives::Number { key: "value", unit: Unit::Hour }],
    run: pot_life,
};

/// The cup that is told.
pub(crate) fn told_cup<'a>(facts: &Facts, world: &World<'a>) -> Result<&'a Cup, CannotJudge> {
    world.cup(facts.slug("cup")?)
}

/// A reading with the range of its cup: its number, or which cup to take.
fn shown<T>(cup: &Cup, ruling: Ruling<Reading<'_, T>>, measure: fn(T) -> Measure) -> Ruling<Outcome> {
    let (least, most) = cup.range();
    let ranged = Outcome::default()
        .number("cup_least", stop_watch(least))
        .number("cup_most", stop_watch(most))
        .number("at", Measure::new(cup.at().get(), Unit::Celsius, 0));
    let wrong = |reading, found: Option<&Cup>, none| {
        let other = found.map_or(none, |cup| cup.slug.as_str());
        ranged.clone().term("verdict", WRONG_CUP).term("reading", reading).term("use", other)
    };
    ruling.map(|reading| match reading {
        Reading::Holds(found) => ranged.clone().number("value", measure(found)),
        Reading::Finer(cup) => wrong(TOO_THIN, cup, NONE_FINER),
        Reading::Coarser(cup) => wrong(TOO_THICK, cup, NONE_COARSER),
    })
}

fn viscosity(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let cup = told_cup(facts, world)?;
    let seconds = told_seconds(facts, "seconds")?;
    Ok(shown(cup, mixing::reading(cup, seconds, &world.content.cups), mixing::thickness_of))
}

fn cup_time(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let cup = told_cup(facts, world)?;
    let viscosity = told(facts, "viscosity_mm2_s", Viscosity::new)?;
    Ok(shown(cup, mixing::time_for(cup, viscosity, &world.content.cups), stop_watch))
}

fn warmed(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let cold = (facts.celsius("cold_c")?, told(facts, "viscosity_mm2_s", Viscosity::new)?);
    let warm = (facts.celsius("warm_c")?, told(facts, "warm_mm2_s", Viscosity::new)?);
    let found = mixing::at_temperature(cold, warm, facts.celsius("liquid_c")?)?;
    Ok(found.map(|found| Outcome::value(mixing::thickness_of(found))))
}

fn pot_life(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let life = mixing::pot_life_in(facts.hours("pot_life_h")?, facts.celsius("air_c")?, world.sheet);
    Ok(life.map(|life| Outcome::value(Measure::new(life.get(), Unit::Hour, 1))))
}
