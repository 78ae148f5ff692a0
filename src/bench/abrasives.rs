//! Abrasives: grades and their grain, both gradings, the next grit, the last one.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::abrasive::{
    Abrading, Before, Grade, last_grade, next_grade, p_neighbour, sheets_left, us_neighbour,
};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Calculation] = &[&GRIT, &US_GRIT, &NEXT_GRIT, &LAST_GRIT];

const GRIT: Calculation = Calculation {
    name: "grit",
    needs: &[Needs::must("grade")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Micrometre },
        Gives::Number { key: "us_grade", unit: Unit::Count },
        Gives::Number { key: "coarser", unit: Unit::Grit },
        Gives::Number { key: "finer", unit: Unit::Grit },
    ],
    run: grit,
};

const US_GRIT: Calculation = Calculation {
    name: "us-grit",
    needs: &[Needs::must("us_grade")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Micrometre },
        Gives::Number { key: "grade", unit: Unit::Grit },
    ],
    run: us_grit,
};

const NEXT_GRIT: Calculation = Calculation {
    name: "next-grit",
    needs: &[Needs::must("grade"), Needs::must("stage")],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Grit },
        Gives::Term { key: "verdict", among: &["go-on", "sanding-done", "to-compound"] },
        Gives::Number { key: "last", unit: Unit::Grit },
        Gives::Number { key: "sheets", unit: Unit::Count },
        Gives::Term { key: "before", among: &["before-stain", "before-compound"] },
    ],
    run: next_grit,
};

const LAST_GRIT: Calculation = Calculation {
    name: "last-grit",
    needs: &[Needs::must("before")],
    gives: &[Gives::Number { key: "value", unit: Unit::Grit }],
    run: last_grit,
};

/// The P grade that is told.
pub(crate) fn told_grade(facts: &Facts, key: &str) -> Result<&'static Grade, CannotJudge> {
    Grade::p(facts.number(key)?).ok_or_else(|| CannotJudge::without(key))
}

/// The US grade that is told.
pub(crate) fn told_us(facts: &Facts, key: &str) -> Result<&'static Grade, CannotJudge> {
    Grade::us(facts.number(key)?).ok_or_else(|| CannotJudge::without(key))
}

/// The word for a ladder's end.
pub(crate) const fn ladder_done(work: Abrading) -> &'static str {
    match work {
        Abrading::BareWood => "sanding-done",
        Abrading::Levelling => "to-compound",
    }
}

fn grit(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let grade = told_grade(facts, "grade")?;
    let (coarser, finer) = grade.beside();
    Ok(us_neighbour(grade).map(|us| {
        let mut outcome = Outcome::value(grade.size()).number("us_grade", Measure::count(us.number));
        for (key, beside) in [("coarser", coarser), ("finer", finer)] {
            if let Some(beside) = beside {
                outcome = outcome.number(key, beside.measure());
            }
        }
        outcome
    }))
}

fn us_grit(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let us = told_us(facts, "us_grade")?;
    Ok(p_neighbour(us).map(|grade| Outcome::value(us.size()).number("grade", grade.measure())))
}

fn next_grit(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let work = facts.term::<Abrading>("stage")?;
    let last = last_grade(work.leads_to(), world.sheet).answer;
    let grade = told_grade(facts, "grade")?;
    let sheets = Measure::count(f64::from(sheets_left(grade, work, world.sheet).answer));
    let next = next_grade(grade, work, world.sheet);
    Ok(next.map(|grade| {
        let outcome = match grade {
            Some(grade) => Outcome::value(grade.measure()).term("verdict", "go-on"),
            None => Outcome::default().term("verdict", ladder_done(work)),
        };
        outcome.number("last", last.measure()).number("sheets", sheets).term("before", work.leads_to().slug())
    }))
}

fn last_grit(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let before = facts.term::<Before>("before")?;
    Ok(last_grade(before, world.sheet).map(|grade| Outcome::value(grade.measure())))
}
