//! Mix: what ratios and percentages mean, batches, the washcoat, retarder, pot life, and from can to gun.

use crate::bench::Facts;
use crate::bench::mixing::{told_parts, told_percent, told_volume};
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::mixing::{
    self, MixStep, MixUse, PotKind, Thinning, Washcoat, clear_thinning, fraction, mix_order, mix_steps,
    mix_use, volume,
};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

pub(super) const ALL: &[&Question] = &[
    &THIN_PERCENT,
    &PARTS_TO_PERCENT,
    &CLEAR_BATCH,
    &WASHCOAT_BAND,
    &WASHCOAT_THINNER,
    &RETARDER_MOST,
    &MIX_AGE,
    &CAN_TO_GUN,
];

/// How much thinner? Misconceptions: the percentage is read as a share of the mix, or of a batch.
const THIN_PERCENT: Question = Question {
    id: "thin-percent",
    settle: keep,
    ask: Ask::Number { answer: thinner, tempt: thinner_tempts, unit: Unit::Millilitre },
    after: After::is("mix-off"),
};

/// What percentage is that? Misconceptions: share of the mix; parts upside down; share of material.
const PARTS_TO_PERCENT: Question = Question {
    id: "parts-to-percent",
    settle: more_base,
    ask: Ask::One { answer: percent_of_parts, tempt: percent_tempts },
    after: After::is("mix-off"),
};

/// How much clear goes into the batch? Misconceptions: the percentage is taken off the batch; the batch is all clear.
const CLEAR_BATCH: Question = Question {
    id: "clear-batch",
    settle: keep,
    ask: Ask::Number { answer: clear_in_batch, tempt: batch_tempts, unit: Unit::Millilitre },
    after: After::is("mix-off"),
};

/// Is it a washcoat? Misconceptions: the ratio alone tells; half and half is thin.
const WASHCOAT_BAND: Question = Question {
    id: "washcoat-band",
    settle: keep,
    ask: Ask::One { answer: washcoat, tempt: washcoat_tempts },
    after: After::is("washcoat-off"),
};

/// How much thinner makes a washcoat of the sheet's sealer? Misconceptions: solids fall by subtraction; the batch is
/// taken for the thinner.
const WASHCOAT_THINNER: Question = Question {
    id: "washcoat-thinner",
    settle: within_band,
    ask: Ask::Number { answer: washcoat_thinner, tempt: washcoat_thinner_tempts, unit: Unit::Millilitre },
    after: After::is("washcoat-off"),
};

/// How much retarder may be in it? Misconceptions: percent of the unthinned clear, or of the thinner; the ceiling is
/// taken for the shop's limit.
const RETARDER_MOST: Question = Question {
    id: "retarder-most",
    settle: keep,
    ask: Ask::Number { answer: retarder, tempt: retarder_tempts, unit: Unit::Millilitre },
    after: After::is("slow-film").below("time-lost"),
};

/// May the mix still be used? Misconceptions: as long as it pours it is good; thinner brings it back.
const MIX_AGE: Question = Question {
    id: "mix-age",
    settle: one_part_has_no_life,
    ask: Ask::One { answer: aged, tempt: aged_tempts },
    after: After::is("mix-set"),
};

/// In which order from can to gun?
const CAN_TO_GUN: Question = Question {
    id: "can-to-gun",
    settle: keep,
    ask: Ask::Order { items: mix_items, accepts: mix_steps_kept },
    after: After::is("nibs-stand-up"),
};

fn thinner(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let thinning = told_percent(facts, "percent")?;
    Ok(mixing::thinner_for(told_volume(facts, "base_ml")?, thinning).map(volume))
}

/// A volume of so much, where a misconception leads to one.
pub(super) fn tempt_volume(ml: f64, slip: &'static str) -> Tempt {
    Tempt::number(Measure::new(ml, Unit::Millilitre, 0), slip)
}

fn thinner_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let (Ok(base), Ok(thinning)) = (facts.number("base_ml"), told_percent(facts, "percent")) else {
        return Vec::new();
    };
    let r = thinning.ratio();
    let mut tempts = vec![tempt_volume(base * thinning.share().get(), "percent-of-the-mix")];
    if let Ok(read) = Thinning::of_share(fraction(thinning.percent())) {
        tempts.push(tempt_volume(base * read.ratio(), "percent-of-the-mix"));
    }
    tempts.push(tempt_volume(base * (1.0 + r), "batch-for-thinner"));
    tempts
}

/// Draws until there is more material than thinner, so that no two readings of the parts agree.
fn more_base(facts: &mut Facts, _: &World<'_>, _: &mut Dice) {
    if let (Ok(base), Ok(thinner)) = (facts.number("parts_base"), facts.number("parts_thinner"))
        && base <= thinner
    {
        facts.set("parts_base", base + thinner);
    }
}

fn percent_of_parts(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let thinning = told_parts(facts, "parts_base", "parts_thinner")?;
    let found = percent_thinned(thinning);
    let part = |key: &str| facts.number(key).map(|parts| Measure::new(parts, Unit::Ratio, 1));
    let (thinner, material) = (part("parts_thinner")?, part("parts_base")?);
    Ok(Ruling::by("mixing.percent-of-unthinned", Answer::Number(found))
        .step("percent-thinned", "thinner / material", found)
        .given(&[("thinner", thinner), ("material", material)]))
}

fn percent_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let Ok(thinning) = told_parts(facts, "parts_base", "parts_thinner") else { return Vec::new() };
    /// Parts of a ten-part dipstick.
    const PARTS_IN_TEN: f64 = 10.0;
    /// Thinner for one of material beyond which nobody would believe the reading.
    const MOST_READ: f64 = 3.0;
    let share = thinning.share().get();
    let misread = [
        (share, "percent-of-the-mix"),
        (1.0 / thinning.ratio(), "parts-upside-down"),
        (1.0 - share, "share-of-material"),
        (1.0 - thinning.ratio(), "what-is-left-over"),
        (thinning.ratio() / (1.0 - thinning.ratio()), "share-turned-round"),
        (facts.number("parts_thinner").unwrap_or(0.0) / PARTS_IN_TEN, "a-part-is-ten-percent"),
    ];
    let as_percent = |ratio| Thinning::of_ratio(ratio).ok().map(percent_thinned);
    misread
        .into_iter()
        .filter(|(ratio, _)| *ratio <= MOST_READ)
        .filter_map(|(ratio, slip)| Some(Tempt::number(as_percent(ratio)?, slip)))
        .collect()
}

fn percent_thinned(thinning: Thinning) -> Measure {
    Measure::new(thinning.percent(), Unit::Percent, 1)
}

fn clear_in_batch(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let batch = mixing::batch(told_volume(facts, "batch_ml")?, clear_thinning(world.sheet));
    Ok(batch.map(|(clear, _)| volume(clear)))
}

fn batch_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(batch) = facts.number("batch_ml") else { return Vec::new() };
    let r = clear_thinning(world.sheet).ratio();
    vec![
        tempt_volume(batch * (1.0 - r), "percent-off-the-batch"),
        tempt_volume(batch, "batch-all-clear"),
        tempt_volume(batch * r / (1.0 + r), "thinner-for-clear"),
    ]
}

fn washcoat(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let solids = facts.maybe_number("volume_solids").map(fraction);
    let ruling = mixing::washcoat(solids, told_parts(facts, "parts_sealer", "parts_thinner")?, world.sheet)?;
    Ok(ruling.map(|band| Answer::term(band.slug())))
}

fn washcoat_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Washcoat::InBand.slug(), "ratio-without-solids", ""),
        Tempt::term(Washcoat::TooHeavy.slug(), "thin-taken-for-heavy", ""),
        Tempt::term(Washcoat::TooThin.slug(), "heavy-taken-for-thin", ""),
        Tempt::term("add-retarder", "retarder-for-solids", ""),
        Tempt::term("spray-thinner-pass", "pass-for-solids", ""),
    ]
}

/// Holds the solids wanted within the sheet's band.
fn within_band(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    if let Ok(aim) = facts.number("aim_solids") {
        let (from, to) = (world.sheet.get(Setting::WashcoatFrom), world.sheet.get(Setting::WashcoatTo));
        facts.set("aim_solids", aim.clamp(from, to));
    }
}

fn washcoat_thinner(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let supplied = fraction(world.sheet.get(Setting::SealerSolids));
    let wanted = fraction(facts.number("aim_solids")?);
    Ok(mixing::thin_to_solids(told_volume(facts, "base_ml")?, supplied, wanted)?.map(volume))
}

fn washcoat_thinner_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(base), Ok(aim)) = (facts.number("base_ml"), facts.number("aim_solids")) else {
        return Vec::new();
    };
    let solids = world.sheet.get(Setting::SealerSolids);
    vec![
        tempt_volume(base * solids / aim, "batch-for-thinner"),
        tempt_volume(base, "half-and-half-is-thin"),
        tempt_volume(base * fraction(solids - aim).get(), "solids-subtracted"),
    ]
}

fn retarder(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    Ok(mixing::retarder_most(told_volume(facts, "batch_ml")?, world.sheet).map(volume))
}

fn retarder_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(batch) = told_volume(facts, "batch_ml") else { return Vec::new() };
    let (clear, thinner) = mixing::batch(batch, clear_thinning(world.sheet)).answer;
    let most = world.sheet.held(Setting::RetarderMost);
    let share = |of: f64, percent: f64| of * fraction(percent).get();
    vec![
        tempt_volume(share(thinner.get(), most.value), "retarder-of-thinner"),
        tempt_volume(share(clear.get(), most.value), "retarder-of-clear"),
        tempt_volume(share(batch.get(), most.ceiling), "ceiling-for-limit"),
    ]
}

/// A one-part mix has no pot life to tell.
fn one_part_has_no_life(facts: &mut Facts, _: &World<'_>, _: &mut Dice) {
    if facts.term::<PotKind>("pot_kind") == Ok(PotKind::OnePart) {
        facts.0.remove("pot_life_h");
    }
}

fn aged(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = mix_use(
        facts.term::<PotKind>("pot_kind")?,
        facts.hours("mix_age_h").ok(),
        facts.hours("pot_life_h").ok(),
        world.sheet,
    )?;
    Ok(ruling.map(|state| Answer::term(state.slug())))
}

fn aged_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(MixUse::Use.slug(), "pours-so-it-is-good", ""),
        Tempt::term(MixUse::Discard.slug(), "thrown-too-soon", ""),
        Tempt::term("thin-it-back", "thinner-turns-back-time", ""),
        Tempt::term("more-hardener", "hardener-wakes-it", ""),
    ]
}

/// Steps drawn for one card: thinning and straining always, some others.
fn mix_items(facts: &Facts, _: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    /// Steps beside hardener, thinner and straining.
    const OTHERS: usize = 3;
    let always = [MixStep::AddHardener, MixStep::AddThinner, MixStep::Strain];
    let Ok(kind) = facts.term::<PotKind>("pot_kind") else { return Vec::new() };
    let (always, mut others): (Vec<MixStep>, Vec<MixStep>) =
        mix_steps(kind).into_iter().partition(|step| always.contains(step));
    dice.shuffle(&mut others);
    let steps = always.into_iter().chain(others.into_iter().take(OTHERS));
    steps.map(|step| Item::new(step.slug(), "")).collect()
}

fn mix_steps_kept(_: &Facts, _: &World<'_>, order: &[String]) -> Judged<bool> {
    let steps: Option<Vec<MixStep>> = order.iter().map(|slug| MixStep::from_slug(slug)).collect();
    Ok(mix_order(&steps.ok_or_else(|| CannotJudge::without("steps"))?))
}
