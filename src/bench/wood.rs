//! Wood: moisture content, filler, movement.

use super::{Calculation, Facts, Gives, Needs, Outcome};
use crate::content::World;
use crate::rules::term::{Look, Term};
use crate::rules::verdict::Judged;
use crate::rules::wood;

pub(super) const ALL: &[&Calculation] = &[&FILLER];

const FILLER: Calculation = Calculation {
    name: "filler",
    needs: &[Needs::must("wood"), Needs::must("look")],
    gives: &[Gives::Term { key: "verdict", among: &["yes", "no", "optional"] }],
    run: filler,
};

fn filler(facts: &Facts, world: &World<'_>) -> Judged<Outcome> {
    let wood = world.wood(facts.slug("wood")?)?;
    let ruling = wood::filler(wood, facts.term::<Look>("look")?);
    Ok(ruling.map(|need| Outcome::default().term("verdict", need.slug())))
}
