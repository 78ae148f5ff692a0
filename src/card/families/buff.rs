//! Buff: compounds and wheels, scratches that show only after buffing, work at the wheel.

use super::order::gloss_ticket;
use crate::bench::Facts;
use crate::bench::abrasives::told_grade;
use crate::card::question::{After, Ask, Item, Question, Tempt};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::abrasive::{
    Abrading, BuffMove, Compound, FineLines, Grade, LampSign, P_SERIES, buff_move, fine_lines, next_grade,
    on_sheet, skips,
};
use crate::rules::hazard::{AtWheel, WheelFix, wheel_fix};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&COMPOUND_NEXT, &MISSED_GRIT, &AT_THE_WHEEL];

/// What now? Misconceptions: pressure and speed replace a step; one wheel serves every compound.
const COMPOUND_NEXT: Question = Question {
    id: "compound-next",
    settle: often_own_wheel,
    ask: Ask::One { answer: next_compound, tempt: compound_tempts },
    after: After::is("swirls-left"),
};

/// Where does it go back to? Misconceptions: all fine lines are swirls; compound takes out a skipped grade.
const MISSED_GRIT: Question = Question {
    id: "missed-grit",
    settle: a_skipped_step,
    ask: Ask::One { answer: sent_back, tempt: back_tempts },
    after: After::is("scratch-after-buff").below("time-lost-sanding"),
};

/// What must be put right at the wheel? Misconceptions: top of the wheel is handier; warm film polishes better.
const AT_THE_WHEEL: Question = Question {
    id: "at-the-wheel",
    settle: gloss_ticket,
    ask: Ask::All { items: fixes, holds: must_fix },
    after: After::is("wheel-grabs-work"),
};

fn often_own_wheel(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    /// One wheel in so many is drawn at random.
    const ANY_ONE_IN: u32 = 3;
    if !dice.one_in(ANY_ONE_IN)
        && let Ok(compound) = facts.slug("compound").map(str::to_owned)
    {
        facts.set_term("wheel_had", &compound);
    }
}

fn next_compound(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = buff_move(
        facts.term::<Compound>("compound")?,
        facts.term::<Compound>("wheel_had")?,
        facts.yes("marks_left")?,
    );
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn compound_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        BuffMove::OwnWheel => "wheel-was-its-own",
        BuffMove::StayOn => "step-was-done",
        BuffMove::NextCompound => "next-too-soon",
        BuffMove::Done => "stopped-too-soon",
    };
    let mut tempts: Vec<Tempt> =
        BuffMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("press-harder", "pressure-for-a-step", "film-burnt"));
    tempts.push(Tempt::term("faster-wheel", "speed-for-a-step", "film-burnt"));
    tempts.push(Tempt::term("let-it-warm", "warm-polishes-better", "film-burnt"));
    tempts
}

/// A step of the levelling that went too far for the sheet.
fn a_skipped_step(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Coarsest grade that instrument films are levelled from.
    const FROM: f64 = 320.0;
    gloss_ticket(facts, world, dice);
    let end = on_sheet(world.sheet, Setting::CompoundGrit);
    let grades: Vec<&Grade> = P_SERIES
        .iter()
        .filter(|grade| grade.number >= FROM && skips(grade, end, world.sheet).answer)
        .collect();
    if let Some(grade) = dice.pick(&grades) {
        facts.set("grade", grade.number);
    }
    facts.set("grade_next", end.number);
}

fn sent_back(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let lines = fine_lines(facts.term::<LampSign>("lamp_sign")?);
    if lines.answer == FineLines::BuffSwirl {
        return Ok(lines.map(|_| Answer::term("finest-compound")));
    }
    let missed = next_grade(told_grade(facts, "grade")?, Abrading::Levelling, world.sheet);
    let answer =
        missed.answer.map_or_else(|| Answer::term("finest-compound"), |g| Answer::Number(g.measure()));
    Ok(lines.map(|_| answer).resting_on(&missed))
}

fn back_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let (Ok(from), Ok(last)) = (told_grade(facts, "grade"), told_grade(facts, "grade_next")) else {
        return Vec::new();
    };
    let mut tempts = vec![
        Tempt::term("finest-compound", "scratch-taken-for-swirl", ""),
        Tempt::term("cut-longer", "compound-takes-all", ""),
        Tempt::term("new-clear-coat", "coat-over-scratches", ""),
        Tempt::number(from.measure(), "back-too-far"),
        Tempt::number(last.measure(), "last-grade-again"),
    ];
    let between = P_SERIES.iter().rfind(|grade| grade.number < last.number);
    tempts.extend(between.map(|grade| Tempt::number(grade.measure(), "step-still-skipped")));
    tempts
}

fn fixes(_: &Facts, _: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let slip = |fix| match fix {
        WheelFix::LowerHalf => "upper-half-is-handier",
        WheelFix::TrailEdge => "edge-fed-to-the-wheel",
        WheelFix::TieBack => "loose-things-overlooked",
        WheelFix::LetCool => "warm-polishes-better",
        WheelFix::CheckNut => "nut-taken-on-trust",
    };
    let mut items: Vec<Item> = WheelFix::ALL.iter().map(|fix| Item::new(fix.slug(), slip(*fix))).collect();
    dice.shuffle(&mut items);
    items
}

fn must_fix(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let fix = WheelFix::from_slug(slug).ok_or_else(|| CannotJudge::without("fix"))?;
    let at = AtWheel {
        half: facts.term("wheel_half").ok(),
        edge: facts.term("wheel_edge").ok(),
        worn: facts.term("worn").ok(),
        film: facts.term("film_feel").ok(),
        nut: facts.term("wheel_nut").ok(),
    };
    wheel_fix(fix, at)
}
