//! Fill: which woods want filler.

use crate::bench::Facts;
use crate::card::Dice;
use crate::card::question::{Ask, Item, Question, keep};
use crate::content::World;
use crate::rules::term::Look;
use crate::rules::verdict::Judged;
use crate::rules::wood::{FillerNeed, PoreSize, Porosity, Wood, filler};

pub(super) const ALL: &[&Question] = &[&WANTS_FILLER];

/// Which of these woods want filler? Misconceptions: diffuse-porous means small-pored; soft means open.
const WANTS_FILLER: Question = Question {
    id: "wants-filler",
    settle: keep,
    ask: Ask::All { items: woods, holds: wants },
    after: "grain-sink",
};

/// Woods whose answer is plain, three of each kind of pore at most.
fn woods(_: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let mut plain: Vec<&Wood> =
        world.content.woods.iter().filter(|wood| wood.filler != FillerNeed::Optional).collect();
    dice.shuffle(&mut plain);
    plain.into_iter().map(|wood| Item::new(&wood.slug, slip(wood))).collect()
}

fn slip(wood: &Wood) -> &'static str {
    match (wood.pores, wood.porosity) {
        (PoreSize::Large, Porosity::Diffuse) => "diffuse-means-small",
        (PoreSize::Large, _) => "open-pores-overlooked",
        (PoreSize::Small, _) => "close-grain-filled",
        (PoreSize::None, _) => "conifer-has-pores",
    }
}

fn wants(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let ruling = filler(world.wood(slug)?, facts.term::<Look>("look")?);
    Ok(ruling.map(|need| need == FillerNeed::Yes))
}
