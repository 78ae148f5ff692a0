//! Sand: the next grit, jumps that skip, whether the wood may be stained.

use crate::bench::Facts;
use crate::bench::abrasives::{ladder_done, told_grade};
use crate::card::question::{After, Ask, Item, Question, Tempt};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::abrasive::{
    Abrading, Grade, P_SERIES, Strokes, WoodReady, next_grade, on_sheet, ready_for_stain, sheets_left, skips,
};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&NEXT_GRIT, &GRIT_JUMPS, &READY_FOR_STAIN, &SHEETS_TO_LAST];

/// How far may the next grit go? Misconceptions: one grade at a time; double the number; straight to the last.
const NEXT_GRIT: Question = Question {
    id: "next-grit",
    settle: bare_grade,
    ask: Ask::One { answer: next_on_wood, tempt: tempt_on_wood },
    after: After::is("scratch-in-stain").below("time-lost-sanding"),
};

/// Which jumps skip? Misconception: numbers are compared in place of grain sizes.
const GRIT_JUMPS: Question = Question {
    id: "grit-jumps",
    settle: crate::card::question::keep,
    ask: Ask::All { items: jumps, holds: jump_skips },
    after: After::is("scratch-in-stain"),
};

/// May it be stained? Misconceptions: a fine grit hides strokes across the grain; finer is always better.
const READY_FOR_STAIN: Question = Question {
    id: "ready-for-stain",
    settle: near_last_grade,
    ask: Ask::One { answer: ready, tempt: ready_tempts },
    after: After::is("scratch-in-stain"),
};

/// How many sheets are still to come? Misconceptions: every grade of the series; straight to the last; the sheet in hand
/// counts.
const SHEETS_TO_LAST: Question = Question {
    id: "sheets-to-last",
    settle: bare_grade,
    ask: Ask::Number { answer: sheets_to_last, tempt: sheets_tempts, unit: Unit::Count },
    after: After::is("scratch-in-stain").above("time-lost-sanding"),
};

fn sheets_to_last(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let faces = facts.number("faces_to_sand")?;
    let left = sheets_left(told_grade(facts, "grade")?, Abrading::BareWood, world.sheet);
    Ok(left.map(|sheets| Measure::count(faces * f64::from(sheets))))
}

fn sheets_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(from), Ok(faces), Ok(right)) =
        (told_grade(facts, "grade"), facts.number("faces_to_sand"), sheets_to_last(facts, world))
    else {
        return Vec::new();
    };
    let last = on_sheet(world.sheet, Setting::LastGrit).number;
    let all = P_SERIES.iter().filter(|grade| grade.number > from.number && grade.number <= last);
    vec![
        Tempt::number(Measure::count(faces * all.fold(0.0, |count, _| count + 1.0)), "one-grade-at-a-time"),
        Tempt::number(Measure::count(faces), "straight-to-last"),
        Tempt::number(Measure::count(right.answer.value + faces), "sheet-in-hand-counted"),
        Tempt::number(Measure::count(right.answer.value / faces), "one-face-only"),
    ]
}

fn bare_grade(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let last = on_sheet(world.sheet, Setting::LastGrit).number;
    let grades: Vec<&Grade> = P_SERIES.iter().filter(|grade| grade.number <= last).collect();
    if let Some(grade) = dice.pick(&grades) {
        facts.set("grade", grade.number);
    }
}

/// The next grade as an answer: its number, or that the ladder ends.
pub(super) fn next_answer(facts: &Facts, world: &World<'_>, work: Abrading) -> Judged<Answer> {
    let next = next_grade(told_grade(facts, "grade")?, work, world.sheet);
    Ok(next.map(|grade| {
        grade.map_or_else(|| Answer::term(ladder_done(work)), |grade| Answer::Number(grade.measure()))
    }))
}

/// Wrong next grades, each from a misconception.
pub(super) fn next_tempts(
    facts: &Facts,
    world: &World<'_>,
    work: Abrading,
    done: &'static str,
) -> Vec<Tempt> {
    let Ok(from) = told_grade(facts, "grade") else { return Vec::new() };
    let end = match work {
        Abrading::BareWood => on_sheet(world.sheet, Setting::LastGrit),
        Abrading::Levelling => on_sheet(world.sheet, Setting::CompoundGrit),
    };
    let mut tempts = vec![
        Tempt::term(ladder_done(work), done, ""),
        Tempt::term("same-again", "same-grade-again", "time-lost-sanding"),
        Tempt::number(end.measure(), "straight-to-last"),
    ];
    let finer: Vec<&Grade> = P_SERIES.iter().filter(|grade| grade.number > from.number).collect();
    let right = next_grade(from, work, world.sheet).answer.map_or(from.number, |grade| grade.number);
    if let Some(next) = finer.first() {
        tempts.push(Tempt::number(next.measure(), "one-grade-at-a-time"));
    }
    if let Some(next) = finer.iter().find(|grade| grade.number > right) {
        tempts.push(Tempt::number(next.measure(), "jump-too-far"));
    }
    if let Some(doubled) = finer.iter().find(|grade| grade.number >= from.number + from.number) {
        tempts.push(Tempt::number(doubled.measure(), "number-doubled"));
    }
    if let Some(coarser) = P_SERIES.iter().rfind(|grade| grade.number < from.number) {
        tempts.push(Tempt::number(coarser.measure(), "back-a-grade"));
    }
    tempts
}

fn next_on_wood(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    next_answer(facts, world, Abrading::BareWood)
}

fn tempt_on_wood(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    next_tempts(facts, world, Abrading::BareWood, "stops-before-last")
}

/// Jumps that a sander might take on bare wood; each slug names both grades.
const WOOD_JUMPS: [&str; 17] = [
    "p80-p120",
    "p80-p150",
    "p80-p180",
    "p100-p150",
    "p100-p180",
    "p120-p180",
    "p120-p220",
    "p150-p220",
    "p150-p280",
    "p150-p320",
    "p180-p240",
    "p180-p320",
    "p180-p400",
    "p220-p320",
    "p80-p240",
    "p100-p240",
    "p120-p320",
];
/// Jumps that a leveller might take on the clear.
const FILM_JUMPS: [&str; 17] = [
    "p320-p600",
    "p400-p600",
    "p400-p800",
    "p400-p1500",
    "p500-p1000",
    "p600-p1000",
    "p600-p1200",
    "p600-p1500",
    "p800-p1500",
    "p800-p2000",
    "p1000-p2000",
    "p1000-p2500",
    "p1200-p2000",
    "p1200-p2500",
    "p400-p1200",
    "p500-p1500",
    "p600-p2000",
];
/// A jump whose grain ratio lies this near the sheet's step is not dealt: makes of paper differ by more.
const TOO_NEAR_STEP: f64 = 0.02;

fn grades_of(slug: &str) -> Result<(&'static Grade, &'static Grade), CannotJudge> {
    let grade = |text: &str| text.strip_prefix('p').and_then(|n| n.parse().ok()).and_then(Grade::p);
    slug.split_once('-')
        .and_then(|(from, to)| Some((grade(from)?, grade(to)?)))
        .ok_or_else(|| CannotJudge::without("grade"))
}

fn jumps(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let list = match facts.term::<Abrading>("stage") {
        Ok(Abrading::Levelling) => FILM_JUMPS,
        _ => WOOD_JUMPS,
    };
    let step = world.sheet.get(Setting::GritStep);
    let plain = |slug: &&str| {
        grades_of(slug)
            .is_ok_and(|(from, to)| (to.median.get() / from.median.get() - step).abs() > TOO_NEAR_STEP)
    };
    let skipped = |slug| grades_of(slug).is_ok_and(|(from, to)| skips(from, to, world.sheet).answer);
    let mut items: Vec<Item> = list
        .iter()
        .filter(|slug| plain(slug))
        .map(|slug| Item::new(slug, if skipped(slug) { "jump-too-far" } else { "numbers-not-sizes" }))
        .collect();
    dice.shuffle(&mut items);
    items
}

fn jump_skips(_: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let (from, to) = grades_of(slug)?;
    Ok(skips(from, to, world.sheet))
}

/// A grade about the shop's last one, often the last one itself.
fn near_last_grade(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Coarsest grade that a board ready for judging is drawn at.
    const FROM: f64 = 120.0;
    /// Finest.
    const TO: f64 = 400.0;
    /// One card in so many is drawn at the last grit itself.
    const LAST_ONE_IN: u32 = 2;
    let grades: Vec<&Grade> = P_SERIES.iter().filter(|grade| (FROM..=TO).contains(&grade.number)).collect();
    let last = on_sheet(world.sheet, Setting::LastGrit);
    let picked = if dice.one_in(LAST_ONE_IN) { Some(last) } else { dice.pick(&grades).copied() };
    if let Some(grade) = picked {
        facts.set("grade", grade.number);
    }
}

fn ready(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let grade = told_grade(facts, "grade")?;
    let ruling = ready_for_stain(grade, facts.term::<Strokes>("strokes")?, world.sheet);
    Ok(ruling.map(|state| Answer::term(state.slug())))
}

fn ready_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |state| match state {
        WoodReady::Ready => "stained-too-soon",
        WoodReady::GoFiner => "finer-sheet-mends-all",
        WoodReady::SandAlong => "strokes-overlooked",
        WoodReady::FinerAlong => "more-than-needed",
        WoodReady::TooFine => "coarse-taken-for-fine",
    };
    WoodReady::ALL.iter().map(|state| Tempt::term(state.slug(), slip(*state), "")).collect()
}
