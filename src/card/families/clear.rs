//! Clear: wet film and dry build, what counts, how many coats, whether it may be levelled again.

use super::waiting::time_of;
use crate::bench::Facts;
use crate::bench::mixing::told_percent;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Fraction, Measure, Micrometres, Unit};
use crate::rules::film::{self, Facing, Layer, Levelling, Thickness, WetFilm};
use crate::rules::mixing::{self, Thinning};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[
    &COATS_FOR_BUILD,
    &COMB_FOR_DRY,
    &WET_FILM,
    &FILM_LAID,
    &LEVEL_AGAIN,
    &WHAT_COUNTS,
    &FILM_SCALE,
    &COATS_TODAY,
];

/// How many coats reach the shop's build? Misconceptions: thinner forgotten; per cent taken as a share of the mix; wet
/// film counted as dry.
const COATS_FOR_BUILD: Question = Question {
    id: "coats-for-build",
    settle: clear_of_whole_coats,
    ask: Ask::Number { answer: coats_for_build, tempt: coats_for_build_slips, unit: Unit::Count },
    after: After::is("film-too-thin").above("material-lost"),
};

/// What must the comb read for a wanted dry film? Misconceptions: as above, and multiplying where one divides.
const COMB_FOR_DRY: Question = Question {
    id: "comb-for-dry",
    settle: keep,
    ask: Ask::Number { answer: comb_for_dry, tempt: comb_for_dry_slips, unit: Unit::Micrometre },
    after: After::is("film-too-thin").above("run"),
};

/// What does the reading of the comb call for? Misconceptions: a standing face takes what a lying one takes; a light
/// coat is the safe one.
const WET_FILM: Question = Question {
    id: "wet-film-reading",
    settle: keep,
    ask: Ask::One { answer: wet_film, tempt: wet_film_slips },
    after: After::is("run"),
};

/// How much clear lies there? Misconceptions: the sealer counts; thinner forgotten; wet film counted as dry.
const FILM_LAID: Question = Question {
    id: "film-laid",
    settle: keep,
    ask: Ask::Number { answer: film_laid, tempt: film_laid_slips, unit: Unit::Micrometre },
    after: After::is("cut-through-thin").below("material-lost"),
};

/// Is there film enough to level again? Misconceptions: what came off the first time is forgotten; only the take-off
/// must be there; a cut is cleared over.
const LEVEL_AGAIN: Question = Question {
    id: "level-again",
    settle: off_the_limits,
    ask: Ask::One { answer: level_again, tempt: level_again_slips },
    after: After::is("cut-through-thin"),
};

/// Which layers may levelling draw on? Misconception: every layer is film.
const WHAT_COUNTS: Question = Question {
    id: "what-counts-as-build",
    settle: keep,
    ask: Ask::All { items: layers, holds: counts },
    after: After::is("cut-through-thin"),
};

/// Thicknesses of the sheet from thin to thick. Misconceptions: colour as heavy as clear; a dry coat near its wet film.
const FILM_SCALE: Question = Question {
    id: "film-scale",
    settle: keep,
    ask: Ask::Order { items: thicknesses, accepts: rises },
    after: After::is("run"),
};

/// How many coats may this ticket still get today? Misconceptions: one limit is forgotten, gaps are counted for coats.
const COATS_TODAY: Question = Question {
    id: "coats-today",
    settle: within_the_order,
    ask: Ask::Number { answer: coats_today, tempt: coats_today_slips, unit: Unit::Count },
    after: After::is("solvent-trapped").below("time-lost"),
};

fn thinning(facts: &Facts) -> Result<Thinning, CannotJudge> {
    told_percent(facts, "percent")
}

/// Thinning as somebody reads it who takes the per cent as a share of the mix: 25 % of the mix is 1/3 of the material.
fn thinning_of_mix(facts: &Facts) -> Result<Thinning, CannotJudge> {
    let share = mixing::fraction(facts.number("percent")?);
    Thinning::of_share(share).map_err(|_| CannotJudge::without("percent"))
}

fn all_solid() -> Fraction {
    Fraction::saturating(1.0)
}

fn um(value: Micrometres) -> Measure {
    Measure::new(value.get(), Unit::Micrometre, 0)
}

/// A tempting number where the misconception gives one.
fn slip(number: Result<Measure, CannotJudge>, slip: &'static str) -> Option<Tempt> {
    number.ok().map(|measure| Tempt::number(measure, slip))
}

// Coats for the build

fn coats_for_build(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    coats_with(facts, world, film::clear_solids(world.sheet), thinning(facts)?)
}

fn coats_with(facts: &Facts, world: &World<'_>, solids: Fraction, mix: Thinning) -> Judged<Measure> {
    let coat = film::dry(facts.micrometres("wet_um")?, solids, mix);
    let coats = film::coats_for(world.sheet.micrometres(Setting::BuildTarget), coat.answer)?;
    Ok(coats.map(|n| Measure::count(f64::from(n))).resting_on(&coat))
}

fn coats_for_build_slips(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let solids = film::clear_solids(world.sheet);
    let with = |solids, mix| coats_with(facts, world, solids, mix).map(|ruling| ruling.answer);
    [
        slip(with(solids, Thinning::NONE), "thinner-forgotten"),
        slip(thinning_of_mix(facts).and_then(|mix| with(solids, mix)), "percent-of-mix"),
        slip(with(all_solid(), Thinning::NONE), "wet-as-dry"),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Thins a little more until the coats are not so near a whole number that rounding a reading would decide.
fn clear_of_whole_coats(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    /// Share of the coats that rounding of what is shown may hide.
    const SHARE: f64 = 0.02;
    const MORE_THINNER: f64 = 5.0;
    const TRIES: u32 = 12;
    let near = |facts: &Facts| {
        let coat = film::dry(facts.micrometres("wet_um")?, film::clear_solids(world.sheet), thinning(facts)?);
        let exact = world.sheet.get(Setting::BuildTarget) / coat.answer.get();
        Ok::<bool, CannotJudge>((exact - libm::round(exact)).abs() < SHARE * exact)
    };
    for _ in 0..TRIES {
        let Some(percent) = facts.maybe_number("percent") else { return };
        if near(facts) == Ok(false) {
            return;
        }
        facts.set("percent", percent + MORE_THINNER);
    }
}

// Comb reading for a wanted dry film

fn comb_for_dry(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let wet = film::wet_for(facts.micrometres("dry_um")?, film::clear_solids(world.sheet), thinning(facts)?)?;
    Ok(wet.map(um))
}

fn comb_for_dry_slips(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let solids = film::clear_solids(world.sheet);
    let with = |mix| {
        let wanted = facts.micrometres("dry_um")?;
        film::wet_for(wanted, solids, mix).map(|ruling| um(ruling.answer))
    };
    let multiplied = || {
        let wanted = facts.micrometres("dry_um")?;
        Ok(um(film::dry(wanted, solids, thinning(facts)?).answer))
    };
    [
        slip(with(Thinning::NONE), "thinner-forgotten"),
        slip(thinning_of_mix(facts).and_then(with), "percent-of-mix"),
        slip(multiplied(), "multiplied-for-divided"),
        slip(facts.micrometres("dry_um").map(um), "wet-as-dry"),
    ]
    .into_iter()
    .flatten()
    .collect()
}

// What the comb calls for

fn wet_film(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (wet, facing) = (facts.micrometres("wet_um")?, facts.term::<Facing>("facing")?);
    Ok(film::wet_film(wet, facing, world.sheet).map(|answer| Answer::term(answer.slug())))
}

fn wet_film_slips(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(WetFilm::LayMore.slug(), "sound-coat-thought-light", "run"),
        Tempt::term(WetFilm::CarryOn.slug(), "comb-limits-not-read", "run"),
        Tempt::term(WetFilm::EaseOff.slug(), "near-running-misread", "run"),
        Tempt::term(WetFilm::LayFlat.slug(), "sag-limit-misplaced", "film-too-thin"),
    ]
}

// Film laid

fn film_laid(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    laid_with(facts, facts.count("coats")?, film::clear_solids(world.sheet), thinning(facts)?)
}

fn laid_with(facts: &Facts, coats: u32, solids: Fraction, mix: Thinning) -> Judged<Measure> {
    let coat = film::dry(facts.micrometres("wet_um")?, solids, mix);
    let build = film::build(coats, coat.answer);
    Ok(build.map(um).resting_on(&coat).and("film.under-colour-is-no-build"))
}

fn film_laid_slips(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let solids = film::clear_solids(world.sheet);
    let with = |sealer: bool, solids, mix| {
        let more = if sealer { facts.count("sealer_coats")? } else { 0 };
        laid_with(facts, facts.count("coats")? + more, solids, mix).map(|ruling| ruling.answer)
    };
    [
        slip(thinning(facts).and_then(|mix| with(true, solids, mix)), "sealer-counted"),
        slip(with(false, solids, Thinning::NONE), "thinner-forgotten"),
        slip(thinning_of_mix(facts).and_then(|mix| with(false, solids, mix)), "percent-of-mix"),
        slip(with(false, all_solid(), Thinning::NONE), "wet-as-dry"),
    ]
    .into_iter()
    .flatten()
    .collect()
}

// Level again

fn level_again(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (build, taken) = (facts.micrometres("build_um")?, facts.micrometres("taken_um")?);
    Ok(film::levelling(build, taken, world.sheet).map(|answer| Answer::term(answer.slug())))
}

fn level_again_slips(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Levelling::Level.slug(), "reserve-not-kept", "cut-through-thin"),
        Tempt::term(Levelling::ClearFirst.slug(), "film-left-misjudged", "film-too-thin"),
        Tempt::term(Levelling::UnderReserve.slug(), "take-off-and-reserve-confused", "film-too-thin"),
        Tempt::term(Levelling::Through.slug(), "thin-taken-for-cut", "film-too-thin"),
    ]
}

/// Sometimes cuts the film through; else keeps it off the limits, so that rounding a figure decides nothing.
fn off_the_limits(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const CUT_ONE_IN: u32 = 6;
    /// Half of the last figure shown in either system of units, and a little.
    const NEAR_UM: f64 = 4.0;
    let (Some(mut build), Some(taken)) = (facts.maybe_number("build_um"), facts.maybe_number("taken_um"))
    else {
        return;
    };
    let (reserve, take_off) = (world.sheet.get(Setting::FilmReserve), world.sheet.get(Setting::LevelTakeOff));
    if dice.one_in(CUT_ONE_IN) || build <= taken {
        facts.set("taken_um", build.min(taken.max(take_off)));
        facts.set("build_um", build.min(taken.max(take_off)));
        return;
    }
    while [0.0, reserve, reserve + take_off].iter().any(|limit| (build - taken - limit).abs() < NEAR_UM) {
        build += NEAR_UM;
    }
    facts.set("build_um", build);
}

// What counts

fn layers(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    Layer::ALL.iter().map(|layer| Item::new(layer.slug(), layer_slip(*layer))).collect()
}

const fn layer_slip(layer: Layer) -> &'static str {
    match layer {
        Layer::Sealer => "sealer-counted",
        Layer::Stain | Layer::Filler | Layer::Washcoat => "under-layers-counted",
        Layer::Colour | Layer::Shade => "colour-counted",
        Layer::ProtectiveClear => "protective-clear-misjudged",
        Layer::Clear => "clear-not-counted",
        Layer::LevelledOff => "taken-off-counted",
    }
}

fn counts(_: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let layer = Layer::from_slug(slug).ok_or_else(|| CannotJudge::without("layer"))?;
    Ok(film::counts_as_build(layer, world.sheet))
}

// The scale of films

/// Thicknesses on one card.
const ON_THE_SCALE: usize = 5;

fn thicknesses(_: &Facts, _: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let mut all = Thickness::ALL.to_vec();
    dice.shuffle(&mut all);
    all.iter().take(ON_THE_SCALE).map(|one| Item::new(one.slug(), "")).collect()
}

fn rises(_: &Facts, world: &World<'_>, order: &[String]) -> Judged<bool> {
    film::rises(order, world.sheet)
}

// Coats today

fn coats_today(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let ticket = world.ticket(facts.slug("ticket")?)?;
    let (laid, today) = (facts.count("coats")?, facts.count("coats_today")?);
    let coats = film::coats_today(ticket.clear_coats, laid, today, time_of(facts, "clock")?, world.sheet);
    Ok(coats.map(|coats| Measure::count(f64::from(coats))))
}

fn coats_today_slips(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let with = |laid: Option<u32>, today: Option<u32>| {
        let ticket = world.ticket(facts.slug("ticket")?)?;
        let laid = laid.map_or_else(|| facts.count("coats"), Ok)?;
        let today = today.map_or_else(|| facts.count("coats_today"), Ok)?;
        let coats = film::coats_today(ticket.clear_coats, laid, today, time_of(facts, "clock")?, world.sheet);
        Ok(Measure::count(f64::from(coats.answer)))
    };
    let allowed = || {
        let most = world.sheet.get(Setting::CoatsADay) - facts.number("coats_today")?;
        Ok(Measure::count(most.max(0.0)))
    };
    let ordered = || {
        let ticket = world.ticket(facts.slug("ticket")?)?;
        Ok(Measure::count((f64::from(ticket.clear_coats) - facts.number("coats")?).max(0.0)))
    };
    [
        slip(with(Some(0), None), "coats-on-forgotten"),
        slip(with(None, Some(0)), "coats-of-today-forgotten"),
        slip(allowed(), "only-the-daily-limit"),
        slip(ordered(), "only-the-order"),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// A job that is not finished: fewer coats on than ordered, no more today than in all.
fn within_the_order(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    let Ok(ticket) = facts.slug("ticket").and_then(|slug| world.ticket(slug)) else { return };
    let laid = facts.maybe_number("coats").unwrap_or(0.0).min(f64::from(ticket.clear_coats) - 1.0);
    let today = facts.maybe_number("coats_today").unwrap_or(0.0).min(laid);
    facts.set("coats", laid);
    facts.set("coats_today", today);
}
