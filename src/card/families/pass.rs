//! Passes: how even they lie, their film, their speed, how many there are, the second coat, the steps of a fade.

use crate::bench::Facts;
use crate::bench::spray::{told_overlap, told_speed, told_spray};
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, Overlap, PERCENT_A_WHOLE, Unit};
use crate::rules::sheet::Setting;
use crate::rules::spray::crossing::{FirstShows, Second, second_for};
use crate::rules::spray::fade;
use crate::rules::spray::fan::{EdgeMeant, Section, seen_overlap};
use crate::rules::spray::overlap::{Lay, evenness, lay_as_meant};
use crate::rules::spray::pass_film::{of_set, speed_by_comb};
use crate::rules::spray::trigger::passes_across;
use crate::rules::term::Term;
use crate::rules::verdict::Judged;

pub(super) const ALL: &[&Question] =
    &[&OVERLAP_LAY, &PASS_FILM_DRY, &SPEED_BY_COMB, &PASSES_ACROSS, &SECOND_COAT_LINES, &FADE_COATS];

/// Do these passes lie even? Misconceptions: speed or flow-out make up for the pitch; the seen edge is the fan's edge.
const OVERLAP_LAY: Question = Question {
    id: "overlap-lay",
    settle: clear_overlap,
    ask: Ask::One { answer: lies, tempt: lies_tempts },
    after: After::is("stripes"),
};

/// An overlap that lies clear of the sheet's limit by either edge.
fn clear_overlap(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// From here to there: stripes by either edge, by one of them, by none.
    const BANDS: [(f64, f64); 3] = [(8.0, 26.0), (27.0, 40.0), (41.0, 62.0)];
    const CLEAR_OF_LIMIT: f64 = 0.01;
    const TRIES: u32 = 32;
    let section = Section::of_sheet(world.sheet);
    let limit = world.sheet.get(Setting::StripesMost) / PERCENT_A_WHOLE;
    let clear = |overlap| (evenness(section, overlap).answer.cv - limit).abs() >= CLEAR_OF_LIMIT;
    let Some((from, to)) = dice.pick(&BANDS).copied() else { return };
    for _ in 0..TRIES {
        let percent = dice.on_grid(from, to, 1.0);
        facts.set("overlap_judged", percent);
        let full = Overlap::saturating(percent / PERCENT_A_WHOLE);
        if clear(full) && clear(seen_overlap(section, full).answer) {
            return;
        }
    }
}

fn lies(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let section = Section::of_sheet(world.sheet);
    let meant = facts.maybe_slug("edge_meant").and_then(EdgeMeant::from_slug);
    let ruling = lay_as_meant(section, told_overlap(facts, "overlap_judged")?, meant, world.sheet)?;
    Ok(ruling.map(|lay| Answer::term(lay.slug())))
}

fn lies_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Lay::Even.slug(), "seen-edge-for-full", ""),
        Tempt::term(Lay::Stripes.slug(), "closer-is-always-better", "material-lost"),
        Tempt::term("slower-on-thin-lines", "speed-for-pitch", ""),
        Tempt::term("flows-level", "flow-out-for-pitch", ""),
        Tempt::term("second-on-same-lines", "same-lines-even-out", ""),
    ]
}

/// How thick is the dry film of a coat? Misconceptions: solids or landing left out, the overlap counted twice.
const PASS_FILM_DRY: Question = Question {
    id: "pass-film-dry",
    settle: keep,
    ask: Ask::Number { answer: dry_film, tempt: dry_film_tempts, unit: Unit::Micrometre },
    after: After::is("film-too-thin").below("material-lost"),
};

fn dry_film(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let laid = of_set(told_spray(facts, "mix_solids")?, told_speed(facts)?, facts.millimetres("pitch_mm")?)?;
    Ok(laid.map(|laid| Measure::new(laid.dry.get(), Unit::Micrometre, 1)))
}

fn dry_film_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    /// An overlap of a half, counted though the pitch has it already.
    const DOUBLED: f64 = 2.0;
    let (Ok(dry), Ok(landing), Ok(solids)) =
        (dry_film(facts, world), facts.share("transfer"), facts.share("mix_solids"))
    else {
        return Vec::new();
    };
    let film = |um: f64| Measure::new(um, Unit::Micrometre, 1);
    let dry = dry.answer.value;
    vec![
        Tempt::number(film(dry / solids.get()), "wet-for-dry"),
        Tempt::number(film(dry / landing.get()), "all-of-it-lands"),
        Tempt::number(film(dry * DOUBLED), "overlap-counted-twice"),
    ]
}

/// At which speed does the comb read what the sheet wants? Misconceptions: turned round, the film taken for the speed.
const SPEED_BY_COMB: Question = Question {
    id: "speed-by-comb",
    settle: off_the_sheet,
    ask: Ask::Number { answer: new_speed, tempt: speed_tempts, unit: Unit::MetrePerSecond },
    after: After::is("run").above("film-too-thin"),
};

/// A reading that is plainly not the one wanted.
fn off_the_sheet(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const GRID_UM: f64 = 5.0;
    const HEAVY: (f64, f64) = (1.25, 1.7);
    const THIN: (f64, f64) = (0.5, 0.8);
    let wanted = world.sheet.get(Setting::ClearWet);
    let (from, to) = if dice.one_in(2) { HEAVY } else { THIN };
    let lowest = libm::ceil(wanted * from / GRID_UM) * GRID_UM;
    facts.set("wet_um", dice.on_grid(lowest, (wanted * to).max(lowest), GRID_UM));
}

fn new_speed(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let wanted = world.sheet.micrometres(Setting::ClearWet);
    let ruling = speed_by_comb(told_speed(facts)?, facts.micrometres("wet_um")?, wanted)?;
    Ok(ruling.map(|speed| Measure::new(speed.get(), Unit::MetrePerSecond, 2)))
}

fn speed_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let wanted = world.sheet.get(Setting::ClearWet);
    let told = facts.maybe_number("speed_m_s").zip(facts.maybe_number("wet_um"));
    let Some((held, read)) = told.filter(|(_, read)| *read > 0.0) else { return Vec::new() };
    let speed = |v: f64| Measure::new(v, Unit::MetrePerSecond, 2);
    vec![
        Tempt::number(speed(held * wanted / read), "speed-turned-round"),
        Tempt::number(speed(held), "speed-kept"),
        Tempt::number(speed(held * read * read / (wanted * wanted)), "speed-squared"),
    ]
}

/// How many passes does the face take? Misconceptions: the last edge forgotten; the full fan for the pitch.
const PASSES_ACROSS: Question = Question {
    id: "passes-across",
    settle: keep,
    ask: Ask::Number { answer: across, tempt: across_tempts, unit: Unit::Count },
    after: After::is("stripes").above("material-lost"),
};

fn across(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let (face, fan) = (facts.millimetres("face_mm")?, facts.millimetres("pattern_mm")?);
    Ok(passes_across(face, fan, told_overlap(facts, "overlap")?)?.map(Measure::count))
}

fn across_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(passes), Ok(face), Ok(fan)) =
        (across(facts, world), facts.number("face_mm"), facts.number("pattern_mm"))
    else {
        return Vec::new();
    };
    vec![
        Tempt::number(Measure::count(passes.answer.value - 1.0), "last-edge-forgotten"),
        Tempt::number(Measure::count(libm::ceil(face / fan)), "fan-for-pitch"),
        Tempt::number(Measure::count(libm::ceil(face / fan) + 1.0), "fan-for-pitch"),
    ]
}

/// How is the second coat laid? Misconceptions: the same lines even out; heavier hides stripes; crossing cures all.
const SECOND_COAT_LINES: Question = Question {
    id: "second-coat-lines",
    settle: keep,
    ask: Ask::One { answer: second, tempt: second_tempts },
    after: After::is("stripes"),
};

fn second(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let section = Section::of_sheet(world.sheet);
    let shows = facts.term::<FirstShows>("first_shows")?;
    let ruling = second_for(shows, section, told_overlap(facts, "overlap")?);
    Ok(ruling.map(|second| Answer::term(second.slug())))
}

fn second_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Second::Across.slug(), "crossing-cures-all", ""),
        Tempt::term(Second::HalfPitch.slug(), "shift-fills-gaps", ""),
        Tempt::term(Second::SameLines.slug(), "same-lines-even-out", ""),
        Tempt::term("second-heavy", "heavy-hides-stripes", "run-in-colour"),
        Tempt::term("second-after-sanding", "colour-sanded-flat", "colour-cut"),
    ]
}

/// How many coats of falling width make the fade? Misconceptions: one soft pass will do; a whole fan a step.
const FADE_COATS: Question = Question {
    id: "fade-coats",
    settle: keep,
    ask: Ask::Number { answer: fade_coats, tempt: fade_tempts, unit: Unit::Count },
    after: After::is("hard-shade").above("time-lost"),
};

fn fade_coats(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let coats = fade::coats_for(facts.millimetres("fade_mm")?, facts.millimetres("pattern_mm")?)?;
    Ok(coats.map(Measure::count))
}

fn fade_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let told = facts.maybe_number("fade_mm").zip(facts.maybe_number("pattern_mm"));
    let Some((fade, fan)) = told.filter(|(_, fan)| *fan > 0.0) else { return Vec::new() };
    /// Half fans in a fan.
    const HALVES: f64 = 2.0;
    vec![
        Tempt::number(Measure::count(libm::ceil(fade / fan)), "whole-fan-a-step"),
        Tempt::number(Measure::count(libm::floor(HALVES * fade / fan)), "steps-rounded-down"),
        Tempt::number(Measure::count(1.0), "one-pass-fades"),
    ]
}
