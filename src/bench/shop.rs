//! Shop: grit ladders, thinning, washcoat solids.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Measure, Millilitres, Unit};
use crate::rules::abrasive::{Abrading, Grade, next_grade, us_neighbour};
use crate::rules::mixing::{self, Thinning};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

pub(super) const ABRASIVES: &[&Calculation] = &[&NEXT_GRIT, &GRIT];
pub(super) const MIXING: &[&Calculation] = &[&THIN, &WASHCOAT_SOLIDS];

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

const THIN: Calculation = Calculation {
    name: "thin",
    needs: &[
        Needs::must("base_ml"),
        Needs::may("parts_base"),
        Needs::may("parts_thinner"),
        Needs::may("thin_percent"),
    ],
    gives: &[
        Gives::Number { key: "thinner", unit: Unit::Millilitre },
        Gives::Number { key: "batch", unit: Unit::Millilitre },
        Gives::Number { key: "percent_thinned", unit: Unit::Percent },
        Gives::Number { key: "share", unit: Unit::Percent },
    ],
    run: thin,
};

const WASHCOAT_SOLIDS: Calculation = Calculation {
    name: "washcoat-solids",
    needs: &[Needs::must("volume_solids"), Needs::must("parts_sealer"), Needs::must("parts_thinner")],
    gives: &[
        Gives::Number { key: "solids", unit: Unit::Percent },
        Gives::Term { key: "verdict", among: &["use-as-is", "add-thinner", "add-sealer"] },
    ],
    run: washcoat_solids,
};

/// The P grade that is told.
pub(crate) fn told_grade(facts: &Facts, key: &str) -> Result<&'static Grade, CannotJudge> {
    Grade::p(facts.number(key)?).ok_or_else(|| CannotJudge::without(key))
}

/// Thinning from two facts that give parts.
pub(crate) fn told_parts(facts: &Facts, base: &str, thinner: &str) -> Result<Thinning, CannotJudge> {
    Thinning::of_parts(facts.number(base)?, facts.number(thinner)?).map_err(|_| CannotJudge::without(base))
}

/// Thinning told by parts and by per cent as well: which of the two holds has to be asked.
pub(crate) fn told_twice() -> CannotJudge {
    CannotJudge { missing: ["parts_thinner", "thin_percent"].map(str::to_owned).to_vec() }
}

/// A volume that is told.
pub(crate) fn told_volume(facts: &Facts, key: &str) -> Result<Millilitres, CannotJudge> {
    Millilitres::new(facts.number(key)?).map_err(|_| CannotJudge::without(key))
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

fn thin(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let base = told_volume(facts, "base_ml")?;
    let parts = facts.maybe_number("parts_base").or(facts.maybe_number("parts_thinner"));
    let thinning = match facts.maybe_number("thin_percent") {
        Some(_) if parts.is_some() => return Err(told_twice()),
        Some(percent) => Thinning::of_percent(percent).map_err(|_| CannotJudge::without("thin_percent"))?,
        None => told_parts(facts, "parts_base", "parts_thinner")?,
    };
    let share = mixing::percent(thinning.share());
    Ok(mixing::thinner_for(base, thinning).map(|thinner| {
        Outcome::default()
            .number("thinner", mixing::volume(thinner))
            .number("batch", mixing::volume(Millilitres::saturating(base.get() + thinner.get())))
            .number("percent_thinned", Measure::new(thinning.percent(), Unit::Percent, 1))
            .number("share", share)
    }))
}

fn washcoat_solids(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let solids = mixing::fraction(facts.number("volume_solids")?);
    let thinning = told_parts(facts, "parts_sealer", "parts_thinner")?;
    let after = mixing::thinned_solids(solids, thinning);
    let verdict: Ruling<mixing::Washcoat> = mixing::washcoat(Some(solids), thinning, world.sheet)?;
    let share = mixing::percent(after.answer);
    Ok(verdict.map(|band| Outcome::default().number("solids", share).term("verdict", band.slug())))
}
