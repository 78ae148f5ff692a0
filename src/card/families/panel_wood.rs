//! What is seen on a bare board that nobody names: which wood it is, and whether it wants filler.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Question, Tempt};
use crate::card::scene::{LOOK, PanelStage};
use crate::card::{Answer, Dice};
use crate::content::{Look, World};
use crate::rules::sorted::sorted;
use crate::rules::term::{self, Term};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::rules::wood::{FillerNeed, filler};

pub(super) const ALL: &[&Question] = &[&PANEL_WOOD, &PANEL_FILLER];

/// Which wood is it? Misconception: another wood.
const PANEL_WOOD: Question = Question {
    id: "panel-wood",
    settle: a_wood,
    ask: Ask::One { answer: wood_seen, tempt: wood_tempts },
    after: After::is("wrong-wood-taken"),
};

/// Does this board want filler? Misconceptions: diffuse-porous means small-pored; every hardwood is filled; a matter of
/// taste; a part of staining.
const PANEL_FILLER: Question = Question {
    id: "panel-filler",
    settle: a_plain_wood,
    ask: Ask::One { answer: filler_seen, tempt: filler_tempts },
    after: After::is("wrong-preparation"),
};

// The board

fn show(facts: &mut Facts, look: Option<&Look>) {
    if let Some(look) = look {
        facts.set_term(LOOK, &look.slug);
    }
    facts.set_term("panel_dress", "natural");
    facts.set_term("panel_stage", PanelStage::Bare.slug());
}

fn a_wood(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    show(facts, dice.pick(&world.content.looks));
}

/// A wood whose pores alone decide: where filling is left to the shop, nothing on the face says so.
fn a_plain_wood(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let plain =
        |look: &&Look| world.content.wood(&look.wood).is_some_and(|wood| wood.filler != FillerNeed::Optional);
    let looks: Vec<&Look> = world.content.looks.iter().filter(plain).collect();
    show(facts, dice.pick(&looks).copied());
}

// Which wood

fn look_of<'a>(facts: &Facts, world: &World<'a>) -> Result<&'a Look, CannotJudge> {
    world.content.look(facts.slug(LOOK)?).ok_or_else(|| CannotJudge::without(LOOK))
}

fn wood_seen(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    Ok(Ruling::by("wood.known-by-its-anatomy", Answer::term(&look_of(facts, world)?.wood)))
}

/// Woods of another look, those of the same kind of growth first.
fn wood_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(look) = look_of(facts, world) else { return Vec::new() };
    let like = |other: &Look| other.species.growth == look.species.growth;
    let others: Vec<_> = world.content.looks.iter().filter(|other| other.wood != look.wood).collect();
    let others = sorted(others, |a, b| like(b).cmp(&like(a)));
    let slip = |like: bool| if like { "growth-alone-looked-at" } else { "pores-not-looked-at" };
    others.iter().map(|other| Tempt::term(&other.wood, slip(like(other)), "")).collect()
}

// Whether it wants filler

/// Filler taken for a part of the colouring.
const ONLY_IF_STAINED: &str = "only-if-stained";

fn filler_seen(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let wood = world.wood(&look_of(facts, world)?.wood)?;
    Ok(filler(wood, facts.term::<term::Look>("look")?).map(|need| Answer::term(need.slug())))
}

fn filler_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let wood = look_of(facts, world).and_then(|look| world.wood(&look.wood));
    let Ok(wood) = wood else { return Vec::new() };
    let tempt = |need: &FillerNeed| {
        let (slip, after) = match need {
            FillerNeed::Yes => (super::fill::slip(wood), "filled-for-nothing"),
            FillerNeed::No => (super::fill::slip(wood), "grain-sink"),
            FillerNeed::Optional => ("pores-left-to-taste", ""),
        };
        Tempt::term(need.slug(), slip, after)
    };
    let stain = Tempt::term(ONLY_IF_STAINED, "filler-for-colour", "");
    FillerNeed::ALL.iter().map(tempt).chain([stain]).collect()
}
