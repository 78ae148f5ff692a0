//! Masking: what fresh tape needs before colour, and when it comes off.

use crate::bench::Facts;
use crate::card::Answer;
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::content::World;
use crate::rules::masking::{self, Lift, StillToCome, Tighten};
use crate::rules::term::Term;
use crate::rules::verdict::Judged;

pub(super) const ALL: &[&Question] = &[&MASK_TIGHT, &MASK_OFF];

/// What does fresh tape need? Misconceptions: a wet pass seals the edge; pressing down mends dust and soft films.
const MASK_TIGHT: Question = Question {
    id: "mask-tight",
    settle: keep,
    ask: Ask::One { answer: tight, tempt: tight_tempts },
    after: After::is("colour-under-tape"),
};

/// Does the tape come off now? Misconceptions: every mask stays to the end; every mask comes off with the colour; hard
/// film is pulled without scoring.
const MASK_OFF: Question = Question {
    id: "mask-off",
    settle: keep,
    ask: Ask::One { answer: off, tempt: off_tempts },
    after: After::is("chipped-mask-line"),
};

fn tight(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = masking::tighten(facts.term("tape_ground").ok(), facts.term("tape_pressed").ok())?;
    Ok(ruling.map(|need: Tighten| Answer::term(need.slug())))
}

fn tight_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Tighten::CleanFirst.slug(), "ground-was-clean", "time-lost"),
        Tempt::term(Tighten::DryFirst.slug(), "nothing-soft-below", "time-lost"),
        Tempt::term(Tighten::IntoCorner.slug(), "corner-not-the-trouble", ""),
        Tempt::term(Tighten::Burnish.slug(), "pressing-mends-all", ""),
        Tempt::term(Tighten::Spray.slug(), "tape-not-ready", ""),
        Tempt::term("tape-wet-seals", "wet-pass-seals-tape", ""),
    ]
}

fn off(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let (place, coat) = (facts.term("mask_place").ok(), facts.term("coat_at_tape").ok());
    let ruling = masking::lift(place, facts.term::<StillToCome>("still_to_come")?, coat)?;
    Ok(ruling.map(|answer| Answer::term(answer.slug())))
}

fn off_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Lift::Stay.slug(), "mask-outstays", ""),
        Tempt::term(Lift::Wait.slug(), "waiting-hardens-line", ""),
        Tempt::term(Lift::Pull.slug(), "pulled-out-of-turn", ""),
        Tempt::term(Lift::Score.slug(), "scored-out-of-turn", ""),
        Tempt::term("tape-thinner", "thinner-frees-tape", "colour-under-tape"),
        Tempt::term("tape-jerked", "jerk-is-clean", ""),
    ]
}
