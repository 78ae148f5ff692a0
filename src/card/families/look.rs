//! What is seen: gloss against its mark, a mark against the film, colour beside its sample, coats to a depth, hiding.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, PERCENT_A_WHOLE, Unit};
use crate::rules::optics::difference::{MatchCall, judge_match};
use crate::rules::optics::gloss::{self, GlossAngle, GlossCall, MarkCall};
use crate::rules::optics::layer::{a_coat, coats_to};
use crate::rules::optics::opaque::{Hiding, judge_card};
use crate::rules::sheet::Setting;
use crate::rules::staining::Seen;
use crate::rules::term::Term;
use crate::rules::verdict::Judged;

pub(super) const ALL: &[&Question] =
    &[&GLOSS_MARK, &GLOSS_READING, &GLOSS_ANGLE, &COLOUR_MATCH, &TONER_COATS, &HIDES_YET];

/// Can this mark be met? Misconceptions: rubbing, coats or harder clear go past what the film can mirror.
const GLOSS_MARK: Question = Question {
    id: "gloss-mark",
    settle: keep,
    ask: Ask::One { answer: mark, tempt: mark_tempts },
    after: After::is("gloss-chased"),
};

fn told_angle(facts: &Facts) -> Option<GlossAngle> {
    facts.maybe_slug("angle").and_then(GlossAngle::from_slug)
}

fn mark(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = gloss::judge_mark(facts.number("gloss_wanted")?, told_angle(facts), world.sheet)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn mark_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(MarkCall::CanBeMet.slug(), "gloss-has-no-ceiling", ""),
        Tempt::term(MarkCall::OutOfReach.slug(), "ceiling-for-every-angle", "lost-hour"),
        Tempt::term("met-with-more-coats", "coats-raise-gloss", ""),
        Tempt::term("met-with-finer-compound", "compound-passes-ceiling", ""),
        Tempt::term("met-after-longer-cure", "cure-raises-ceiling", "lost-day"),
    ]
}

/// Does this reading pass? Misconceptions: a hundred is full gloss; clear adds gloss; another angle reads better.
const GLOSS_READING: Question = Question {
    id: "gloss-reading",
    settle: clear_of_mark,
    ask: Ask::One { answer: reading, tempt: reading_tempts },
    after: After::is("dull-finish"),
};

/// Readings a few units clear of the mark, on either side of it.
fn clear_of_mark(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const CLEAR: f64 = 2.0;
    const SPAN: f64 = 25.0;
    let most = gloss::ceiling(gloss::clear_index(world.sheet), GlossAngle::Sixty).answer;
    let mark = libm::ceil(world.sheet.get(Setting::GlossPass).min(most));
    let (from, to) = if dice.one_in(2) {
        ((mark - SPAN).max(1.0), mark - CLEAR)
    } else {
        (mark, (mark + CLEAR).max(libm::floor(most)))
    };
    facts.set("gloss_read", dice.on_grid(from, to.max(from), 1.0));
}

fn reading(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = gloss::judge(facts.number("gloss_read")?, told_angle(facts), world.sheet)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn reading_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(GlossCall::Passes.slug(), "mark-passed-by-eye", ""),
        Tempt::term(GlossCall::RubOn.slug(), "more-is-better", "gloss-chased"),
        Tempt::term("rub-to-a-hundred", "hundred-is-full-gloss", "gloss-chased"),
        Tempt::term("clear-for-gloss", "coats-raise-gloss", "time-lost"),
        Tempt::term("read-at-85-instead", "flatter-reads-better", ""),
    ]
}

/// At which angle is it read too? Misconceptions: 60 tells all finishes apart; all angles read alike.
const GLOSS_ANGLE: Question = Question {
    id: "gloss-angle",
    settle: any_finish,
    ask: Ask::One { answer: other_angle, tempt: angle_tempts },
    after: After::is("dull-finish"),
};

/// Low, middle and high gloss in equal share, clear of the sheet's limits.
fn any_finish(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const CLEAR: f64 = 1.0;
    const LEAST: f64 = 1.0;
    const MOST: f64 = 89.0;
    const KINDS: u32 = 3;
    let low = libm::ceil(world.sheet.get(Setting::GlossLow));
    let high = libm::floor(world.sheet.get(Setting::GlossHigh));
    let (from, to) = match dice.below(KINDS) {
        0 => (LEAST, low - CLEAR),
        1 => (low + CLEAR, high - CLEAR),
        _ => (high + CLEAR, MOST.max(high + CLEAR)),
    };
    facts.set("gloss_read", dice.on_grid(from, to.max(from), 1.0));
}

fn other_angle(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = gloss::angle_for(facts.number("gloss_read")?, world.sheet);
    Ok(ruling.map(|angle| Answer::term(angle.slug())))
}

fn angle_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(GlossAngle::Sixty.slug(), "sixty-tells-all", ""),
        Tempt::term(GlossAngle::Twenty.slug(), "steep-for-low-gloss", "lost-hour"),
        Tempt::term(GlossAngle::EightyFive.slug(), "flatter-reads-better", ""),
        Tempt::term("panel-turned", "turning-for-angle", "lost-hour"),
        Tempt::term("any-angle", "angles-read-alike", ""),
    ]
}

/// What about the colour? Misconceptions: near enough by eye; clear evens it; colour can be taken back.
const COLOUR_MATCH: Question = Question {
    id: "colour-match",
    settle: in_or_out,
    ask: Ask::One { answer: matched, tempt: match_tempts },
    after: After::is("colour-off"),
};

/// Inside and outside the band, clear of it; what is outside shows on one side.
fn in_or_out(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const GRID: f64 = 0.1;
    const CLEAR: f64 = 0.2;
    const FARTHEST: f64 = 4.0;
    const INSIDE_ONE_IN: u32 = 3;
    let band = world.sheet.get(Setting::ColourBand);
    let inside = dice.one_in(INSIDE_ONE_IN);
    let (from, to) = if inside { (0.1, (band - CLEAR).max(0.1)) } else { (band + CLEAR, band + FARTHEST) };
    facts.set("delta_e", dice.on_grid(from, to, GRID));
    if !inside && facts.slug("seen").ok() == Some(Seen::Same.slug()) {
        facts.set_term("seen", Seen::Lighter.slug());
    }
}

fn matched(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let beside = facts.maybe_slug("seen").and_then(Seen::from_slug);
    let ruling = judge_match(facts.maybe_number("delta_e"), beside, world.sheet)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn match_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(MatchCall::Accept.slug(), "near-enough-by-eye", ""),
        Tempt::term(MatchCall::AddPass.slug(), "one-more-never-hurts", "too-dark"),
        Tempt::term(MatchCall::GoBack.slug(), "band-is-nought", "lost-day"),
        Tempt::term("clear-evens-colour", "clear-lightens", ""),
        Tempt::term("scuff-until-it-matches", "colour-sanded-paler", "colour-cut"),
    ]
}

/// How many coats to the sample's depth? Misconceptions: each coat takes the same light away; the first forgotten.
const TONER_COATS: Question = Question {
    id: "toner-coats",
    settle: a_depth,
    ask: Ask::Number { answer: toner_coats, tempt: toner_tempts, unit: Unit::Count },
    after: After::is("too-dark").below("colour-thin"),
};

/// Light before, after one coat and on the sample, in whole per cent and well between two counts of coats.
fn a_depth(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    const WOOD: (f64, f64, f64) = (34.0, 66.0, 2.0);
    const KEPT: (f64, f64, f64) = (0.62, 0.84, 0.02);
    const COATS: (f64, f64, f64) = (2.2, 6.8, 0.1);
    const PART: (f64, f64) = (0.2, 0.9);
    const TRIES: u32 = 40;
    for _ in 0..TRIES {
        let wood = dice.on_grid(WOOD.0, WOOD.1, WOOD.2);
        let kept = dice.on_grid(KEPT.0, KEPT.1, KEPT.2);
        let coats = dice.on_grid(COATS.0, COATS.1, COATS.2);
        let after = libm::round(wood * kept);
        let sample = libm::round(wood * libm::pow(kept, coats)).max(1.0);
        facts.set("wood_reflectance", wood);
        facts.set("coat_reflectance", after);
        facts.set("sample_reflectance", sample);
        let exact = libm::log10(wood / sample) / libm::log10(wood / after);
        let part = exact - libm::floor(exact);
        if part >= PART.0 && part <= PART.1 {
            return;
        }
    }
}

fn toner_coats(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let wood = facts.share("wood_reflectance")?;
    let coat = a_coat(wood, facts.share("coat_reflectance")?)?;
    let coats = coats_to(wood, coat.answer, facts.share("sample_reflectance")?)?;
    Ok(coats.map(Measure::count).resting_on(&coat))
}

fn toner_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(coats), Ok(wood), Ok(after), Ok(sample)) = (
        toner_coats(facts, world),
        facts.number("wood_reflectance"),
        facts.number("coat_reflectance"),
        facts.number("sample_reflectance"),
    ) else {
        return Vec::new();
    };
    let right = coats.answer.value;
    vec![
        Tempt::number(Measure::count(libm::ceil((wood - sample) / (wood - after))), "light-falls-evenly"),
        Tempt::number(Measure::count(right - 1.0), "first-coat-forgotten"),
        Tempt::number(Measure::count(libm::ceil(wood / sample)), "times-for-coats"),
    ]
}

/// Does the colour hide yet? Misconceptions: it looks covered; clear hides the rest; one heavy coat instead.
const HIDES_YET: Question = Question {
    id: "hides-yet",
    settle: a_card,
    ask: Ask::One { answer: hides_yet, tempt: hides_tempts },
    after: After::is("colour-thin"),
};

/// Readings over black and white whose ratio lies clear of the sheet's mark.
fn a_card(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const WHITE: (f64, f64, f64) = (20.0, 70.0, 0.5);
    const SHOWS: (f64, f64) = (0.80, 0.97);
    const CLEAR: f64 = 0.006;
    const GRID: f64 = 0.001;
    /// Readings show one decimal.
    const TENTHS: f64 = 10.0;
    let least = world.sheet.get(Setting::HidingLeast) / PERCENT_A_WHOLE;
    let white = dice.on_grid(WHITE.0, WHITE.1, WHITE.2);
    let (shows_from, shows_to) = SHOWS;
    let share = if dice.one_in(2) {
        dice.on_grid(shows_from, shows_to.min(least - CLEAR).max(shows_from), GRID)
    } else {
        dice.on_grid((least + CLEAR).min(1.0), 1.0, GRID)
    };
    facts.set("over_white", white);
    facts.set("over_black", libm::round(white * share * TENTHS) / TENTHS);
}

fn hides_yet(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = judge_card(facts.share("over_black")?, facts.share("over_white")?, world.sheet)?;
    Ok(ruling.map(|hiding| Answer::term(hiding.slug())))
}

fn hides_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Hiding::Hides.slug(), "looks-covered", ""),
        Tempt::term(Hiding::Shows.slug(), "one-more-never-hurts", "material-lost"),
        Tempt::term("heavy-colour-coat", "heavy-coat-for-thin-ones", "run-in-colour"),
        Tempt::term("clear-hides-rest", "clear-hides", ""),
        Tempt::term("sand-ground-darker", "ground-for-colour", "colour-cut"),
    ]
}
