//! Shop: grit ladders.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::abrasive::{Abrading, Grade, next_grade, us_neighbour};
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ABRASIVES: &[&Calculation] = &[&NEXT_GRIT, &GRIT];

const NEXT_GRIT: Calculation = Calculation {
    name: "next-grit",
    needs: &[Needs::must("grade"), Needs::must("abrading")],
    gives: &[
        Gives::Number { key: "grade", unit: Unit::Grit },
        Gives::Term { key: "verdict", among: &["go-on", "sanding-done", "to-compound"] },
    ],
    run: next_grit,
};

const GRIT: Calculation = Calculation {
    name: "grit",
    needs: &[Needs::must("grade")],
    gives: &[
        Gives::Number { key: "grain", unit: Unit::Micrometre },
        Gives::Number { key: "us_grade", unit: Unit::Count },
    ],
    run: grit,
};

/// The P grade that is told.
pub(crate) fn told_grade(facts: &Facts, key: &str) -> Result<&'static Grade, CannotJudge> {
    Grade::p(facts.number(key)?).ok_or_else(|| CannotJudge::without(key))
}

/// The word for a ladder's end.
pub(crate) const fn ladder_done(work: Abrading) -> &'static str {
    match work {
        Abrading::BareWood => "sanding-done",
        Abrading::Levelling => "to-compound",
    }
}

fn next_grit(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let work = facts.term::<Abrading>("abrading")?;
    let next = next_grade(told_grade(facts, "grade")?, work, world.sheet);
    Ok(next.map(|grade| match grade {
        Some(grade) => Outcome::default().number("grade", grade.measure()).term("verdict", "go-on"),
        None => Outcome::default().term("verdict", ladder_done(work)),
    }))
}

fn grit(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let grade = told_grade(facts, "grade")?;
    let grain = Measure::new(grade.median.get(), Unit::Micrometre, 1);
    Ok(us_neighbour(grade)
        .map(|us| Outcome::default().number("grain", grain).number("us_grade", Measure::count(us.number))))
}
