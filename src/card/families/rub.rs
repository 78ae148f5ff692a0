//! Rubbing: the sheet between coats, a spot cut down, the margin before the colour is cut.

use super::order::gloss_ticket;
use crate::bench::Facts;
use crate::bench::abrasives::{told_grade, told_us};
use crate::card::question::{After, Ask, Question, Tempt};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, Micrometres, Unit};
use crate::rules::abrasive::{
    Abrading, Grade, Grading, P_SERIES, ScuffSheet, US_SERIES, ladder, next_grade, on_sheet, p_neighbour,
    scuff_sheet, spot_next,
};
use crate::rules::film::{self, CutRisk, CutThrough, Place, ToRub};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::Judged;

pub(super) const ALL: &[&Question] = &[&SCUFF_SHEET, &RUN_SPOT, &CUT_MARGIN, &RUB_OR_CLEAR];

/// Is this the sheet for scuffing? Misconceptions: numbers of both gradings are alike; a light hand makes a coarse sheet
/// fine; a coat that melts in hides everything.
const SCUFF_SHEET: Question = Question {
    id: "scuff-sheet",
    settle: a_paper,
    ask: Ask::One { answer: scuff, tempt: scuff_tempts },
    after: After::is("scratch-after-buff"),
};

/// What follows on a spot cut down with a coarser sheet? Misconceptions: straight on with the face; finer at once.
const RUN_SPOT: Question = Question {
    id: "run-spot",
    settle: a_spot,
    ask: Ask::One { answer: spot, tempt: spot_tempts },
    after: After::is("scratch-after-buff").below("time-lost-sanding"),
};

/// How much clear is left at the thinnest place? Misconceptions: the mean film counts; only the texture comes off.
const CUT_MARGIN: Question = Question {
    id: "cut-margin",
    settle: some_margin,
    ask: Ask::Number { answer: margin, tempt: margin_slips, unit: Unit::Micrometre },
    after: After::is("cut-through-thin").below("time-lost"),
};

/// Rub, or more clear first? Misconceptions: an edge has the film of the face; a grade left out saves film.
const RUB_OR_CLEAR: Question = Question {
    id: "rub-or-clear",
    settle: off_the_reserve,
    ask: Ask::One { answer: rub_or_clear, tempt: rub_tempts },
    after: After::is("cut-through-thin"),
};

// The sheet between coats

/// A sheet of either grading, near the shop's grade as often as not.
fn a_paper(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Grades that are found in the rack between coats.
    const RACK: std::ops::RangeInclusive<f64> = 240.0..=800.0;
    /// One card in so many has the shop's own grade.
    const RIGHT_ONE_IN: u32 = 3;
    let us = facts.term::<Grading>("grading") == Ok(Grading::Us);
    let series: &[Grade] = if us { &US_SERIES } else { &P_SERIES };
    let wanted = on_sheet(world.sheet, Setting::ScuffGrit).number;
    let means = |grade: &&Grade| if us { p_neighbour(grade).answer.number } else { grade.number };
    let rack: Vec<&Grade> = series.iter().filter(|grade| RACK.contains(&grade.number)).collect();
    let right = rack.iter().find(|grade| means(grade) == wanted);
    let picked = right.filter(|_| dice.one_in(RIGHT_ONE_IN)).or_else(|| dice.pick(&rack));
    if let Some(grade) = picked {
        facts.set("paper_number", grade.number);
    }
}

fn scuff(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = match facts.term::<Grading>("grading")? {
        Grading::P => scuff_sheet(told_grade(facts, "paper_number")?, world.sheet),
        Grading::Us => {
            let same = p_neighbour(told_us(facts, "paper_number")?);
            scuff_sheet(same.answer, world.sheet).resting_on(&same)
        }
    };
    Ok(ruling.map(|state| Answer::term(state.slug())))
}

fn scuff_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(ScuffSheet::Right.slug(), "scuff-grade-misread", ""),
        Tempt::term(ScuffSheet::TooCoarse.slug(), "same-number-same-grain", "time-lost-sanding"),
        Tempt::term(ScuffSheet::TooFine.slug(), "same-number-same-grain", ""),
        Tempt::term("scuff-lightly", "light-hand-for-fine-sheet", ""),
        Tempt::term("scuff-any", "melting-hides-scratches", ""),
    ]
}

// A spot cut down

fn a_spot(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Coarsest sheet that a run is cut down with.
    const FROM: f64 = 240.0;
    gloss_ticket(facts, world, dice);
    let first = on_sheet(world.sheet, Setting::LevelGrit).number;
    let grades: Vec<&Grade> =
        P_SERIES.iter().filter(|grade| grade.number >= FROM && grade.number <= first).collect();
    if let Some(grade) = dice.pick(&grades) {
        facts.set("grade", grade.number);
    }
}

fn spot(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let next = spot_next(told_grade(facts, "grade")?, world.sheet);
    Ok(next.map(|grade| {
        grade.map_or_else(|| Answer::term("with-the-face"), |grade| Answer::Number(grade.measure()))
    }))
}

fn spot_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(from) = told_grade(facts, "grade") else { return Vec::new() };
    let first = on_sheet(world.sheet, Setting::LevelGrit);
    let last = on_sheet(world.sheet, Setting::CompoundGrit);
    let mut tempts = vec![
        Tempt::term("with-the-face", "spot-not-brought-up", ""),
        Tempt::term("clear-on-the-spot", "coat-over-scratches", "time-lost"),
        Tempt::number(last.measure(), "straight-to-last"),
        Tempt::number(first.measure(), "jump-too-far"),
    ];
    if let Some(far) = next_grade(from, Abrading::Levelling, world.sheet).answer {
        tempts.push(Tempt::number(far.measure(), "finer-than-the-face"));
    }
    let (coarser, finer) = from.beside();
    tempts.extend(finer.map(|grade| Tempt::number(grade.measure(), "one-grade-at-a-time")));
    tempts.extend(coarser.map(|grade| Tempt::number(grade.measure(), "back-a-grade")));
    tempts
}

// The margin

fn rubbed(facts: &Facts, world: &World<'_>, place: Place) -> Judged<CutThrough> {
    let film = ToRub {
        build: facts.micrometres("build_um")?,
        evenness: facts.share("evenness")?,
        texture: facts.micrometres("texture_um")?,
        place,
    };
    let first = on_sheet(world.sheet, Setting::LevelGrit);
    Ok(film::cut_through(film, &ladder(first, Abrading::Levelling, world.sheet), world.sheet))
}

fn um(film: Micrometres) -> Measure {
    Measure::new(film.get(), Unit::Micrometre, 0)
}

fn margin(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    Ok(rubbed(facts, world, Place::Face)?.map(|found| um(found.left)))
}

fn margin_slips(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(build), Ok(even), Ok(texture), Ok(found)) = (
        facts.micrometres("build_um"),
        facts.share("evenness"),
        facts.micrometres("texture_um"),
        rubbed(facts, world, Place::Face),
    ) else {
        return Vec::new();
    };
    let number = |value: f64, slip| Tempt::number(um(Micrometres::saturating(value)), slip);
    let taken = found.answer.taken.get();
    let thinnest = build.get() * even.get();
    vec![
        number(build.get() - taken, "mean-for-thinnest"),
        number(thinnest - texture.get(), "scratches-take-nothing"),
        number(thinnest, "rubbing-takes-nothing"),
        number(build.get() - texture.get(), "only-texture-comes-off"),
    ]
}

/// Adds film until something is left to ask about.
fn some_margin(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    /// Least clear left on a card.
    const LEAST_UM: f64 = 8.0;
    more_film_until(facts, world, Place::Face, |found, _| found.left.get() >= LEAST_UM);
}

/// Film stays off the limits, so that rounding a figure decides nothing.
fn off_the_reserve(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    /// Half of the last figure shown in either system of units, and a little.
    const NEAR_UM: f64 = 3.0;
    let place = facts.term::<Place>("rubbed").unwrap_or(Place::Face);
    more_film_until(facts, world, place, |found, reserve| {
        let cut = found.risk == CutRisk::Through || found.left.get() > NEAR_UM;
        cut && (found.left.get() - reserve).abs() > NEAR_UM
    });
    // Just cut is as doubtful as just not: take a little more off the film.
    if let (Some(build), Ok(found)) = (facts.maybe_number("build_um"), rubbed(facts, world, place))
        && found.answer.risk == CutRisk::Through
    {
        facts.set("build_um", build - NEAR_UM);
    }
}

fn more_film_until(
    facts: &mut Facts,
    world: &World<'_>,
    place: Place,
    good: impl Fn(CutThrough, f64) -> bool,
) {
    const MORE_UM: f64 = 4.0;
    const TRIES: u32 = 40;
    let reserve = world.sheet.get(Setting::FilmReserve);
    for _ in 0..TRIES {
        let (Some(build), Ok(found)) = (facts.maybe_number("build_um"), rubbed(facts, world, place)) else {
            return;
        };
        if good(found.answer, reserve) {
            return;
        }
        facts.set("build_um", build + MORE_UM);
    }
}

fn rub_or_clear(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let place = facts.term::<Place>("rubbed")?;
    Ok(rubbed(facts, world, place)?.map(|found| Answer::term(found.risk.slug())))
}

fn rub_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |risk| match risk {
        CutRisk::Safe => "thinnest-place-overlooked",
        CutRisk::Thin => "margin-misjudged",
        CutRisk::Through => "thin-taken-for-cut",
    };
    let mut tempts: Vec<Tempt> =
        CutRisk::ALL.iter().map(|risk| Tempt::term(risk.slug(), slip(*risk), "")).collect();
    tempts.push(Tempt::term("leave-a-grade-out", "grade-left-out-saves-film", "scratch-after-buff"));
    tempts.push(Tempt::term("buff-only", "compound-takes-all", "swirls-left"));
    tempts
}
