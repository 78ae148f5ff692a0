//! Respirators: what has to be there before one is worn, what it has to stop, seal, cartridges, signs, care, and that
//! good draw never stands in for one.

use crate::bench::Facts;
use crate::bench::hazard::told_speed;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::hazard::Cartridge;
use crate::rules::hazard::cartridge::{CartridgeMove, Sign, SignMove, Smell, cartridge_move, sign_move};
use crate::rules::hazard::mask_care::{CareMove, care_move};
use crate::rules::hazard::mask_fit::{AtMask, MaskWant, SealMove, Shaven, mask_want, seal_move};
use crate::rules::hazard::mask_kind::{AirTask, Protection, protection_for};
use crate::rules::hazard::respirator::{Demand, Evaluation, Standing, respirator_demand};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] =
    &[&MASK_WANTS, &MASK_KIND, &CARTRIDGE_CHANGE, &SEAL_CHECK, &MASK_SIGN, &MASK_AWAY, &DRAW_AND_MASK];

/// What is still wanted before it is worn? Misconception: a mask that fits one fits all; a seal check is a fit test.
const MASK_WANTS: Question = Question {
    id: "mask-wants",
    settle: keep,
    ask: Ask::All { items: wants, holds: wanted },
    after: After::is("breathed-in"),
};

/// What has the respirator to stop? Misconceptions: a dust mask for all; a cartridge stops mist; short work needs none.
const MASK_KIND: Question = Question {
    id: "mask-kind",
    settle: keep,
    ask: Ask::One { answer: kind, tempt: kind_tempts },
    after: After::is("breathed-in"),
};

/// What about the cartridges? Misconceptions: smell tells; the plan may be stretched by one spell.
const CARTRIDGE_CHANGE: Question = Question {
    id: "cartridge-change",
    settle: mostly_no_smell,
    ask: Ask::One { answer: cartridges, tempt: cartridge_tempts },
    after: After::is("breathed-in"),
};

/// What does the seal check call for? Misconceptions: tighter straps close any gap; one check is enough.
const SEAL_CHECK: Question = Question {
    id: "seal-check",
    settle: mostly_shaven,
    ask: Ask::One { answer: sealed, tempt: seal_tempts },
    after: After::is("breathed-in"),
};

/// What does the sign call for? Misconceptions: the coat is finished first; the mask comes off inside.
const MASK_SIGN: Question = Question {
    id: "mask-sign",
    settle: keep,
    ask: Ask::One { answer: signed, tempt: sign_tempts },
    after: After::is("breathed-in"),
};

/// Where does the mask go? Misconceptions: on the hook in the booth; a damaged valve seats itself.
const MASK_AWAY: Question = Question {
    id: "mask-away",
    settle: keep,
    ask: Ask::One { answer: put_away, tempt: away_tempts },
    after: After::is("breathed-in"),
};

/// What is worn? Misconceptions: good draw means no mask; a room reading clears the breathing zone.
const DRAW_AND_MASK: Question = Question {
    id: "draw-and-mask",
    settle: keep,
    ask: Ask::One { answer: demanded, tempt: demand_tempts },
    after: After::is("breathed-in"),
};

fn wants(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let slip = |want| match want {
        MaskWant::Medical | MaskWant::Training => "mask-is-only-gear",
        MaskWant::FitTest => "one-fit-fits-all",
        MaskWant::Shave => "stubble-is-nothing",
        MaskWant::Cartridge => "cartridge-by-smell",
    };
    MaskWant::ALL.iter().map(|want| Item::new(want.slug(), slip(*want))).collect()
}

fn wanted(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let want = MaskWant::from_slug(slug).ok_or_else(|| CannotJudge::without("want"))?;
    let told = |key, slug| facts.maybe_slug(key).map(|one| one == slug);
    let at = AtMask {
        medical: told("medical", "cleared-to-wear"),
        fit_months: facts.maybe_number("fit_months"),
        tested: facts.term("tested_mask").ok(),
        shaven: facts.term("shaven").ok(),
        trained: told("trained", "trained-this-year"),
        cartridge_in_plan: told("cartridge", Cartridge::InPlan.slug()),
    };
    mask_want(want, at)
}

fn kind(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(protection_for(facts.term::<AirTask>("air_task")?).map(|kind| Answer::term(kind.slug())))
}

fn kind_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let grave = matches!(facts.term("air_task"), Ok(AirTask::SprayIsocyanate | AirTask::LowOxygen));
    let slip = |kind| match kind {
        Protection::Particles => "dust-filter-for-all",
        Protection::Vapour => "cartridge-stops-mist",
        Protection::Both if grave => "filters-for-everything",
        Protection::Both | Protection::SuppliedAir => "more-than-needed",
    };
    let mut tempts: Vec<Tempt> =
        Protection::ALL.iter().map(|kind| Tempt::term(kind.slug(), slip(*kind), "")).collect();
    tempts.push(Tempt::term("nothing-short-job", "a-short-job-needs-none", ""));
    tempts.push(Tempt::term("nothing-good-draw", "draw-for-respirator", ""));
    tempts
}

fn mostly_no_smell(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    /// One situation in so many in which solvent is smelt is taken as clean.
    const CLEAN_ONE_IN: u32 = 2;
    if dice.one_in(CLEAN_ONE_IN) {
        facts.set_term("smell", Smell::None.slug());
    }
}

fn cartridges(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = cartridge_move(
        facts.hours("plan_h").ok(),
        facts.hours("used_h").ok(),
        facts.hours("spell_h").ok(),
        facts.term("smell")?,
    )?;
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn cartridge_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(CartridgeMove::Keep.slug(), "plan-overrun", ""),
        Tempt::term(CartridgeMove::Change.slug(), "plan-or-smell-overlooked", ""),
        Tempt::term(CartridgeMove::Leave.slug(), "smell-imagined", "time-lost"),
        Tempt::term("until-smelt", "cartridge-by-smell", ""),
        Tempt::term("change-one", "half-a-change", ""),
        Tempt::term("air-out-overnight", "cartridge-airs-out", ""),
    ]
}

fn mostly_shaven(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    /// One situation in so many with stubble is taken as shaven.
    const SHAVEN_ONE_IN: u32 = 2;
    if dice.one_in(SHAVEN_ONE_IN) {
        facts.set_term("shaven", Shaven::Clean.slug());
    }
}

fn sealed(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = seal_move(
        facts.term("shaven")?,
        facts.term("positive_check").ok(),
        facts.term("negative_check").ok(),
        facts.slug("seal_try")? == "leaked-before",
    )?;
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn seal_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        SealMove::Wear => "leak-overlooked",
        SealMove::Check => "checks-were-made",
        SealMove::Reseat => "reseating-mends-all",
        SealMove::Refuse => "given-up-early",
    };
    let mut tempts: Vec<Tempt> =
        SealMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("straps-tighter", "straps-close-any-gap", ""));
    tempts.push(Tempt::term("tape-the-edge", "straps-close-any-gap", ""));
    tempts
}

fn signed(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(sign_move(facts.term::<Sign>("sign")?).map(|next| Answer::term(next.slug())))
}

fn sign_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        SignMove::Leave => "sign-taken-too-hard",
        SignMove::Prefilter => "sign-taken-for-filter",
        SignMove::AfterSpell => "sign-put-off",
    };
    let mut tempts: Vec<Tempt> =
        SignMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("finish-the-piece", "sign-put-off", ""));
    tempts.push(Tempt::term("mask-off-inside", "mask-off-for-a-breath", ""));
    tempts.push(Tempt::term("tighten-inside", "straps-close-any-gap", ""));
    tempts
}

fn put_away(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = care_move(facts.term("mask_found").ok(), facts.term("mask_parts").ok())?;
    Ok(ruling.map(|next| Answer::term(next.slug())))
}

fn away_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let slip = |next| match next {
        CareMove::Store => "stored-as-it-is",
        CareMove::Dry => "wiped-is-not-washed",
        CareMove::Clean => "part-overlooked",
        CareMove::TagOut => "tagged-for-dirt",
    };
    let mut tempts: Vec<Tempt> =
        CareMove::ALL.iter().map(|next| Tempt::term(next.slug(), slip(*next), "")).collect();
    tempts.push(Tempt::term("hook-in-booth", "mask-left-open", ""));
    tempts.push(Tempt::term("wiped-with-thinner", "thinner-cleans-masks", ""));
    tempts
}

fn demanded(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = respirator_demand(
        told_speed(facts, "velocity_m_s")?,
        facts.term::<Evaluation>("evaluation")?,
        facts.term::<Standing>("standing").ok(),
    )?;
    Ok(ruling.map(|demand| Answer::term(demand.slug())))
}

fn demand_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Demand::Wear.slug(), "writing-overlooked", "time-lost"),
        Tempt::term(Demand::AsWritten.slug(), "never-decided", ""),
        Tempt::term("none-by-draw", "draw-for-respirator", ""),
        Tempt::term("none-by-smell", "cartridge-by-smell", ""),
        Tempt::term("dust-mask-will-do", "dust-filter-for-all", ""),
    ]
}
