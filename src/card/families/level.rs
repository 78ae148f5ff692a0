//! Level: the next grade, when a grade is done, and the US grading.

use super::order::gloss_ticket;
use super::sand::{next_answer, next_tempts};
use crate::bench::Facts;
use crate::bench::abrasives::{told_grade, told_us};
use crate::card::question::{After, Ask, Question, Tempt};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::abrasive::{
    Abrading, Grade, LevelMove, P_SERIES, Shine, US_SERIES, level_move, on_sheet, p_neighbour,
};
use crate::rules::film;
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::Judged;

pub(super) const ALL: &[&Question] = &[&LEVEL_NEXT, &LEVEL_MOVE, &US_SHEET];

/// How far may the next grade of levelling go? Misconceptions: straight to the last; compound takes out anything.
const LEVEL_NEXT: Question = Question {
    id: "level-next",
    settle: levelling_grade,
    ask: Ask::One { answer: next_level, tempt: level_tempts },
    after: After::is("scratch-after-buff").below("time-lost-sanding"),
};

/// What now? Misconceptions: shiny is finished; more sanding mends a thin film.
const LEVEL_MOVE: Question = Question {
    id: "level-move",
    settle: film_and_grade,
    ask: Ask::One { answer: next_move, tempt: move_tempts },
    after: After::is("clear-too-thin"),
};

/// Which P grade is this US sheet? Misconception: the same number is the same grain.
const US_SHEET: Question = Question {
    id: "us-sheet",
    settle: us_grade,
    ask: Ask::One { answer: p_of_us, tempt: p_tempts },
    after: After::is("scratch-after-buff").above("time-lost-sanding"),
};

/// A ticket that is levelled, and a grade between the first of levelling and the last before compound.
pub(super) fn levelling_grade(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    gloss_ticket(facts, world, dice);
    let from = on_sheet(world.sheet, Setting::LevelGrit).number;
    let to = on_sheet(world.sheet, Setting::CompoundGrit).number;
    let grades: Vec<&Grade> =
        P_SERIES.iter().filter(|grade| grade.number >= from && grade.number <= to).collect();
    if let Some(grade) = dice.pick(&grades) {
        facts.set("grade", grade.number);
    }
}

fn next_level(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    next_answer(facts, world, Abrading::Levelling)
}

fn level_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let mut tempts = next_tempts(facts, world, Abrading::Levelling, "compound-takes-all");
    tempts.push(Tempt::term("recoat-now", "dull-taken-for-worn", ""));
    tempts
}

fn film_and_grade(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    levelling_grade(facts, world, dice);
    if let (Ok(film), Ok(taken)) = (facts.number("film_um"), facts.number("taken_um")) {
        facts.set("taken_um", taken.min(film));
    }
}

fn next_move(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let left = film::left(facts.micrometres("film_um")?, facts.micrometres("taken_um")?);
    let shine = facts.term::<Shine>("shine").ok();
    let ruling = level_move(told_grade(facts, "grade")?, shine, left.answer, world.sheet)?;
    Ok(ruling.map(|next| Answer::term(next.slug())).resting_on(&left))
}

fn move_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        LevelMove::NextGrade => "shiny-spots-left",
        LevelMove::SameGrade => "grade-was-done",
        LevelMove::Compound => "compound-takes-all",
        LevelMove::Recoat => "film-is-enough",
    };
    let mut tempts: Vec<Tempt> =
        LevelMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("press-on-spots", "spots-pressed", ""));
    tempts.push(Tempt::term("back-to-coarse", "back-a-grade", ""));
    tempts
}

fn us_grade(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    /// From here on the two gradings part.
    const FROM: f64 = 240.0;
    let grades: Vec<&Grade> = US_SERIES.iter().filter(|grade| grade.number >= FROM).collect();
    if let Some(grade) = dice.pick(&grades) {
        facts.set("us_grade", grade.number);
    }
}

fn p_of_us(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(p_neighbour(told_us(facts, "us_grade")?).map(|grade| Answer::Number(grade.measure())))
}

fn p_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    /// Grades offered on either side of the right one.
    const REACH: usize = 3;
    let Ok(us) = told_us(facts, "us_grade") else { return Vec::new() };
    let right = p_neighbour(us).answer.number;
    let coarser = P_SERIES.iter().rev().filter(|grade| grade.number < right).take(REACH);
    let finer = P_SERIES.iter().filter(|grade| grade.number > right).take(REACH);
    let mut tempts = vec![
        Tempt::number(us.measure(), "same-number-same-grain"),
        Tempt::term("no-telling", "gradings-without-sizes", ""),
    ];
    tempts.extend(coarser.map(|grade| Tempt::number(grade.measure(), "grading-turned-round")));
    tempts.extend(finer.map(|grade| Tempt::number(grade.measure(), "grading-overdone")));
    tempts
}
