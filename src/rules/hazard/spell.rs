//! One spell of spraying: the order of mask, fan, cup and gun.

use crate::rules::term::Term;
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Steps of a spell of spraying.
    SpellStep {
        /// Suit and respirator on.
        MaskOn = "mask-on",
        /// Fan on.
        FanOn = "fan-on",
        /// Filter gauge read.
        GaugeRead = "gauge-read",
        /// Bond both containers and fill the cup, in the fan's draw.
        FillCup = "fill-cup",
        /// Spray.
        Spray = "spray",
        /// Gun cleaned in the booth.
        GunCleaned = "gun-cleaned",
        /// Work and residue have stopped giving off vapour.
        VapourGone = "vapour-gone",
        /// Fan off.
        FanOff = "fan-off",
        /// Respirator off, outside.
        MaskOff = "mask-off",
    }
    /// Whether the cup of the gun is filled when the spell begins.
    CupState {
        /// Full and closed.
        Full = "cup-full",
        /// Still to be filled.
        Empty = "cup-empty",
    }
}

/// Pairs of steps whose first must come before the second: fan before gauge and gun, mask from before the gun until
/// the gun is clean, fan on until nothing gives off vapour (29 CFR 1910.107(d)(2), (b)(5)(i), (g)(5)). The cup is filled
/// under mask and fan: common practice, no source.
const SPELL: [(SpellStep, SpellStep); 23] = [
    (SpellStep::MaskOn, SpellStep::FillCup),
    (SpellStep::FanOn, SpellStep::FillCup),
    (SpellStep::FillCup, SpellStep::Spray),
    (SpellStep::FillCup, SpellStep::GunCleaned),
    (SpellStep::FillCup, SpellStep::VapourGone),
    (SpellStep::FillCup, SpellStep::FanOff),
    (SpellStep::FillCup, SpellStep::MaskOff),
    (SpellStep::MaskOn, SpellStep::Spray),
    (SpellStep::MaskOn, SpellStep::GunCleaned),
    (SpellStep::MaskOn, SpellStep::MaskOff),
    (SpellStep::FanOn, SpellStep::GaugeRead),
    (SpellStep::FanOn, SpellStep::Spray),
    (SpellStep::FanOn, SpellStep::GunCleaned),
    (SpellStep::FanOn, SpellStep::FanOff),
    (SpellStep::GaugeRead, SpellStep::Spray),
    (SpellStep::Spray, SpellStep::GunCleaned),
    (SpellStep::Spray, SpellStep::VapourGone),
    (SpellStep::Spray, SpellStep::FanOff),
    (SpellStep::Spray, SpellStep::MaskOff),
    (SpellStep::GunCleaned, SpellStep::VapourGone),
    (SpellStep::GunCleaned, SpellStep::FanOff),
    (SpellStep::GunCleaned, SpellStep::MaskOff),
    (SpellStep::VapourGone, SpellStep::FanOff),
];

/// The steps of a spell of spraying: a cup that is full is not filled again.
#[must_use]
pub fn spell_steps(cup: CupState) -> Vec<SpellStep> {
    let fills = cup == CupState::Empty;
    SpellStep::ALL.iter().copied().filter(|step| fills || *step != SpellStep::FillCup).collect()
}

/// Whether the steps of a spell of spraying stand in a safe order.
#[must_use]
pub fn spell_order(steps: &[SpellStep]) -> Ruling<bool> {
    let place = |step| steps.iter().position(|one| *one == step);
    let kept = |(first, then): &(SpellStep, SpellStep)| match (place(*first), place(*then)) {
        (Some(first), Some(then)) => first < then,
        _ => true,
    };
    let ruling = Ruling::by("hazard.fan-round-the-gun", SPELL.iter().all(kept)).and("hazard.filter-gauge");
    if steps.contains(&SpellStep::FillCup) { ruling.and("hazard.cup-filled-in-draw") } else { ruling }
}
