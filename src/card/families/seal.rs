//! Seal: what a wood wants before the first coat, how much sealer is enough, the order over mixed woods.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::sealing::{self, Film, FirstCoat, MixedStep, Sealer, SealerCall};
use crate::rules::term::Term;
use crate::rules::verdict::Judged;
use crate::rules::wood::{Wood, WoodTrouble};

pub(super) const ALL: &[&Question] = &[&SEAL_FIRST, &SEAL_BARRIER, &SEAL_ENOUGH, &SEAL_MIXED];

/// What comes before the first coat of this film? Misconceptions: lacquer sticks to anything, every dark wood is oily, a
/// wipe is enough, finer sanding helps.
const SEAL_FIRST: Question = Question {
    id: "seal-first",
    settle: keep,
    ask: Ask::One { answer: first, tempt: first_tempts },
    after: After::is("peels"),
};

fn told<'a>(facts: &Facts, world: &World<'a>) -> (Option<&'a Wood>, Option<Film>) {
    let wood = facts.maybe_slug("wood").and_then(|slug| world.content.wood(slug));
    (wood, facts.maybe_slug("film").and_then(Film::from_slug))
}

fn first(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let (wood, film) = told(facts, world);
    Ok(sealing::first_coat(wood, film)?.map(|way| Answer::term(way.slug())))
}

fn first_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (wood, film) = told(facts, world);
    let bleeds = wood.is_some_and(|wood| wood.trouble.contains(&WoodTrouble::Bleeding));
    let sound = |way| film.is_some_and(|film| sealing::is_also_sound(way, film));
    let slip = |way: FirstCoat| match way {
        FirstCoat::Seal => ("wood-trouble-overlooked", ""),
        FirstCoat::Mist => ("mist-for-every-trouble", ""),
        FirstCoat::Barrier => ("barrier-without-wipe", ""),
        FirstCoat::WipeBarrier | FirstCoat::WipeCoat if bleeds => ("bleeding-wood-wiped", "colour-creeps"),
        FirstCoat::WipeBarrier => ("every-wood-oily", "lost-hour"),
        FirstCoat::WipeCoat => ("wipe-is-enough", "soft-film"),
    };
    let mut tempts: Vec<Tempt> = FirstCoat::ALL
        .iter()
        .filter(|way| !sound(**way))
        .map(|way| Tempt::term(way.slug(), slip(*way).0, slip(*way).1))
        .collect();
    tempts.push(Tempt::term("sand-finer-then-coat", "finer-sanding-bonds", ""));
    tempts
}

/// Which woods want a barrier coat under this film? Misconceptions: dark means oily, conifers are harmless, only
/// rosewoods are oily, open pores want a barrier.
const SEAL_BARRIER: Question = Question {
    id: "seal-barrier",
    settle: keep,
    ask: Ask::All { items: woods, holds: wants_barrier },
    after: After::is("peels"),
};

fn woods(_: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let mut woods: Vec<&Wood> = world.content.woods.iter().collect();
    dice.shuffle(&mut woods);
    woods.into_iter().map(|wood| Item::new(&wood.slug, barrier_slip(wood))).collect()
}

fn barrier_slip(wood: &Wood) -> &'static str {
    if wood.trouble.contains(&WoodTrouble::Oily) {
        "oil-overlooked"
    } else if wood.trouble.contains(&WoodTrouble::Resinous) {
        "pitch-overlooked"
    } else if wood.trouble.contains(&WoodTrouble::Bleeding) {
        "bleeding-overlooked"
    } else if wood.hardwood {
        "barrier-on-dry-hardwood"
    } else {
        "every-conifer-resinous"
    }
}

fn wants_barrier(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let ruling = sealing::first_coat(Some(world.wood(slug)?), Some(facts.term::<Film>("film")?))?;
    Ok(ruling.map(|way| matches!(way, FirstCoat::Barrier | FirstCoat::WipeBarrier)))
}

/// What follows so many coats of sealer? Misconceptions: sealer fills pores, builds film, may stay thick.
const SEAL_ENOUGH: Question = Question {
    id: "seal-enough",
    settle: keep,
    ask: Ask::One { answer: enough, tempt: enough_tempts },
    after: After::is("soft-base"),
};

fn enough(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let sealer = facts.maybe_slug("sealer").and_then(Sealer::from_slug);
    let ruling = sealing::after_sealer(world.sheet, sealer, facts.number("coats_of_sealer")?)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn enough_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let may_lay_more = facts
        .maybe_number("coats_of_sealer")
        .zip(facts.maybe_slug("sealer").and_then(Sealer::from_slug))
        .is_some_and(|(coats, sealer)| coats < sealing::most_coats(world.sheet, sealer));
    let mut tempts = vec![
        Tempt::term(SealerCall::Build.slug(), "thick-sealer-kept", ""),
        Tempt::term(SealerCall::TakeOff.slug(), "thin-sealer-taken-off", "lost-hour"),
        Tempt::term("heavy-coat-to-fill", "sealer-fills-pores", ""),
        Tempt::term("two-wet-coats-more", "sealer-builds-film", ""),
        Tempt::term("clear-over-unsanded", "sealer-not-sanded", ""),
    ];
    if !may_lay_more {
        tempts.push(Tempt::term(SealerCall::Lay.slug(), "one-more-sealer", ""));
    }
    tempts
}

/// In what order are mixed woods sealed? The oily wood adds its wipe. Misconceptions: wet coat first, dust wiped across.
const SEAL_MIXED: Question = Question {
    id: "seal-mixed",
    settle: keep,
    ask: Ask::Order { items: mixed_items, accepts: mixed_order },
    after: After::is("colour-creeps"),
};

fn mixed_items(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    const SHOWN_LEAST: u32 = 4;
    const SHOWN_CHOICES: u32 = 2;
    let dark = facts.maybe_slug("dark_wood").and_then(|slug| world.content.wood(slug));
    let oily = dark.is_some_and(|wood| wood.trouble.contains(&WoodTrouble::Oily));
    let mut steps: Vec<MixedStep> =
        MixedStep::ALL.iter().copied().filter(|step| oily || *step != MixedStep::Wipe).collect();
    dice.shuffle(&mut steps);
    steps.truncate((SHOWN_LEAST + dice.below(SHOWN_CHOICES)) as usize);
    steps.into_iter().map(|step| Item::new(step.slug(), "mixed-woods-order")).collect()
}

fn mixed_order(_: &Facts, _: &World<'_>, order: &[String]) -> Judged<bool> {
    let steps: Vec<MixedStep> = order.iter().filter_map(|slug| MixedStep::from_slug(slug)).collect();
    Ok(sealing::mixed_order(&steps))
}
