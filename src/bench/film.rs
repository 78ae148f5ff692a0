//! Film: dry film of a coat and of a build, coats for a build, what a wet film calls for.

use super::mixing::told_thinning;
use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Fraction, Measure, Micrometres, Unit};
use crate::rules::film::{self, Facing};
use crate::rules::mixing::{self, Thinning};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Calculation] = &[&DRY_FILM, &COATS_FOR, &SAG_CHECK, &LEVEL_CHECK];

const DRY_FILM: Calculation = Calculation {
    name: "dry-film",
    needs: &[
        Needs::must("wet_um"),
        Needs::may("volume_solids"),
        Needs::may("parts_base"),
        Needs::may("parts_thinner"),
        Needs::may("percent"),
        Needs::may("coats"),
    ],
    gives: &[
        Gives::Number { key: "dry_film", unit: Unit::Micrometre },
        Gives::Number { key: "build", unit: Unit::Micrometre },
    ],
    run: dry_film,
};

const COATS_FOR: Calculation = Calculation {
    name: "coats-for",
    needs: &[
        Needs::may("target_um"),
        Needs::must("wet_um"),
        Needs::may("volume_solids"),
        Needs::may("parts_base"),
        Needs::may("parts_thinner"),
        Needs::may("percent"),
    ],
    gives: &[
        Gives::Number { key: "coats", unit: Unit::Count },
        Gives::Number { key: "dry_film", unit: Unit::Micrometre },
    ],
    run: coats_for,
};

const SAG_CHECK: Calculation = Calculation {
    name: "sag-check",
    needs: &[Needs::must("wet_um"), Needs::may("facing")],
    gives: &[Gives::Term {
        key: "verdict",
        among: &["wet-lay-more", "wet-carry-on", "wet-ease-off", "wet-lay-flat"],
    }],
    run: sag_check,
};

const LEVEL_CHECK: Calculation = Calculation {
    name: "level-check",
    needs: &[Needs::must("build_um"), Needs::may("taken_um")],
    gives: &[
        Gives::Term {
            key: "verdict",
            among: &["level-now", "level-clear-first", "level-under-reserve", "level-through"],
        },
        Gives::Number { key: "film_left", unit: Unit::Micrometre },
    ],
    run: level_check,
};

/// Volume solids that are told, else the shop sheet's.
fn solids(facts: &Facts, world: &World<'_>) -> Fraction {
    facts.maybe_number("volume_solids").map_or_else(|| film::clear_solids(world.sheet), mixing::fraction)
}

/// Thinning by parts or per cent as told, else the shop sheet's.
fn thinning(facts: &Facts, world: &World<'_>) -> Result<Thinning, CannotJudge> {
    Ok(told_thinning(facts)?.unwrap_or_else(|| mixing::clear_thinning(world.sheet)))
}

fn shown(film: Micrometres) -> Measure {
    Measure::new(film.get(), Unit::Micrometre, 1)
}

fn dry_film(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let coat = film::dry(facts.micrometres("wet_um")?, solids(facts, world), thinning(facts, world)?);
    let coats = if facts.maybe_number("coats").is_some() { facts.count("coats")? } else { 1 };
    let build = film::build(coats, coat.answer);
    let outcome =
        Outcome::default().number("dry_film", shown(coat.answer)).number("build", shown(build.answer));
    Ok(build.map(|_| outcome).resting_on(&coat))
}

fn coats_for(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let coat = film::dry(facts.micrometres("wet_um")?, solids(facts, world), thinning(facts, world)?);
    let target =
        facts.micrometres("target_um").unwrap_or_else(|_| world.sheet.micrometres(Setting::BuildTarget));
    let coats = film::coats_for(target, coat.answer)?;
    Ok(coats
        .map(|count| {
            Outcome::default()
                .number("coats", Measure::count(f64::from(count)))
                .number("dry_film", shown(coat.answer))
        })
        .resting_on(&coat))
}

fn sag_check(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let facing = facts.term("facing").unwrap_or(Facing::Standing);
    let verdict = film::wet_film(facts.micrometres("wet_um")?, facing, world.sheet);
    Ok(verdict.map(|verdict| Outcome::default().term("verdict", verdict.slug())))
}

fn level_check(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let build = facts.micrometres("build_um")?;
    let taken = facts.micrometres("taken_um").unwrap_or_else(|_| Micrometres::saturating(0.0));
    let left = film::left(build, taken).answer;
    let verdict = film::levelling(build, taken, world.sheet);
    Ok(verdict
        .map(|verdict| Outcome::default().term("verdict", verdict.slug()).number("film_left", shown(left))))
}
