//! Clean: how bare wood is cleaned off, and what a wetting test shows.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::contamination::{BareMove, CleanOff, MarkEdge, bare_move, clean_off};
use crate::rules::term::Term;
use crate::rules::verdict::Judged;

pub(super) const ALL: &[&Question] = &[&CLEAN_OFF, &WETTING_TEST];

/// How is the bare wood cleaned off? Misconceptions: one way for every wood; air line; wax left under the coat.
const CLEAN_OFF: Question = Question {
    id: "clean-off",
    settle: keep,
    ask: Ask::One { answer: cleaned, tempt: clean_tempts },
    after: After::is("fish-eyes-open"),
};

/// What to do about the mark that wetting shows? Misconceptions: stain evens it out; one cure for every mark.
const WETTING_TEST: Question = Question {
    id: "wetting-test",
    settle: glue_at_joints,
    ask: Ask::One { answer: treated, tempt: mark_tempts },
    after: After::is("pale-spot"),
};

fn cleaned(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = clean_off(world.wood(facts.slug("wood")?)?, world.sheet.coating());
    Ok(ruling.map(|way| Answer::term(way.slug())))
}

fn clean_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(CleanOff::VacuumTack.slug(), "one-way-for-all", ""),
        Tempt::term(CleanOff::VacuumDamp.slug(), "one-way-for-all", "grain-stands-up"),
        Tempt::term(CleanOff::SolventWipe.slug(), "solvent-on-everything", ""),
        Tempt::term("blow-off", "dust-blown-about", "nibs-stand-up"),
        Tempt::term("polish-cloth", "silicone-wiped-on", ""),
    ]
}

/// A patch beside a joint is glue: other marks are found elsewhere.
fn glue_at_joints(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    let glue = facts.term::<MarkEdge>("mark_edge") == Ok(MarkEdge::Sharp);
    if !glue
        && facts.maybe_slug("mark_place") == Some("at-a-joint")
        && let Some(place) = dice.pick(&["under-the-bridge", "across-the-face"])
    {
        facts.set_term("mark_place", place);
    }
}

fn treated(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(bare_move(facts.term::<MarkEdge>("mark_edge")?).map(|way| Answer::term(way.slug())))
}

fn mark_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(BareMove::Scrape.slug(), "mark-taken-for-glue", ""),
        Tempt::term(BareMove::Washcoat.slug(), "mark-taken-for-blotch", ""),
        Tempt::term(BareMove::BackToGrit.slug(), "mark-taken-for-scratch", ""),
        Tempt::term("stain-darker", "stain-evens-out", ""),
        Tempt::term("seal-over", "sealer-hides-it", ""),
        Tempt::term("sand-finer", "finer-sheet-mends-all", ""),
        Tempt::term("let-it-dry-out", "mark-dries-away", ""),
    ]
}
