//! Solid colour: how wet a pass, how many, in what order, and whether the colour may be scuffed.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::colouring::{self, Blemish, ColourKind, ColourStep, PassCall, ScuffCall};
use crate::rules::film::Facing;
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::Judged;

pub(super) const ALL: &[&Question] =
    &[&COLOUR_WET, &COLOUR_SAG, &COLOUR_PASSES, &COLOUR_SCUFF, &COLOUR_ORDER];

/// What does the comb say of this pass? Misconceptions: wet is good as long as nothing runs, a clear coat's film.
const COLOUR_WET: Question = Question {
    id: "colour-wet",
    settle: clear_reading,
    ask: Ask::One { answer: wet, tempt: wet_tempts },
    after: After::is("run-in-colour"),
};

/// Readings that lie clear of every limit on the sheet, whatever the limits are.
fn clear_reading(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const GRID_UM: f64 = 5.0;
    const CLEAR_OF_LIMIT_UM: f64 = 5.0;
    const HEAVY_TIMES: f64 = 1.3;
    const THIN_TIMES: f64 = 0.6;
    const SAGGING_MORE_UM: f64 = 40.0;
    let wanted = world.sheet.get(Setting::ColourWet);
    let (warn, sag) = (world.sheet.get(Setting::WetWarn), world.sheet.get(Setting::WetSag));
    let (from, to) = match dice.below(4) {
        0 => (wanted * THIN_TIMES, wanted),
        1 => (wanted * HEAVY_TIMES, warn - CLEAR_OF_LIMIT_UM),
        2 => (warn + CLEAR_OF_LIMIT_UM, sag - CLEAR_OF_LIMIT_UM),
        _ => (sag + CLEAR_OF_LIMIT_UM, sag + SAGGING_MORE_UM),
    };
    let lowest = libm::ceil(from / GRID_UM) * GRID_UM;
    facts.set("wet_um", dice.on_grid(lowest, to.max(lowest), GRID_UM));
}

fn wet(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let facing = facts.maybe_slug("facing").and_then(Facing::from_slug);
    let ruling = colouring::judge_pass(world.sheet, facts.micrometres("wet_um")?, facing)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn wet_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(PassCall::Right.slug(), "wet-is-good-while-it-holds", ""),
        Tempt::term(PassCall::Heavy.slug(), "colour-pass-like-clear", ""),
        Tempt::term(PassCall::NearRun.slug(), "run-feared-anywhere", "lost-hour"),
        Tempt::term(PassCall::Sags.slug(), "run-feared-anywhere", "lost-hour"),
        Tempt::term("too-thin-slow-down", "colour-in-one-pass", ""),
    ]
}

/// By how much does a heavy pass flow more? Misconceptions: in proportion, with the square, three times.
const COLOUR_SAG: Question = Question {
    id: "colour-sag",
    settle: keep,
    ask: Ask::Number { answer: sag, tempt: sag_tempts, unit: Unit::Ratio },
    after: After::is("run-in-colour").above("time-lost"),
};

fn sag(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let ruling = colouring::sag_growth(world.sheet, facts.micrometres("wet_um")?)?;
    Ok(ruling.map(|growth| Measure::new(growth, Unit::Ratio, 1)))
}

fn sag_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    /// The power, taken for a factor.
    const CUBE_AS_FACTOR: f64 = 3.0;
    let wanted = world.sheet.get(Setting::ColourWet);
    let Some(wet) = facts.maybe_number("wet_um").filter(|_| wanted > 0.0) else { return Vec::new() };
    let times = wet / wanted;
    let ratio = |number: f64| Measure::new(number, Unit::Ratio, 1);
    vec![
        Tempt::number(ratio(times), "sag-in-proportion"),
        Tempt::number(ratio(times * times), "sag-with-square"),
        Tempt::number(ratio(CUBE_AS_FACTOR * times), "cube-as-factor"),
    ]
}

/// How many passes at the sheet's film? Misconceptions: the sample's count, rounding down, the ratio turned over.
const COLOUR_PASSES: Question = Question {
    id: "colour-passes",
    settle: keep,
    ask: Ask::Number { answer: passes, tempt: passes_tempts, unit: Unit::Count },
    after: After::is("colour-thin").above("material-lost"),
};

fn passes(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let (count, film) = (facts.number("sample_passes")?, facts.micrometres("sample_um")?);
    Ok(colouring::passes(world.sheet, count, film)?.map(Measure::count))
}

fn passes_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let told = facts.maybe_number("sample_passes").zip(facts.maybe_number("sample_um"));
    let Some((count, film)) = told.filter(|(_, film)| *film > 0.0) else { return Vec::new() };
    let wanted = world.sheet.get(Setting::ColourWet);
    vec![
        Tempt::number(Measure::count(count), "sample-count-kept"),
        Tempt::number(Measure::count(libm::floor(count * film / wanted)), "passes-rounded-down"),
        Tempt::number(Measure::count(libm::ceil(count * wanted / film)), "passes-turned-over"),
    ]
}

/// May this colour be scuffed? Misconceptions: colour is colour, scuffing before it hides, specks cut flat.
const COLOUR_SCUFF: Question = Question {
    id: "colour-scuff",
    settle: keep,
    ask: Ask::One { answer: scuff, tempt: scuff_tempts },
    after: After::is("colour-cut"),
};

fn scuff(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let hides = facts.yes("hides").ok();
    let blemish = facts.maybe_slug("blemish").and_then(Blemish::from_slug);
    let ruling = colouring::scuff(facts.term::<ColourKind>("colour_kind")?, hides, blemish)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn scuff_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(ScuffCall::Scuff.slug(), "toner-scuffed-like-opaque", ""),
        Tempt::term(ScuffCall::MoreColour.slug(), "colour-heaped-on", "too-dark"),
        Tempt::term(ScuffCall::NibOnly.slug(), "specks-only-everywhere", "lost-hour"),
        Tempt::term(ScuffCall::Lock.slug(), "opaque-never-touched", "lost-hour"),
        Tempt::term("sand-flat-then-mist", "colour-sanded-flat", ""),
    ]
}

/// In what order does a colour coat go on? Misconceptions: edges last, both passes one way, scraped before protected.
const COLOUR_ORDER: Question = Question {
    id: "colour-order",
    settle: keep,
    ask: Ask::Order { items: order_items, accepts: order },
    after: After::is("stripes"),
};

fn order_items(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    const SHOWN_LEAST: u32 = 4;
    const SHOWN_CHOICES: u32 = 2;
    let mut steps = colouring::colour_steps(world.sheet, facts.yes("body_bound") == Ok(true));
    dice.shuffle(&mut steps);
    steps.truncate((SHOWN_LEAST + dice.below(SHOWN_CHOICES)) as usize);
    steps.into_iter().map(|step| Item::new(step.slug(), "colour-coat-order")).collect()
}

fn order(_: &Facts, _: &World<'_>, order: &[String]) -> Judged<bool> {
    let steps: Vec<ColourStep> = order.iter().filter_map(|slug| ColourStep::from_slug(slug)).collect();
    Ok(colouring::colour_order(&steps))
}
