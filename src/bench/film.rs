//! Film: dry film of a coat and of a build, coats for a build, coverage, sagging, what levelling leaves.

use super::abrasives::told_grade;
use super::mixing::{told_density, told_thinning};
use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::quantity::{Coverage, Fraction, Measure, Micrometres, SquareMetres, Unit};
use crate::rules::abrasive::{Abrading, ladder, on_sheet};
use crate::rules::film::{self, Facing, Place, ToRub};
use crate::rules::mixing::{self, Thinning};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Calculation] =
    &[&DRY_FILM, &WET_FILM, &COATS_FOR, &COVERAGE, &VOLUME_SOLIDS, &SAG_CHECK, &LEVEL_CHECK, &CUT_THROUGH];

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
        Gives::Number { key: "value", unit: Unit::Micrometre },
        Gives::Number { key: "dry_film", unit: Unit::Micrometre },
        Gives::Number { key: "build", unit: Unit::Micrometre },
    ],
    run: dry_film,
};

const WET_FILM: Calculation = Calculation {
    name: "wet-film",
    needs: &[
        Needs::must("dry_um"),
        Needs::may("volume_solids"),
        Needs::may("parts_base"),
        Needs::may("parts_thinner"),
        Needs::may("percent"),
    ],
    gives: &[Gives::Number { key: "value", unit: Unit::Micrometre }],
    run: wet_film,
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
        Gives::Number { key: "value", unit: Unit::Count },
        Gives::Number { key: "coats", unit: Unit::Count },
        Gives::Number { key: "dry_film", unit: Unit::Micrometre },
    ],
    run: coats_for,
};

const COVERAGE: Calculation = Calculation {
    name: "coverage",
    needs: &[
        Needs::must("volume_solids"),
        Needs::must("dry_um"),
        Needs::may("transfer"),
        Needs::may("area_m2"),
    ],
    gives: &[
        Gives::Number { key: "value", unit: Unit::SquareMetreALitre },
        Gives::Number { key: "us_coverage", unit: Unit::SquareFootAGallon },
        Gives::Number { key: "volume", unit: Unit::Millilitre },
    ],
    run: coverage,
};

const VOLUME_SOLIDS: Calculation = Calculation {
    name: "volume-solids",
    needs: &[Needs::must("solids"), Needs::must("solids_density_kg_l"), Needs::must("solvent_density_kg_l")],
    gives: &[Gives::Number { key: "value", unit: Unit::Ratio }],
    run: volume_solids,
};

const SAG_CHECK: Calculation = Calculation {
    name: "sag-check",
    needs: &[Needs::must("wet_um"), Needs::may("facing")],
    gives: &[
        Gives::Term { key: "verdict", among: &["ok", "near-running", "sags"] },
        Gives::Term { key: "call", among: &["wet-lay-more", "wet-carry-on", "wet-ease-off", "wet-lay-flat"] },
        Gives::Number { key: "near_running_from", unit: Unit::Micrometre },
        Gives::Number { key: "sags_from", unit: Unit::Micrometre },
        Gives::Number { key: "times_flow", unit: Unit::Ratio },
    ],
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

const CUT_THROUGH: Calculation = Calculation {
    name: "cut-through",
    needs: &[
        Needs::must("build_um"),
        Needs::must("texture_um"),
        Needs::may("evenness"),
        Needs::may("grade"),
        Needs::may("rubbed"),
    ],
    gives: &[
        Gives::Number { key: "value", unit: Unit::Micrometre },
        Gives::Term { key: "verdict", among: &["margin-safe", "margin-thin", "margin-through"] },
        Gives::Number { key: "taken", unit: Unit::Micrometre },
    ],
    run: cut_through,
};

/// All of it.
const WHOLE: Fraction = Fraction::saturating(1.0);

/// Volume solids that are told, else the shop sheet's.
fn solids(facts: &Facts, world: &World<'_>) -> Fraction {
    facts.maybe_number("volume_solids").map_or_else(|| film::clear_solids(world.sheet), mixing::fraction)
}

/// Thinning by parts or per cent as told. Untold, a material whose solids are told is sprayed as supplied, and the shop's
/// own clear as its sheet thins it.
fn thinning(facts: &Facts, world: &World<'_>) -> Result<Thinning, CannotJudge> {
    let untold = match facts.maybe_number("volume_solids") {
        Some(_) => Thinning::NONE,
        None => mixing::clear_thinning(world.sheet),
    };
    Ok(told_thinning(facts)?.unwrap_or(untold))
}

fn shown(film: Micrometres) -> Measure {
    Measure::new(film.get(), Unit::Micrometre, 1)
}

fn dry_film(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let coat = film::dry(facts.micrometres("wet_um")?, solids(facts, world), thinning(facts, world)?);
    let coats = if facts.maybe_number("coats").is_some() { facts.count("coats")? } else { 1 };
    let build = film::build(coats, coat.answer);
    let total = shown(build.answer);
    let outcome = Outcome::value(total).number("dry_film", shown(coat.answer)).number("build", total);
    Ok(build.map(|_| outcome).resting_on(&coat))
}

fn coats_for(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let coat = film::dry(facts.micrometres("wet_um")?, solids(facts, world), thinning(facts, world)?);
    let target =
        facts.micrometres("target_um").unwrap_or_else(|_| world.sheet.micrometres(Setting::BuildTarget));
    let coats = film::coats_for(target, coat.answer)?;
    Ok(coats
        .map(|count| {
            let count = Measure::count(f64::from(count));
            Outcome::value(count).number("coats", count).number("dry_film", shown(coat.answer))
        })
        .resting_on(&coat))
}

fn wet_film(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let wet = film::wet_for(facts.micrometres("dry_um")?, solids(facts, world), thinning(facts, world)?)?;
    Ok(wet.map(|wet| Outcome::value(shown(wet))))
}

fn coverage(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let (solids, dry) = (facts.share("volume_solids")?, facts.micrometres("dry_um")?);
    let transfer = told_or(facts.share("transfer"), WHOLE, facts, "transfer")?;
    let spread = film::coverage(solids, dry, transfer)?;
    let value = spreading(spread.answer);
    let mut outcome = Outcome::value(value).number("us_coverage", value.in_unit(Unit::SquareFootAGallon));
    let Some(area) = facts.maybe_number("area_m2") else { return Ok(spread.map(|_| outcome)) };
    let needed = film::volume_for(SquareMetres::saturating(area), dry, solids, transfer)?;
    outcome = outcome.number("volume", mixing::volume(needed.answer));
    Ok(needed.map(|_| outcome).resting_on(&spread))
}

/// What is told, else what stands for it.
fn told_or<T>(told: Result<T, CannotJudge>, untold: T, facts: &Facts, key: &str) -> Result<T, CannotJudge> {
    if facts.0.contains_key(key) { told } else { Ok(untold) }
}

const fn spreading(coverage: Coverage) -> Measure {
    Measure::new(coverage.get(), Unit::SquareMetreALitre, 2)
}

fn volume_solids(facts: &Facts, _: &World<'_>) -> Judged<Outcome> {
    let (solids, solvent) =
        (told_density(facts, "solids_density_kg_l")?, told_density(facts, "solvent_density_kg_l")?);
    let volume = film::volume_solids(facts.share("solids")?, solids, solvent);
    Ok(volume.map(|share| Outcome::value(Measure::new(share.get(), Unit::Ratio, 3))))
}

fn sag_check(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let facing = told_or(facts.term("facing"), Facing::Standing, facts, "facing")?;
    let (wet, coat) = (facts.micrometres("wet_um")?, world.sheet.micrometres(Setting::ClearWet));
    let flow = film::sag_flow(wet, coat);
    let reads = film::wet_film(wet, facing, world.sheet);
    let outcome = Outcome::default()
        .term("verdict", reads.answer.sag().slug())
        .term("call", reads.answer.slug())
        .number("near_running_from", shown(world.sheet.micrometres(Setting::WetWarn)))
        .number("sags_from", shown(world.sheet.micrometres(Setting::WetSag)))
        .number("times_flow", Measure::new(flow.answer, Unit::Ratio, 1));
    Ok(reads.map(|_| outcome).resting_on(&flow))
}

fn cut_through(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let first = on_sheet(world.sheet, Setting::LevelGrit);
    let first = told_or(told_grade(facts, "grade"), first, facts, "grade")?;
    let film = ToRub {
        build: facts.micrometres("build_um")?,
        evenness: told_or(facts.share("evenness"), WHOLE, facts, "evenness")?,
        texture: facts.micrometres("texture_um")?,
        place: told_or(facts.term("rubbed"), Place::Face, facts, "rubbed")?,
    };
    let grades = ladder(first, Abrading::Levelling, world.sheet);
    Ok(film::cut_through(film, &grades, world.sheet).map(|found| {
        Outcome::value(shown(found.left))
            .term("verdict", found.risk.slug())
            .number("taken", shown(found.taken))
    }))
}

fn level_check(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let build = facts.micrometres("build_um")?;
    let taken = facts.micrometres("taken_um").unwrap_or_else(|_| Micrometres::saturating(0.0));
    let left = film::left(build, taken).answer;
    let verdict = film::levelling(build, taken, world.sheet);
    Ok(verdict
        .map(|verdict| Outcome::default().term("verdict", verdict.slug()).number("film_left", shown(left))))
}
