//! Waste and fire: where residues go, unlike coatings in one booth, what comes before the gun and before pouring, the
//! order of fan and gun.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::hazard::{
    Bonding, BoothMove, BoothState, Cartridge, CupState, Gauge, GunMove, Mask, Place, PourMove, Residue,
    SpellStep, Sprayed, Vessel, before_gun, before_pour, booth_change, place_for, spell_order, spell_steps,
};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] =
    &[&RESIDUE_PLACE, &BOOTH_CHANGE, &BEFORE_GUN, &BEFORE_POUR, &SPRAY_SPELL];

/// Where does it go? Misconceptions: at the end of the day; all residues into one can; dry it first.
const RESIDUE_PLACE: Question = Question {
    id: "residue-place",
    settle: keep,
    ask: Ask::One { answer: placed, tempt: place_tempts },
    after: After::is("rag-fire"),
};

/// May the next coating be sprayed here? Misconceptions: new filters are enough; the duct does not count.
const BOOTH_CHANGE: Question = Question {
    id: "booth-change",
    settle: often_the_same,
    ask: Ask::One { answer: changed, tempt: change_tempts },
    after: After::is("booth-fire"),
};

/// What comes before the gun? Misconceptions: good draw replaces the respirator; smell tells when cartridges are done.
const BEFORE_GUN: Question = Question {
    id: "before-gun",
    settle: often_fitted,
    ask: Ask::One { answer: gun_ready, tempt: gun_tempts },
    after: After::is("breathed-in"),
};

/// What comes before pouring? Misconceptions: one wire is enough; a plastic jug cannot spark.
const BEFORE_POUR: Question = Question {
    id: "before-pour",
    settle: often_metal,
    ask: Ask::One { answer: pour_ready, tempt: pour_tempts },
    after: After::is("pour-spark"),
};

/// In which order do fan, mask and gun come and go?
const SPRAY_SPELL: Question = Question {
    id: "spray-spell",
    settle: keep,
    ask: Ask::Order { items: spell_items, accepts: spell_kept },
    after: After::is("booth-fire"),
};

/// One situation in so many is set to the plain case.
const PLAIN_ONE_IN: u32 = 2;

fn placed(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(place_for(facts.term::<Residue>("residue")?).map(|place| Answer::term(place.slug())))
}

fn place_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Place::MetalCan.slug(), "nitro-with-rags", "booth-fire"),
        Tempt::term(Place::WetApart.slug(), "rag-with-nitro", "booth-fire"),
        Tempt::term("bench-heap", "tidied-at-night", ""),
        Tempt::term("hung-indoors", "dried-indoors", ""),
    ]
}

fn often_the_same(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    /// One situation in so many changes nothing.
    const SAME_ONE_IN: u32 = 4;
    if dice.one_in(SAME_ONE_IN)
        && let Ok(next) = facts.slug("spray_next").map(str::to_owned)
    {
        facts.set_term("sprayed_before", &next);
    }
}

fn changed(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = booth_change(
        facts.term::<Sprayed>("sprayed_before").ok(),
        facts.term::<BoothState>("booth_state").ok(),
        facts.term::<Sprayed>("spray_next")?,
    )?;
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn change_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(BoothMove::Spray.slug(), "residue-overlooked", ""),
        Tempt::term(BoothMove::ClearAll.slug(), "cleared-already", "time-lost-booth"),
        Tempt::term("filters-then-spray", "filters-are-enough", ""),
        Tempt::term("scrape-then-spray", "duct-forgotten", ""),
    ]
}

fn often_fitted(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    if dice.one_in(PLAIN_ONE_IN) {
        facts.set_term("mask", Mask::Fitted.slug());
    }
    if dice.one_in(PLAIN_ONE_IN) {
        facts.set_term("cartridge", Cartridge::InPlan.slug());
    }
}

fn gun_ready(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = before_gun(
        facts.term::<Gauge>("gauge")?,
        facts.term::<Mask>("mask")?,
        facts.term::<Cartridge>("cartridge")?,
    );
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn gun_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        GunMove::Start => "draw-for-respirator",
        GunMove::MaskFirst => "gauge-overlooked",
        GunMove::FiltersFirst => "mask-overlooked",
        GunMove::BothFirst => "more-than-needed",
    };
    GunMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect()
}

fn often_metal(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    if dice.one_in(PLAIN_ONE_IN) {
        facts.set_term("pour_into", Vessel::Metal.slug());
    }
}

fn pour_ready(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = before_pour(facts.term::<Vessel>("pour_into")?, facts.term::<Bonding>("bonding").ok())?;
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn pour_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        PourMove::Pour => "spark-overlooked",
        PourMove::MetalFirst => "metal-overlooked",
        PourMove::BondFirst | PourMove::GroundFirst => "one-wire-is-enough",
        PourMove::BondAndGround => "wires-overlooked",
    };
    let mut tempts: Vec<Tempt> =
        PourMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("pour-slowly", "slow-means-safe", ""));
    tempts.push(Tempt::term("touch-first", "hand-for-wire", ""));
    tempts
}

/// Steps drawn for one card: the spraying always, and three to five others.
fn spell_items(facts: &Facts, _: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    /// Fewest steps beside filling the cup and spraying.
    const LEAST: usize = 3;
    let always = [SpellStep::FillCup, SpellStep::Spray];
    let Ok(cup) = facts.term::<CupState>("cup_state") else { return Vec::new() };
    let (always, mut others): (Vec<SpellStep>, Vec<SpellStep>) =
        spell_steps(cup).into_iter().partition(|step| always.contains(step));
    dice.shuffle(&mut others);
    let more = usize::from(dice.one_in(PLAIN_ONE_IN));
    let steps = others.into_iter().take(LEAST + more).chain(always);
    steps.map(|step| Item::new(step.slug(), "")).collect()
}

fn spell_kept(_: &Facts, _: &World<'_>, order: &[String]) -> Judged<bool> {
    let steps: Option<Vec<SpellStep>> = order.iter().map(|slug| SpellStep::from_slug(slug)).collect();
    Ok(spell_order(&steps.ok_or_else(|| CannotJudge::without("steps"))?))
}
